import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instantMs, localTime, stamp } from '../../src/quantity/stamp.ts';
import type { Document } from '../../src/record/document.ts';
import { emptyDocument } from '../../src/record/document.ts';
import { startShift } from '../../src/shift/commands.ts';
import { gapsOf, spansOf } from '../../src/shift/current.ts';
import { ownRecord, rigAt } from '../../src/shift/own-record.ts';
import { shiftHeaderOf } from '../../src/shift/shift.ts';
import { closed, presumedEnd, shiftHolding } from '../../src/shift/shift-end.ts';
import { shiftAt } from '../../src/shift/shift-name.ts';
import { runs } from '../support/long-run.ts';
import { at, doing, ended, HEADER, having, hole, RULES, rod, STARTED } from './build.ts';

const { shifts } = RULES;
const end = (shift: Document, now = at('20:00'), documents: readonly Document[] = [shift]) =>
  presumedEnd(shift, { documents, shifts, now });
const drilling = doing(STARTED, ['06:00', { activity: 'drilling', hole: 'ZQRC004' }]);
const night = having(
  emptyDocument({ kind: 'shift', id: 'RIG1_2026-03-14_NIGHT' }),
  startShift({ ...HEADER, name: 'night', startsAt: at('17:50') }),
);

describe('a shift that was left open', () => {
  test('goes on until its planned end, which is then presumed', () => {
    expect(end(drilling, at('17:59'))).toBeUndefined();
    expect(end(drilling, at('18:00'))).toBe(at('18:00'));
    expect(end(drilling, at('09:00', 3))).toBe(at('18:00'));
  });

  test('ends with its last entry where that is later', () => {
    expect(end(doing(drilling, ['18:40', { activity: 'standby' }]))).toBe(at('18:40'));
  });

  test('ends when the next shift of its rig begins, also where it was ended later', () => {
    expect(end(drilling, at('20:00'), [drilling, night])).toBe(at('17:50'));
    expect(end(ended(drilling, '18:10'), at('20:00'), [ended(drilling, '18:10'), night])).toBe(at('17:50'));
    expect(end(ended(drilling, '17:40'), at('20:00'), [ended(drilling, '17:40'), night])).toBeUndefined();
  });

  test('ends by the clock as it was changed in the night', () => {
    const changed = stamp(instantMs(at('02:00', 1)), 540);
    const late = doing(night, ['18:00', { activity: 'drilling' }]);
    const after = {
      ...late,
      tables: {
        ...late.tables,
        activities: {
          ...late.tables.activities,
          x: { startedAt: changed, activity: 'drilling', charge: 'metres' },
        },
      },
    } as Document;
    const presumed = end(after, at('12:00', 1));
    expect(presumed && localTime(presumed)).toBe('06:00');
    expect(presumed).toMatch(/\+09:00$/);
  });
});

/** Shifts of two rigs over three days as people leave them: begun early or late, ended, ended past the next one, or never; a clock that is changed. */
const anyWeek = fc.record({
  shifts: fc.array(
    fc.record({
      rig: fc.constantFrom('RIG1', 'RIG2'),
      day: fc.integer({ min: 0, max: 2 }),
      name: fc.constantFrom('day' as const, 'night' as const),
      early: fc.integer({ min: -90, max: 200 }),
      lasts: fc.option(fc.integer({ min: 30, max: 1000 }), { nil: undefined }),
      activities: fc.array(fc.integer({ min: 0, max: 900 }), { maxLength: 4 }),
    }),
    { maxLength: 8 },
  ),
  change: fc.option(fc.integer({ min: 0, max: 4000 }), { nil: undefined }),
  minutes: fc.array(fc.integer({ min: -200, max: 4500 }), { minLength: 1, maxLength: 12 }),
});

function week({
  shifts: made,
  change,
}: {
  shifts: readonly (typeof anyWeek extends fc.Arbitrary<infer T> ? T : never)['shifts'][number][];
  change: number | undefined;
}) {
  const start = instantMs(at('06:00'));
  const moment = (minute: number) =>
    stamp(start + minute * 60_000, change !== undefined && minute >= change ? 540 : 480);
  const documents = made.map(({ rig, day, name, early, lasts, activities }, index): Document => {
    const began = day * 1440 + (name === 'night' ? 720 : 0) + early;
    const startsAt = moment(began);
    const header = {
      ...HEADER,
      rig,
      name,
      date: shiftAt(shifts, startsAt)?.date ?? HEADER.date,
      startsAt,
      ...(lasts === undefined ? {} : { endedAt: moment(began + lasts) }),
    };
    const things = activities.map((minute, each) => [
      `k1-${each}`,
      { startedAt: moment(began + minute), activity: 'drilling', charge: 'metres', hole: 'ZQRC004' },
    ]);
    return {
      ...emptyDocument({ kind: 'shift', id: `${rig}_${index}` }),
      tables: { shift: { shift: header }, activities: Object.fromEntries(things) },
    } as Document;
  });
  return { documents, moment };
}

describe('each rod, each shot and each minute', () => {
  test('belong to one shift of their rig at the most, whatever was left open or overlaps, also in a hole that two rigs drilled', () => {
    fc.assert(
      fc.property(anyWeek, fc.integer({ min: -200, max: 4500 }), (given, taken) => {
        const { documents, moment } = week(given);
        const now = moment(5000);
        const context = { documents, shifts, now };
        const begun = (rig: string, minute: number) => ({
          method: 'RC',
          rig,
          fromMm: 0,
          startedAt: moment(minute),
        });
        const stamps = given.minutes.toSorted((a, b) => a - b).map(moment);
        const holes = [
          [begun('RIG1', -300)],
          [begun('RIG2', -300)],
          [begun('RIG1', -300), begun('RIG2', taken)],
        ].map((drilling, index) =>
          hole(`Z${index}`, {
            drilling,
            rods: stamps.map((at, each) => ({ ...rod('06:00', (each + 1) * 6), at })),
            shots: stamps.map((at, each) => ({ at, depthMm: (each + 1) * 6000 })),
          }),
        );
        const records = documents.map((shift) => ownRecord(closed(shift, context), holes, now));
        for (const each of holes) {
          const held = stamps.filter((at) => {
            const rig = rigAt(each, at);
            return rig !== undefined && shiftHolding(at, rig, context) !== undefined;
          });
          for (const [index, at] of stamps.entries()) {
            const counted = records.filter((record) =>
              record.metres.some((metres) => metres.hole === each.id && metres.toMm === (index + 1) * 6000),
            );
            expect(counted.length).toBe(held.includes(at) ? 1 : 0);
          }
          const shots = records.reduce((sum, record) => sum + (record.shots.get(each.id) ?? 0), 0);
          expect(shots).toBe(held.length);
        }
      }),
      { numRuns: runs(300) },
    );
  });

  test('are an activity or a gap of that shift, and no two shifts of a rig overlap', () => {
    fc.assert(
      fc.property(anyWeek, (given) => {
        const { documents, moment } = week(given);
        const now = moment(5000);
        const hours = documents.map((stored) => {
          const shift = closed(stored, { documents, shifts, now });
          const { rig, startsAt, endedAt = now } = shiftHeaderOf(shift);
          const minutes = Math.max(0, (instantMs(endedAt) - instantMs(startsAt)) / 60_000);
          const told = spansOf(shift, now).reduce((sum, span) => sum + span.minutes, 0);
          const gaps = gapsOf(shift, now).reduce((sum, gap) => sum + gap.minutes, 0);
          expect(told + gaps).toBe(minutes);
          return { rig, from: instantMs(startsAt), to: instantMs(endedAt) };
        });
        for (const rig of ['RIG1', 'RIG2']) {
          const own = hours.filter((each) => each.rig === rig).sort((a, b) => a.from - b.from || a.to - b.to);
          for (const [index, each] of own.entries())
            expect(each.from).toBeGreaterThanOrEqual(own[index - 1]?.to ?? Number.NEGATIVE_INFINITY);
        }
      }),
      { numRuns: runs(300) },
    );
  });
});
