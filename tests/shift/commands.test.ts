import { describe, expect, test } from 'vitest';
import type { Document } from '../../src/record/document.ts';
import { emptyDocument } from '../../src/record/document.ts';
import { amendActivity, startActivity } from '../../src/shift/commands.ts';
import { currentActivity, spansOf } from '../../src/shift/current.ts';
import { endShiftAt } from '../../src/shift/entry-changes.ts';
import { recordPlod, signPlod, withdrawPlod } from '../../src/shift/plod-commands.ts';
import { linesOf, SHIFT_NOUNS, shiftHeaderOf, shiftThings } from '../../src/shift/shift.ts';
import { at, claimed, doing, ended, granted, HEADER, having, makerAt, RULES, STARTED } from './build.ts';

const refusal = (result: ReturnType<typeof startActivity>) =>
  result.ok ? undefined : result.findings.map((finding) => [finding.code, finding.problem]);

/** Every thing of a shift is what its noun says. */
function fitsItsNouns(shift: Document): boolean {
  return Object.entries(shift.tables).every(([table, things]) =>
    Object.values(things).every(
      (thing) => SHIFT_NOUNS[table as keyof typeof SHIFT_NOUNS].safeParse(thing).success,
    ),
  );
}

describe('starting an activity', () => {
  test('stamps it with its charge class from the list, and says so in words', () => {
    const made = granted(
      startActivity(STARTED, RULES, { activity: 'standby', authorisedBy: 'Ada' }, makerAt(at('07:42'))),
    );
    expect(made.what).toBe('Standby from 07:42, no hole');
    const shift = having(STARTED, made);
    expect(shiftThings(shift, 'activities').map(([, activity]) => activity)).toEqual([
      { startedAt: at('07:42'), activity: 'standby', charge: 'standby hourly', authorisedBy: 'Ada' },
    ]);
    expect(fitsItsNouns(shift)).toBe(true);
  });

  test('is refused for one that is not in the list, which is named', () => {
    const result = startActivity(STARTED, RULES, { activity: 'lunch' }, makerAt(at('12:00')));
    expect(refusal(result)).toEqual([['activity-unknown', 'it is not in the list of activities']]);
    expect(!result.ok && result.findings[0]?.remedy).toContain('drilling, reaming, standby');
  });

  test('is refused once the shift has ended', () => {
    const result = startActivity(
      ended(STARTED, '18:00'),
      RULES,
      { activity: 'drilling' },
      makerAt(at('18:05')),
    );
    expect(refusal(result)).toEqual([['shift-ended', 'the shift ended at 18:00']]);
  });

  test('with a clock that has jumped back starts where the one before it did, and says so', () => {
    const drilling = doing(STARTED, ['10:00', { activity: 'drilling' }]);
    const made = granted(startActivity(drilling, RULES, { activity: 'reaming' }, makerAt(at('09:05'))));
    expect(made.what).toBe(
      'Reaming from 10:00, no hole (the clock said 09:05, before what is recorded already)',
    );
    expect(currentActivity(having(drilling, made), at('10:30'))).toMatchObject({
      activity: 'reaming',
      minutes: 30,
    });
  });

  test('with a clock from before the shift starts with the shift', () => {
    const made = granted(startActivity(STARTED, RULES, { activity: 'drilling' }, makerAt(at('05:30'))));
    expect(spansOf(having(STARTED, made), at('07:00'))[0]?.minutes).toBe(60);
  });
});

describe('ending a shift', () => {
  test('ends the activity that goes on, and says how long the shift was', () => {
    const made = granted(endShiftAt(doing(STARTED, ['06:00', { activity: 'drilling' }]), at('17:30')));
    expect(made.what).toBe('shift ended at 17:30 after 11:30');
  });

  test('a second time amends when it ended', () => {
    const later = having(ended(STARTED, '18:00'), granted(endShiftAt(ended(STARTED, '18:00'), at('18:01'))));
    expect(shiftHeaderOf(later).endedAt).toBe(at('18:01'));
  });

  test('is refused before its last activity started', () => {
    const shift = doing(STARTED, ['17:30', { activity: 'drilling' }]);
    expect(refusal(endShiftAt(shift, at('16:00')))?.map(([, problem]) => problem)).toEqual([
      '16:00 is before 17:30, when the last entry started',
    ]);
  });
});

describe('amending an activity', () => {
  const shift = doing(STARTED, ['06:00', { activity: 'drilling' }], ['08:00', { activity: 'reaming' }]);
  const [, second] = shiftThings(shift, 'activities').map(([id]) => id);
  if (second === undefined) throw new Error('two activities were started');

  test('moves its start, and with it the end of the one before', () => {
    const amended = having(shift, granted(amendActivity(shift, RULES, second, { startedAt: at('07:30') })));
    expect(spansOf(amended, at('09:00')).map((span) => span.minutes)).toEqual([90, 90]);
  });

  test('takes the charge class of its new code', () => {
    const made = granted(amendActivity(shift, RULES, second, { activity: 'breakdown', remark: 'hose' }));
    expect(spansOf(having(shift, made), at('09:00'))[1]).toMatchObject({
      charge: 'no charge',
      remark: 'hose',
    });
  });

  test('is refused where it is not there, and for a code that is not in the list', () => {
    expect(refusal(amendActivity(shift, RULES, 'k9-9', { remark: 'x' }))?.[0]?.[0]).toBe(
      'shift-thing-not-there',
    );
    expect(refusal(amendActivity(shift, RULES, '__proto__', {}))?.[0]?.[0]).toBe('shift-thing-not-there');
    expect(refusal(amendActivity(shift, RULES, second, { activity: 'lunch' }))?.[0]?.[0]).toBe(
      'activity-unknown',
    );
  });
});

describe('a plod', () => {
  const shift = claimed(
    STARTED,
    { activity: 'drilling', minutes: 600, hole: 'ZQRC004' },
    { activity: 'lunch', minutes: 30 },
  );
  const [id] = shiftThings(shift, 'plods').map(([each]) => each);
  if (id === undefined) throw new Error('a plod was taken down');

  test('is taken down line by line as the driller wrote it, an unknown activity too', () => {
    expect(linesOf(shift, id).map((line) => line.activity)).toEqual(['drilling', 'lunch']);
    expect(fitsItsNouns(shift)).toBe(true);
  });

  test.each([
    [{ fromMm: 0, hole: 'ZQRC004' }, 'only one end of its metres is given'],
    [{ fromMm: 6000, toMm: 6000, hole: 'ZQRC004' }, 'its metres end at or above where they start'],
    [{ fromMm: 0, toMm: 6000 }, 'it has metres or shots, but no hole'],
    [{ shots: 2 }, 'it has metres or shots, but no hole'],
  ])('with a line of %j is refused: %s', (said, problem) => {
    const line = { activity: 'drilling', minutes: 60, ...said } as Parameters<typeof recordPlod>[2][number];
    const result = recordPlod(
      STARTED,
      { sheet: '1042', receivedAt: at('19:00') },
      [line],
      makerAt(at('19:00')),
    );
    expect(refusal(result)).toEqual([['plod-line-unsound', problem]]);
    expect(!result.ok && result.findings[0]?.place.thing).toBe('plod 1042, line 1');
  });

  test('is refused under a sheet number that is here already', () => {
    expect(() => claimed(shift)).toThrow('this sheet is recorded already');
  });

  test('is signed with its open queries said, and then not withdrawn', () => {
    const signOff = { plod: id, by: 'Ada', at: at('19:30'), openQueries: 2 };
    const made = granted(signPlod(shift, signOff, makerAt(at('19:30'))));
    expect(made.what).toBe('plod 1041 signed by Ada with 2 open queries');
    const signed = having(shift, made);
    expect(fitsItsNouns(signed)).toBe(true);
    expect(refusal(withdrawPlod(signed, id))).toEqual([['plod-signed', 'it is signed']]);
  });

  test('is withdrawn with all its lines', () => {
    const left = having(shift, granted(withdrawPlod(shift, id)));
    expect(left.tables).toEqual(STARTED.tables);
  });

  test('that was never taken down is neither signed nor withdrawn', () => {
    const signOff = { plod: 'k9-9', by: 'Ada', at: at('19:30'), openQueries: 0 };
    expect(refusal(signPlod(shift, signOff, makerAt(at('19:30'))))?.[0]?.[0]).toBe('shift-thing-not-there');
    expect(refusal(withdrawPlod(shift, 'k9-9'))?.[0]?.[0]).toBe('shift-thing-not-there');
  });
});

test('a shift without a header is an error of whoever let it in', () => {
  expect(shiftHeaderOf(STARTED)).toEqual(HEADER);
  expect(() => shiftHeaderOf(emptyDocument({ kind: 'shift', id: 'X' }))).toThrow('shift X has no header');
});
