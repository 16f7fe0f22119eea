import { receivePlod } from '../../../src/acts/plod.ts';
import { minutesBetween } from '../../../src/quantity/stamp.ts';
import type { Document } from '../../../src/record/document.ts';
import { amendActivity, startActivity } from '../../../src/shift/commands.ts';
import { recordLate } from '../../../src/shift/entry-changes.ts';
import { recordPlod, withdrawPlod } from '../../../src/shift/plod-commands.ts';
import { queryList } from '../../../src/shift/query-list.ts';
import { parseRecordLine } from '../../../src/shift/record-line.ts';
import { type PlodLine, shiftThings } from '../../../src/shift/shift.ts';
import { checkShifts } from '../../../src/shift/shift-checks.ts';
import { resolveShiftRules } from '../../../src/shift/shift-rules.ts';
import {
  at,
  claimed,
  doing,
  ended,
  having,
  hole,
  makerAt,
  RULES,
  rod,
  SETTINGS,
  STARTED,
} from '../../shift/build.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const MAKER = makerAt(at('19:00'));
const DRILLED = ended(doing(STARTED, ['06:00', { activity: 'drilling', hole: 'ZQRC004' }]), '18:00');
const HOLES = [hole('ZQRC004', { rods: [rod('09:00', 6)] })];
const SHEET = { sheet: '1041', receivedAt: at('19:00') };

const queried = (
  code: string,
  input: string,
  shift: Document,
  holes: readonly Document[] = HOLES,
): ErrorCase => given(code, input, () => queryList(shift, holes, RULES, at('20:00')).queries);
const claim = (said: Partial<Omit<PlodLine, 'plod'>>): Document =>
  claimed(DRILLED, { activity: 'drilling', minutes: 720, hole: 'ZQRC004', ...said } as Omit<
    PlodLine,
    'plod'
  >);

/** The shift with its plod signed. */
function signed(): readonly [Document, string] {
  const shift = claim({});
  const [plod = ''] = shiftThings(shift, 'plods').map(([id]) => id);
  const signOff = { plod, by: 'Ada', at: at('19:30'), openQueries: 0 };
  return [having(shift, { what: 'signed', changes: [{ put: ['signOffs', 'k1-0'], thing: signOff }] }), plod];
}

/** The shift with a plod whose lines have times. */
function timed(
  shift: Document,
  lines: readonly (readonly [from: string, to: string, activity: string, hole?: string])[],
): Document {
  const whole = shift === DRILLED ? shift : ended(shift, '18:00');
  return claimed(
    whole,
    ...lines.map(([from, to, activity, id]) => ({
      activity,
      minutes: minutesBetween(at(from), at(to)),
      startsAt: at(from),
      endsAt: at(to),
      ...(id === undefined ? {} : { hole: id }),
    })),
  );
}

/** Errors of the shift record, and what a plod is asked about. */
export const SHIFT_CASES: readonly ErrorCase[] = [
  given('shift-ended', 'an activity after the end', () =>
    findingsIn(startActivity(DRILLED, RULES, { activity: 'drilling' }, MAKER)),
  ),
  given('activity-unknown', 'lunch', () =>
    findingsIn(startActivity(STARTED, RULES, { activity: 'lunch' }, MAKER)),
  ),
  given('shift-thing-not-there', 'an activity that is not there', () =>
    findingsIn(amendActivity(STARTED, RULES, 'k9-9', {})),
  ),
  given('shift-line-unread', 'lunch 12:00', () =>
    findingsIn(parseRecordLine('lunch 12:00', { activities: RULES.activities, holes: new Map() })),
  ),
  given('shift-time-wrong', 'standby after the end', () =>
    findingsIn(recordLate(DRILLED, RULES, { activity: 'standby', from: at('18:20') }, MAKER)),
  ),
  given('shift-end-presumed', 'a shift that no one ended', () =>
    checkShifts([doing(STARTED, ['06:00', { activity: 'drilling' }])], RULES, at('20:00')),
  ),
  given('shift-time-not-recorded', 'a shift without activities until 09:00', () =>
    checkShifts([ended(doing(STARTED, ['09:00', { activity: 'drilling' }]), '18:00')], RULES, at('20:00')),
  ),
  given('drilled-outside-shifts', 'a rod after the end', () =>
    checkShifts([DRILLED, hole('ZQRC004', { rods: [rod('18:30', 6)] })], RULES, at('20:00')),
  ),
  given('plod-another', 'a second sheet for one shift', () =>
    findingsIn(
      receivePlod(
        claim({}),
        { ...SHEET, sheet: '1042' },
        [{ activity: 'standby', minutes: 60 }],
        { second: false },
        MAKER,
      ),
    ),
  ),
  queried(
    'plod-time-differs',
    'drilling from 08:00 to 09:00 where the record has standby',
    timed(doing(STARTED, ['06:00', { activity: 'standby', authorisedBy: 'Ada' }]), [
      ['08:00', '09:00', 'drilling'],
    ]),
    [],
  ),
  queried(
    'plod-activity-differs',
    'travel, with its free time, where the record has reaming',
    timed(doing(STARTED, ['06:00', { activity: 'reaming' }]), [['08:00', '09:00', 'travel']]),
    [],
  ),
  given('plod-crew-differs', 'a sheet that names Bo and Dee where the record has Bo and Cy', () => {
    const sheet = { ...SHEET, crew: ['Bo', 'Dee'] };
    const line = { activity: 'drilling', minutes: 720, hole: 'ZQRC004' };
    const made = recordPlod(DRILLED, sheet, [line], MAKER);
    return made.ok ? queryList(having(DRILLED, made.value), [], RULES, at('20:00')).queries : made.findings;
  }),
  queried(
    'plod-hole-differs',
    'drilling on another hole',
    timed(DRILLED, [['06:00', '18:00', 'drilling', 'ZQRC005']]),
  ),
  queried(
    'plod-times-overlap',
    'drilling and reaming at the same time',
    timed(DRILLED, [
      ['06:00', '18:00', 'drilling'],
      ['09:00', '09:40', 'reaming'],
    ]),
  ),
  queried(
    'plod-time-missing',
    'a sheet that ends at 17:00',
    timed(DRILLED, [['06:00', '17:00', 'drilling']]),
  ),
  given('plod-changed-since-signed', 'a line amended after the signature', () => {
    const recorded = claim({});
    const signOff = {
      plod: Object.keys(recorded.tables.plods ?? {})[0] ?? '',
      by: 'Ada',
      at: at('19:30'),
      openQueries: 0,
      ownCents: 100,
      plodCents: 100,
      seal: 'as it was',
    };
    const shift = having(recorded, {
      what: 'signed',
      changes: [{ put: ['signOffs', 'k1-0'], thing: signOff }],
    });
    return queryList(shift, HOLES, RULES, at('20:00')).queries;
  }),
  given('plod-sheet-twice', 'one sheet twice', () => findingsIn(recordPlod(claim({}), SHEET, [], MAKER))),
  given('plod-line-unsound', 'shots of no hole', () =>
    findingsIn(recordPlod(STARTED, SHEET, [{ activity: 'drilling', minutes: 60, shots: 2 }], MAKER)),
  ),
  given('plod-signed', 'a signed plod withdrawn', () => findingsIn(withdrawPlod(...signed()))),
  queried('plod-hours-differ', 'an hour more than there was', claim({ minutes: 780 })),
  queried('plod-metres-differ', 'a rod more', claim({ fromMm: 0, toMm: 12_000 } as never)),
  queried('plod-shots-differ', 'a shot that no one saw', claim({ shots: 1 })),
  queried(
    'plod-consumables-differ',
    'a bit that no one saw',
    claim({ used: [{ item: 'hammer bit', count: 1 }] }),
  ),
  queried(
    'item-not-in-contract',
    'a core catcher, which the contract has no price for',
    claim({ used: [{ item: 'core catcher', count: 1 }] }),
  ),
  queried(
    'plod-money-differs',
    'a move that the record has not, of no hours and so in no sum of them',
    claimed(
      DRILLED,
      { activity: 'drilling', minutes: 720, hole: 'ZQRC004', fromMm: 0, toMm: 6000 } as never,
      { activity: 'move', minutes: 0, hole: 'ZQRC004' },
    ),
  ),
  queried('plod-activity-unknown', 'a line of lunch', claimed(DRILLED, { activity: 'lunch', minutes: 30 })),
  queried(
    'standby-not-authorised',
    'standby that no one asked for',
    doing(STARTED, ['06:00', { activity: 'standby' }]),
    [],
  ),
  queried(
    'drilled-on-standby',
    'a rod done on standby',
    doing(STARTED, ['06:00', { activity: 'standby', authorisedBy: 'Ada' }]),
  ),
  queried(
    'drilled-on-another-hole',
    'a rod done while the record has the rig on another hole',
    doing(STARTED, ['06:00', { activity: 'drilling', hole: 'ZQRC005' }]),
  ),
  given('shift-settings-unsound', 'two activities on one key', () =>
    findingsIn(
      resolveShiftRules({
        ...SETTINGS,
        activities: [
          ...SETTINGS.activities,
          { code: 'spare', label: 'Spare', charge: 'no charge', key: 'd' },
        ],
      }),
    ),
  ),
];
