import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stamp } from '../../src/quantity/stamp.ts';
import { shiftAt, shiftDocument } from '../../src/shift/shift-name.ts';
import { at, RULES, rulesOf, SETTINGS } from './build.ts';

describe('the shift that an instant belongs to', () => {
  test.each([
    ['06:00', '2026-03-14', 'day'],
    ['17:59', '2026-03-14', 'day'],
    ['18:00', '2026-03-14', 'night'],
    ['23:59:59', '2026-03-14', 'night'],
    ['00:00', '2026-03-13', 'night'],
    ['05:59', '2026-03-13', 'night'],
  ] as const)('at %s on 14 March is that of %s, %s', (clock, date, name) => {
    expect(shiftAt(RULES.shifts, at(clock))).toEqual({ date, name });
  });

  test('past midnight on the first of a month keeps the last day of the month before', () => {
    expect(shiftAt(RULES.shifts, stamp(Date.UTC(2028, 1, 29, 17), 480))).toEqual({
      date: '2028-02-29',
      name: 'night',
    });
  });

  test('is read from the wall clock that stamped it, on either side of a time-zone border', () => {
    const instant = Date.UTC(2026, 2, 14, 9, 45);
    expect(shiftAt(RULES.shifts, stamp(instant, 480))?.name).toBe('day');
    expect(shiftAt(RULES.shifts, stamp(instant, 570))?.name).toBe('night');
  });

  test('is none where no one works at that time of day', () => {
    const dayOnly = rulesOf({ ...SETTINGS, shifts: SETTINGS.shifts.slice(0, 1) });
    expect(shiftAt(dayOnly.shifts, at('05:59'))).toBeUndefined();
    expect(shiftAt(dayOnly.shifts, at('18:00'))).toBeUndefined();
  });

  test('is one for every minute where two shifts fill the day, and changes twice a day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -14 * 60, max: 14 * 60 }), (offset) => {
        const start = Date.UTC(2026, 2, 14);
        const shifts = Array.from({ length: 2880 }, (_, minute) =>
          JSON.stringify(shiftAt(RULES.shifts, stamp(start + minute * 60_000, offset))),
        );
        expect(shifts).not.toContain(undefined);
        const changes = shifts.filter((each, minute) => minute > 0 && each !== shifts[minute - 1]).length;
        expect([3, 4]).toContain(changes);
        expect(new Set(shifts).size).toBe(changes + 1);
      }),
      { numRuns: 20 },
    );
  });
});

test('the document of a shift is named by rig, local date of the start, and shift', () => {
  expect(shiftDocument('RIG1', { date: '2026-03-13', name: 'night' })).toEqual({
    kind: 'shift',
    id: 'RIG1_2026-03-13_NIGHT',
  });
});
