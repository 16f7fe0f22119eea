import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entryLine, parseRecordLine } from '../../src/shift/record-line.ts';
import type { Activity } from '../../src/shift/shift.ts';
import { minuteOfClock } from '../../src/shift/shift-clock.ts';
import { at, RULES } from './build.ts';

const WORDS = {
  activities: RULES.activities,
  holes: new Map([
    ['ZQRC004', 'ZQRC004'],
    ['LODE 2', 'ZQRC005'],
  ]),
};
const read = (text: string) => {
  const result = parseRecordLine(text, WORDS);
  return result.ok ? result.value : result.findings[0]?.problem;
};
const clock = (text: string): number => minuteOfClock(text) ?? -1;

describe('a line of the shift record', () => {
  test.each([
    ['standby', { does: 'start', parts: { activity: 'standby' } }],
    ['s', { does: 'start', parts: { activity: 'standby' } }],
    [
      'breakdown 14:20 hydraulic hose',
      { does: 'start', parts: { activity: 'breakdown', from: 860, remark: 'hydraulic hose' } },
    ],
    [
      'breakdown 14:20-14:50 zqrc004 hydraulic hose',
      {
        does: 'start',
        parts: { activity: 'breakdown', from: 860, to: 890, hole: 'ZQRC004', remark: 'hydraulic hose' },
      },
    ],
    [
      'standby 9:05 by Ines Falk: no water: two trucks',
      {
        does: 'start',
        parts: { activity: 'standby', from: 545, authorisedBy: 'Ines Falk', remark: 'no water: two trucks' },
      },
    ],
    [
      'standby: drilling is slow',
      { does: 'start', parts: { activity: 'standby', remark: 'drilling is slow' } },
    ],
    [
      'standby 09:05: 10:30 truck',
      { does: 'start', parts: { activity: 'standby', from: 545, remark: '10:30 truck' } },
    ],
    [
      'drilling 09:00 +booster +aux: deep',
      {
        does: 'start',
        parts: { activity: 'drilling', from: 540, beside: ['booster', 'aux'], remark: 'deep' },
      },
    ],
    ['14:20 14:35', { does: 'amend', at: 860, parts: { from: 875 } }],
    ['14:20 by Ines Falk', { does: 'amend', at: 860, parts: { authorisedBy: 'Ines Falk' } }],
    ['14:20 : drilling slow', { does: 'amend', at: 860, parts: { remark: 'drilling slow' } }],
    ['split 15:00', { does: 'split', at: 900 }],
    ['remove 1420', { does: 'remove', at: 860 }],
    ['begin', { does: 'begin' }],
    ['end 18:00', { does: 'end', at: 1080 }],
    ['crew Bo Hale, Cy', { does: 'crew', names: ['Bo Hale', 'Cy'] }],
    ['used 2 hammer bit', { does: 'used', count: 2, item: 'hammer bit' }],
    ['used 14:20 1 sub', { does: 'used', count: 1, item: 'sub', at: 860 }],
    ['bit 139.7 new face', { does: 'bit', gaugeTenthsMm: 1397, remark: 'new face' }],
    ['water 62 strong', { does: 'water', depthMm: 62_000, remark: 'strong' }],
    ['s 7.30', { does: 'start', parts: { activity: 'standby', from: 450 } }],
    [
      's 730-745 by Ada',
      { does: 'start', parts: { activity: 'standby', from: 450, to: 465, authorisedBy: 'Ada' } },
    ],
    ['standby @15:00 truck', { does: 'start', parts: { activity: 'standby', from: 900, remark: 'truck' } }],
    ['bit 137.5 15:00 new face', { does: 'bit', gaugeTenthsMm: 1375, at: 900, remark: 'new face' }],
    ['bit 137.5 @15:00', { does: 'bit', gaugeTenthsMm: 1375, at: 900 }],
    ['bit 137.5 7.30', { does: 'bit', gaugeTenthsMm: 1375, at: 450 }],
    ['15:00 bit 137.5 new face', { does: 'bit', gaugeTenthsMm: 1375, at: 900, remark: 'new face' }],
    ['bit 137.5 : seen at 15:00 by Bo', { does: 'bit', gaugeTenthsMm: 1375, remark: 'seen at 15:00 by Bo' }],
    ['15:00 used 1 sub', { does: 'used', count: 1, item: 'sub', at: 900 }],
    ['used 1 hammer bit 15:00', { does: 'used', count: 1, item: 'hammer bit', at: 900 }],
    ['water 62 15:00 strong', { does: 'water', depthMm: 62_000, at: 900, remark: 'strong' }],
    ['18:00 end', { does: 'end', at: 1080 }],
  ])('%s', (text, line) => {
    expect(read(text)).toEqual(line);
  });

  test.each([
    ['', 'nothing is typed'],
    ['lunch 12:00', 'lunch is not an activity'],
    ['14:20', 'nothing to change is typed'],
    ['standby 14:20-14:20', '14:20-14:20 ends when it starts'],
    ['standby by', 'by needs a name'],
    ['end soon', 'soon is not a time of day'],
    ['s 730', '730 is not read as a time here'],
    ['s 7.61', '7.61 is not read as a time here'],
    ['standby by Ada 15:00', '15:00 is not read as a time here'],
    ['breakdown hose 14:20', '14:20 is not read as a time here'],
    ['bit 137.5 new face 15:00 Bo', '15:00 is not read as a time here'],
    ['split', 'split needs a time of day'],
    ['bit 13.97', 'bit needs its gauge, 50 to 500 mm'],
    ['used hammer bit', 'used needs how many, then what'],
    ['water deep', 'water needs the depth it was met at'],
    ['crew ,', 'crew needs names'],
  ])('is refused, with the line kept: %s', (text, problem) => {
    expect(read(text)).toBe(problem);
  });

  test('of an entry, read back, says what the entry says', () => {
    const words = fc
      .array(fc.constantFrom('no', 'water', 'by', 'standby', '14:20', 'hose: burst'), {
        minLength: 1,
        maxLength: 5,
      })
      .map((each) => each.join(' '));
    const entry = fc.record(
      {
        startedAt: fc
          .integer({ min: 0, max: 1439 })
          .map((minute) => at(`${Math.floor(minute / 60)}:${minute % 60}`)),
        activity: fc.constantFrom(...RULES.activities.map((each) => each.code)),
        charge: fc.constant('no charge' as const),
        hole: fc.constant('ZQRC004'),
        authorisedBy: fc.constantFrom('Ines Falk', 'Bo'),
        beside: fc.constant<string[]>(['booster']),
        remark: words,
      },
      { requiredKeys: ['startedAt', 'activity', 'charge'] },
    );
    fc.assert(
      fc.property(entry, (one) => {
        const { charge: _, startedAt, ...parts } = one;
        const line = read(entryLine(one as Activity, (id) => id));
        const from = clock(startedAt.slice(11, 16));
        expect(line).toEqual({ does: 'amend', at: from, parts: { ...parts, from } });
      }),
    );
  });
});
