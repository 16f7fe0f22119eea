import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instantMs, type Stamp, stamp } from '../../src/quantity/stamp.ts';
import type { Document } from '../../src/record/document.ts';
import { startActivity } from '../../src/shift/commands.ts';
import {
  activityAt,
  currentActivity,
  gapsOf,
  minutesByClass,
  shiftMinutes,
  spansOf,
  unrecordedMinutes,
} from '../../src/shift/current.ts';
import { runs } from '../support/long-run.ts';
import { at, doing, ended, granted, HEADER, having, makerAt, RULES, STARTED } from './build.ts';

const morning = doing(
  STARTED,
  ['06:00', { activity: 'travel' }],
  ['06:45', { activity: 'drilling', hole: 'ZQRC004' }],
  ['09:00', { activity: 'standby', authorisedBy: 'Ada' }],
  ['09:20', { activity: 'drilling', hole: 'ZQRC004' }],
);

describe('the activities of a shift', () => {
  test('each last to the start of the next, the last one to now while the shift goes on', () => {
    expect(spansOf(morning, at('10:02')).map(({ activity, minutes }) => [activity, minutes])).toEqual([
      ['travel', 45],
      ['drilling', 135],
      ['standby', 20],
      ['drilling', 42],
    ]);
    expect(currentActivity(morning, at('10:02'))).toMatchObject({ activity: 'drilling', minutes: 42 });
  });

  test('end with the shift, and none is current after it', () => {
    const done = ended(morning, '18:00');
    expect(spansOf(done, at('20:00')).at(-1)?.minutes).toBe(520);
    expect(currentActivity(done, at('20:00'))).toBeUndefined();
  });

  test('add up by charge class, every class named', () => {
    expect(minutesByClass(spansOf(morning, at('10:02')))).toEqual({
      metres: 177,
      'active hourly': 45,
      'standby hourly': 20,
      'no charge': 0,
      'lump sum': 0,
    });
  });

  test('are found by instant', () => {
    const spans = spansOf(morning, at('10:02'));
    expect(activityAt(spans, at('05:59'))).toBeUndefined();
    expect(activityAt(spans, at('08:59:59'))?.activity).toBe('drilling');
    expect(activityAt(spans, at('09:00'))?.activity).toBe('standby');
  });

  test('are none before the first one', () => {
    expect(currentActivity(STARTED, at('07:00'))).toBeUndefined();
    expect(unrecordedMinutes(STARTED, at('07:00'))).toBe(60);
  });
});

/** A shift whose activities lie anywhere, as other copies or hands may leave them: before it, after it, in any order. */
const anyShift = fc
  .record({
    starts: fc.array(fc.tuple(fc.integer({ min: -7200, max: 60_000 }), fc.integer({ min: -600, max: 600 })), {
      maxLength: 8,
    }),
    end: fc.option(fc.integer({ min: 0, max: 50_000 }), { nil: undefined }),
    now: fc.integer({ min: 0, max: 60_000 }),
  })
  .map(({ starts, end, now }) => {
    const from = instantMs(HEADER.startsAt);
    const moment = (seconds: number, offset = 480): Stamp => stamp(from + seconds * 1000, offset);
    const activities = starts.map(([seconds, offset], index) => [
      `k1-${index}x`,
      { startedAt: moment(seconds, offset), activity: 'drilling', charge: 'metres' },
    ]);
    const header = { ...HEADER, ...(end === undefined ? {} : { endedAt: moment(end) }) };
    const shift = {
      ...STARTED,
      tables: { shift: { shift: header }, activities: Object.fromEntries(activities) },
    } as Document;
    return { shift, now: moment(now), starts: starts.map(([seconds]) => seconds) };
  });

describe('the minutes of a shift', () => {
  test('are those of its activities and those before the first one, whatever the clocks said', () => {
    fc.assert(
      fc.property(anyShift, ({ shift, now }) => {
        const spans = spansOf(shift, now);
        expect(spans.every((span) => span.minutes >= 0)).toBe(true);
        const recorded = spans.reduce((minutes, span) => minutes + span.minutes, 0);
        const before = unrecordedMinutes(shift, now);
        expect(before).toBeGreaterThanOrEqual(0);
        expect(recorded + before).toBe(shiftMinutes(shift, now));
        expect(gapsOf(shift, now).reduce((all, gap) => all + gap.minutes, 0)).toBe(before);
        const classes = Object.values(minutesByClass(spans)).reduce((all, each) => all + each, 0);
        expect(classes).toBe(recorded);
      }),
      { numRuns: runs(500) },
    );
  });

  test('are all recorded where an activity starts with the shift', () => {
    fc.assert(
      fc.property(anyShift, ({ shift, now, starts }) => {
        if (starts.some((seconds) => seconds <= 0)) expect(unrecordedMinutes(shift, now)).toBe(0);
      }),
      { numRuns: runs(500) },
    );
  });

  test('keep their order where the rig crosses a time zone and its clock goes back', () => {
    const start = instantMs(at('07:00'));
    const clocks = [480, 570, 480, 420];
    const shift = clocks.reduce(
      (document, offset, index) =>
        having(
          document,
          granted(
            startActivity(
              document,
              RULES,
              { activity: 'drilling', remark: `${index}` },
              makerAt(stamp(start + index * 600_000, offset)),
            ),
          ),
        ),
      STARTED,
    );
    const spans = spansOf(shift, stamp(start + 2_400_000, 480));
    expect(spans.map((span) => [span.remark, span.minutes])).toEqual([
      ['0', 10],
      ['1', 10],
      ['2', 10],
      ['3', 10],
    ]);
  });

  test('keep the order in which they were entered, however far a clock jumps back', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -40_000, max: 40_000 }), { minLength: 1, maxLength: 10 }),
        (jumps) => {
          const start = instantMs(HEADER.startsAt);
          const shift = jumps.reduce(
            (document, seconds, index) =>
              having(
                document,
                granted(
                  startActivity(
                    document,
                    RULES,
                    { activity: 'drilling', remark: `${index}` },
                    makerAt(stamp(start + seconds * 1000, 480)),
                  ),
                ),
              ),
            STARTED,
          );
          const spans = spansOf(shift, at('20:00'));
          expect(spans.map((span) => span.remark)).toEqual(jumps.map((_, index) => `${index}`));
          expect(currentActivity(shift, at('20:00'))?.remark).toBe(`${jumps.length - 1}`);
        },
      ),
    );
  });
});
