import { afterAll, describe, expect, test } from 'vitest';
import type { Finding } from '../../src/finding/finding.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import { instantMs, localTime, type Stamp, stamp } from '../../src/quantity/stamp.ts';
import type { Document } from '../../src/record/document.ts';
import { emptyDocument, type Thing } from '../../src/record/document.ts';
import { startShift } from '../../src/shift/commands.ts';
import { recordPlod } from '../../src/shift/plod-commands.ts';
import { type NewPlodLine, parsePlodLine } from '../../src/shift/plod-line.ts';
import { queryList } from '../../src/shift/query-list.ts';
import { FIXED_SEED, LONG_RUN, runs } from '../support/long-run.ts';
import { at, granted, HEADER, having, hole, makerAt, rulesOf, SETTINGS } from './build.ts';

/*
 * Sheets as a driller writes them, from memory at the end of a shift: times to the nearest five minutes by a watch of their own, stretches of one activity
 * written as one line or a long one as two, by day or by night over midnight, on two holes. All of that is honest and raises nothing.
 * A line of money is queried past what the tolerated quarter of an hour comes to.
 */
const RULES = rulesOf({ ...SETTINGS, tolerances: { ...SETTINGS.tolerances, cents: 20_000 } });
const HOLES = ['ZQRC004', 'ZQRC005'] as const;

/** Numbers between 0 and 1, the same for the same seed. */
function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A stretch of the shift as it was, and as the sheet has it; minutes count from the start of the shift. */
interface Stretch {
  readonly activity: string;
  readonly from: number;
  readonly to: number;
  readonly hole: (typeof HOLES)[number];
  readonly fromM?: number;
  readonly toM?: number;
  readonly shots?: number;
  readonly wet?: boolean;
}

interface Pair {
  readonly startsAt: Stamp;
  readonly shift: Document;
  readonly holes: readonly Document[];
  readonly sheet: readonly Stretch[];
}

const five = (minute: number): number => Math.round(minute / 5) * 5;

function pairFrom(next: () => number): Pair {
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  const isNight = next() < 0.5;
  const startsAt = isNight ? at('18:00') : at('06:00');
  const moment = (minute: number, seconds = 0): Stamp =>
    stamp(instantMs(startsAt) + minute * 60_000 + seconds * 1000, 480);
  const moves = whole(180, 540);
  const depths: Record<string, number> = { [HOLES[0]]: 60, [HOLES[1]]: 0 };
  const stretches: Stretch[] = [];
  const rods: Record<string, Thing[]> = { [HOLES[0]]: [], [HOLES[1]]: [] };
  const shots: Record<string, Thing[]> = { [HOLES[0]]: [], [HOLES[1]]: [] };
  for (let minute = 0; minute < 720; ) {
    const length = 720 - minute < 70 ? 720 - minute : Math.min(whole(30, 140), 720 - minute - 30);
    const here = minute < moves ? HOLES[0] : HOLES[1];
    const kinds = ['drilling', 'drilling', 'drilling', 'reaming', 'standby', 'breakdown'];
    const activity = stretches.length === 0 ? 'standby' : (kinds[whole(0, kinds.length - 1)] ?? 'drilling');
    const fromM = depths[here] ?? 0;
    const count = activity === 'drilling' ? Math.floor(length / whole(14, 26)) : 0;
    for (let each = 1; each <= count; each += 1) {
      const when = minute + Math.floor((each * (length - 6)) / count) + 1;
      rods[here]?.push({
        at: moment(when, whole(0, 59)),
        rod: (fromM + each * 6) / 6,
        depthMm: (fromM + each * 6) * 1000,
      });
    }
    depths[here] = fromM + count * 6;
    const isShot = activity === 'reaming' && next() < 0.6;
    if (isShot) shots[here]?.push({ at: moment(minute + 10, whole(0, 59)), depthMm: fromM * 1000 });
    stretches.push({
      activity,
      from: minute,
      to: minute + length,
      hole: here,
      ...(count > 0 ? { fromM, toM: fromM + count * 6 } : {}),
      ...(isShot ? { shots: 1 } : {}),
    });
    minute += length;
  }
  const activities = stretches.map(({ activity, from, hole: on }, index) => [
    `k1-${index}`,
    {
      startedAt: moment(from, from === 0 ? 0 : whole(0, 59)),
      activity,
      charge: RULES.activities.find((each) => each.code === activity)?.charge,
      hole: on,
      ...(activity === 'standby' ? { authorisedBy: 'Ada' } : {}),
    },
  ]);
  const begun = having(
    emptyDocument({ kind: 'shift', id: `RIG1_2026-03-14_${isNight ? 'NIGHT' : 'DAY'}` }),
    startShift({ ...HEADER, name: isNight ? 'night' : 'day', startsAt, endedAt: moment(720) }),
  );
  const drilling = [{ method: 'RC', rig: 'RIG1', fromMm: 0, startedAt: at('05:00', -1) }];
  const above = { at: at('05:30', -1), rod: 10, depthMm: 60_000 };
  return {
    startsAt,
    shift: { ...begun, tables: { ...begun.tables, activities: Object.fromEntries(activities) } } as Document,
    holes: HOLES.map((id) =>
      hole(id, {
        drilling,
        rods: [...(id === HOLES[0] ? [above] : []), ...(rods[id] ?? [])],
        shots: shots[id] ?? [],
      }),
    ),
    sheet: written(stretches, next),
  };
}

/** The stretches as a driller writes them: by a watch up to four minutes off, rounded, same after same on one line, a long one sometimes as two. */
function written(stretches: readonly Stretch[], next: () => number): readonly Stretch[] {
  const merged: Stretch[] = [];
  const watch = Math.floor(next() * 9) - 4;
  const byWatch = (minute: number): number => (minute % 720 === 0 ? minute : five(minute + watch));
  for (const each of stretches) {
    const last = merged.at(-1);
    const rounded = { ...each, from: byWatch(each.from), to: byWatch(each.to) };
    const isSame = last?.activity === each.activity && last.hole === each.hole && next() < 0.7;
    if (last === undefined || !isSame) merged.push(rounded);
    else {
      const [fromM, toM] = [last.fromM ?? rounded.fromM, rounded.toM ?? last.toM];
      const count = (last.shots ?? 0) + (rounded.shots ?? 0);
      merged[merged.length - 1] = {
        ...last,
        to: rounded.to,
        ...(fromM === undefined || toM === undefined ? {} : { fromM, toM }),
        ...(count === 0 ? {} : { shots: count }),
      };
    }
  }
  return merged.flatMap((each) => {
    if (each.to - each.from < 100 || next() < 0.6) return [each];
    const middle = five((each.from + each.to) / 2);
    const { shots: _, ...second } = each;
    return [
      { ...each, to: middle },
      // The metres stay on the first of the two lines, as they are often written.
      { activity: second.activity, hole: second.hole, from: middle, to: each.to },
    ];
  });
}

/** The sheet typed line by line, as it is at the console, and read by the same reader; a wrong one is insisted on. */
function typed({ startsAt }: Pair, sheet: readonly Stretch[]): readonly NewPlodLine[] {
  const clock = (minute: number): string => localTime(stamp(instantMs(startsAt) + minute * 60_000, 480));
  const above: NewPlodLine[] = [];
  for (const { activity, from, to, hole: on, fromM, toM, shots, wet } of sheet) {
    const metres = fromM === undefined || toM === undefined ? '' : ` ${fromM}-${toM}`;
    const text = `${clock(from)}-${clock(to)} ${activity} ${on}${metres}${shots === undefined ? '' : ` ${shots}sh`}${wet === true ? ' wet' : ''} =`;
    above.push(
      granted(
        parsePlodLine(text, {
          activities: RULES.activities,
          holes: new Map(HOLES.map((id) => [id, id])),
          startsAt,
          endsAt: stamp(instantMs(startsAt) + 720 * 60_000, 480),
          stamps: [],
          above,
          drilledMm: new Map(HOLES.map((id) => [id, depthFromMm(5_000_000)])),
        }),
      ),
    );
  }
  return above;
}

function reconciled(pair: Pair, sheets: readonly (readonly Stretch[])[]) {
  const shift = sheets.reduce(
    (document, sheet, index) =>
      having(
        document,
        granted(
          recordPlod(
            document,
            { sheet: `104${index}`, receivedAt: at('07:00', 1) },
            typed(pair, sheet),
            makerAt(at('07:00', 1)),
          ),
        ),
      ),
    pair.shift,
  );
  return queryList(shift, pair.holes, RULES, at('20:00', 2));
}

/** A sheet with one thing wrong: what it must be found as, and the minutes that it must be pointed at. */
interface Planted {
  readonly sheets: readonly (readonly Stretch[])[];
  readonly code: string;
  readonly from: number;
  readonly to: number;
}

type Plant = (pair: Pair, next: () => number) => Planted | undefined;

const pick = <T>(list: readonly T[], next: () => number): T | undefined =>
  list[Math.floor(next() * list.length)];
const changed = (
  pair: Pair,
  wrong: Stretch | undefined,
  code: string,
  set: Partial<Stretch>,
): Planted | undefined =>
  wrong && {
    sheets: [pair.sheet.map((each) => (each === wrong ? { ...each, ...set } : each))],
    code,
    from: set.from ?? wrong.from,
    to: wrong.to,
  };

const PLANTS: Readonly<Record<string, Plant>> = {
  'standby moved to active': (pair, next) =>
    changed(
      pair,
      pick(
        pair.sheet.filter((each) => each.activity === 'standby' && each.to - each.from > 25),
        next,
      ),
      'plod-time-differs',
      { activity: 'reaming' },
    ),
  'metres over-claimed': (pair, next) => {
    const wrong = pick(
      pair.sheet.filter(({ toM }) => toM !== undefined),
      next,
    );
    return changed(pair, wrong, 'plod-metres-differ', {
      toM: (wrong?.toM ?? 0) + 1 + Math.floor(next() * 12),
    });
  },
  'dry metres called wet': (pair, next) =>
    changed(
      pair,
      pick(
        pair.sheet.filter(({ toM }) => toM !== undefined),
        next,
      ),
      'plod-metres-differ',
      { wet: true },
    ),
  'a shot too many': (pair, next) => {
    const wrong = pick(pair.sheet, next);
    return changed(pair, wrong, 'plod-shots-differ', { shots: (wrong?.shots ?? 0) + 1 });
  },
  'a shift typed twice': (pair) => ({
    sheets: [pair.sheet, pair.sheet],
    code: 'plod-times-overlap',
    from: 0,
    to: 720,
  }),
  'overlapping times': (pair, next) => {
    const wrong = pick(pair.sheet.slice(1), next);
    const early = (wrong?.from ?? 0) - 20 - 5 * Math.floor(next() * 2);
    const planted = changed(pair, wrong, 'plod-times-overlap', { from: early });
    return planted && wrong && { ...planted, to: wrong.from };
  },
  'the wrong hole': (pair, next) => {
    const wrong = pick(
      pair.sheet.filter((each) => each.to - each.from > 25),
      next,
    );
    return changed(pair, wrong, 'plod-hole-differs', {
      hole: wrong?.hole === HOLES[0] ? HOLES[1] : HOLES[0],
    });
  },
  'hourly work called another of its class': (pair, next) => {
    const wrong = pick(
      pair.sheet.filter((each) => each.activity === 'reaming' && each.to - each.from > 25),
      next,
    );
    return changed(pair, wrong, 'plod-activity-differs', { activity: 'travel' });
  },
  'time left out': (pair, next) => {
    const wrong = pick(
      pair.sheet.filter((each) => each.to - each.from > 25),
      next,
    );
    return (
      wrong && {
        sheets: [pair.sheet.filter((each) => each !== wrong)],
        code: 'plod-time-missing',
        from: wrong.from,
        to: wrong.to,
      }
    );
  },
};

/** True where a query names a stretch of the clock that meets the one that was put wrong. */
function pointsAt({ startsAt }: Pair, { from, to }: Planted, { place, problem }: Finding): boolean {
  const minute = (clock: string): number => {
    const of = Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
    return (of - (localTime(startsAt) === '06:00' ? 360 : 1080) + 1440) % 1440;
  };
  return [...`${place.thing} ${problem}`.matchAll(/(\d\d:\d\d)–(\d\d:\d\d)/g)].some(
    ([, first = '', last = '']) => minute(first) < to && (minute(last) || 720) > from,
  );
}

const figures: string[] = [];
afterAll(() => {
  if (LONG_RUN) console.info(figures.join('\n'));
});
const BASE = LONG_RUN ? Math.floor(Math.random() * 1e9) : FIXED_SEED;
const COUNT = runs(1000);

const isSum = ({ ownBill, plodBill }: ReturnType<typeof reconciled>): boolean =>
  [ownBill, plodBill].every((bill) => bill.lines.reduce((sum, line) => sum + line.cents, 0) === bill.total);

describe('sheets written from memory', () => {
  test('that are honest raise nothing', () => {
    const reported: string[] = [];
    for (let each = 0; each < COUNT; each += 1) {
      const pair = pairFrom(numbersFrom(BASE + each));
      const found = reconciled(pair, [pair.sheet]);
      expect(isSum(found)).toBe(true);
      if (found.queries.length > 0)
        reported.push(`seed ${BASE + each}: ${found.queries.map(({ problem }) => problem).join(' | ')}`);
    }
    figures.push(`clean: ${reported.length} of ${COUNT} with something reported`);
    expect(reported).toEqual([]);
  });

  test.each(Object.entries(PLANTS))(
    'with one thing wrong: %s is found, and pointed at in time',
    (name, plant) => {
      let [planted, found, pointed] = [0, 0, 0];
      const missed: string[] = [];
      for (let each = 0; each < COUNT; each += 1) {
        const next = numbersFrom(BASE + 7 * each);
        const pair = pairFrom(next);
        const wrong = plant(pair, next);
        if (wrong === undefined) continue;
        planted += 1;
        const result = reconciled(pair, wrong.sheets);
        expect(isSum(result)).toBe(true);
        const hits = result.queries.filter(({ code }) => code === wrong.code);
        if (hits.length > 0) found += 1;
        if (hits.some((query) => pointsAt(pair, wrong, query))) pointed += 1;
        else
          missed.push(
            `seed ${BASE + 7 * each}, ${wrong.from}–${wrong.to}: ${result.queries.map(({ code, problem }) => `${code} ${problem}`).join(' | ')}`,
          );
      }
      figures.push(`${name}: ${planted} planted, ${found} found, ${pointed} pointed at in time`);
      expect(planted).toBeGreaterThan(COUNT * 0.6);
      expect(missed).toEqual([]);
    },
  );

  test('with several things wrong: the differences of the lines of money explain the net difference', () => {
    for (let each = 0; each < COUNT; each += 1) {
      const next = numbersFrom(BASE + 13 * each);
      const pair = pairFrom(next);
      const [first] = PLANTS['standby moved to active']?.(pair, next)?.sheets ?? [pair.sheet];
      const [second] = PLANTS['metres over-claimed']?.({ ...pair, sheet: first ?? [] }, next)?.sheets ?? [
        first,
      ];
      const sheets = [second ?? [], ...(next() < 0.5 ? [pair.sheet] : [])];
      const { comparisons, ownBill, plodBill } = reconciled(pair, sheets);
      const money = comparisons.filter((one) => one.subject === 'money');
      expect(money.reduce((sum, one) => sum + one.difference, 0)).toBe(plodBill.total - ownBill.total);
    }
  });
});
