import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { type PlannedLine, plannedPoint } from '../../../src/survey/path/miss.ts';
import { pathThrough } from '../../../src/survey/path/path.ts';
import { pointAt } from '../../../src/survey/path/projection.ts';
import { basisWords, chanceWords, growthWords } from '../../../src/survey/path/target-words.ts';
import {
  chanceAtTarget,
  chanceBasis,
  disturbed,
  growthBelow,
  squareFrame,
  uncertaintyAt,
} from '../../../src/survey/path/uncertainty.ts';
import { dot, length, minus, ORIGIN, plus, times, type Vector } from '../../../src/survey/path/vector.ts';
import { type ErrorClass, surveySettingsOf, type ToolErrors } from '../../../src/survey/settings.ts';
import { bestStations, type RankedStation } from '../../../src/survey/shots/runs.ts';
import { AT, pointing, runOf, station } from '../build.ts';

const at = depthFromMetres;
const NONE: ToolErrors = {
  azimuthRandomDeg: 0,
  azimuthSystematicDeg: 0,
  dipRandomDeg: 0,
  dipSystematicDeg: 0,
  depthRandomM: 0,
  depthSystematicPerCent: 0,
};
const QUIET: Readonly<Record<ErrorClass, ToolErrors>> = {
  magnetic: NONE,
  'gyro aligned at the collar': NONE,
  'north-seeking gyro': NONE,
  'line-up': NONE,
};

const lineUp: RankedStation = { ...station(0, 90, -60), toolClass: 'line-up', run: undefined };
const shot = (depthM: number, azimuthDeg: number, dipDeg: number, toolClass: ErrorClass): RankedStation => ({
  ...station(depthM, azimuthDeg, dipDeg),
  toolClass,
  run: 'zq1-1',
});
const hole = (toolClass: ErrorClass): readonly RankedStation[] => [
  lineUp,
  shot(30, 90.6, -59.5, toolClass),
  shot(60, 91.5, -58.8, toolClass),
  shot(90, 92.1, -58.4, toolClass),
  shot(120, 93, -58.1, toolClass),
];

describe('one error alone', () => {
  test('of dip in the line-up moves a hole without shots by the depth times the angle', () => {
    const errors = { ...QUIET, 'line-up': { ...NONE, dipSystematicDeg: 1 } };
    const { spread, alongM } = uncertaintyAt([lineUp], at(200), errors, 'straight');
    const byItself = uncertaintyAt([lineUp], at(200), QUIET, 'straight').spread;
    expect(Math.sqrt(spread.xx - byItself.xx)).toBeCloseTo(3.49, 2);
    expect(spread.yy).toBeCloseTo(byItself.yy, 6);
    expect(alongM).toBeLessThan(0.04);
  });

  test('of azimuth moves it sideways, as the cosine of the dip', () => {
    const errors = { ...QUIET, 'line-up': { ...NONE, azimuthSystematicDeg: 1 } };
    const { spread } = uncertaintyAt([lineUp], at(200), errors, 'straight');
    const byItself = uncertaintyAt([lineUp], at(200), QUIET, 'straight').spread;
    expect(Math.sqrt(spread.yy - byItself.yy)).toBeCloseTo(3.49 / 2, 2);
    expect(Math.sqrt(spread.xx - byItself.xx)).toBeLessThan(0.02);
  });

  test('of the line-up is inherited by a gyro aligned at the collar, and not by a north-seeking one', () => {
    const errors = { ...QUIET, 'line-up': { ...NONE, azimuthSystematicDeg: 1 } };
    const long = (toolClass: ErrorClass) =>
      uncertaintyAt(hole(toolClass), at(120), errors, 'straight').ellipse.longM;
    expect(long('gyro aligned at the collar')).toBeGreaterThan(1);
    expect(long('north-seeking gyro')).toBeLessThan(0.2);
  });

  test('that is random averages out over shots; a systematic one does not', () => {
    const random = { ...QUIET, magnetic: { ...NONE, azimuthRandomDeg: 1 } };
    const systematic = { ...QUIET, magnetic: { ...NONE, azimuthSystematicDeg: 1 } };
    const long = (errors: typeof QUIET) =>
      uncertaintyAt(hole('magnetic'), at(120), errors, 'straight').ellipse.longM;
    expect(long(random)).toBeLessThan(0.7 * long(systematic));
  });

  test('of depth lies along the hole', () => {
    const errors = { ...QUIET, magnetic: { ...NONE, depthRandomM: 0.3, depthSystematicPerCent: 0.4 } };
    const { alongM, ellipse } = uncertaintyAt(hole('magnetic'), at(100), errors, 'straight');
    expect(alongM).toBeCloseTo(0.5, 9);
    expect(ellipse.longM).toBe(uncertaintyAt(hole('magnetic'), at(100), QUIET, 'straight').ellipse.longM);
  });
});

describe('an azimuth that was never measured', () => {
  const dipsOf = (toolClass: Exclude<ErrorClass, 'line-up'>) =>
    bestStations({
      place: AT,
      north: 'grid',
      lineUp: { direction: pointing(90, -60), angles: {} },
      runs: [
        runOf(
          [
            [30, undefined, -60],
            [60, undefined, -60],
            [90, undefined, -60],
          ],
          { toolClass, north: 'grid' },
        ),
      ],
      anglesOf: () => ({}),
      settings: { longestGapM: 40, steelM: 6 },
    }).stations;
  const across = (stations: readonly RankedStation[]) =>
    Math.sqrt(uncertaintyAt(stations, at(120), surveySettingsOf().toolErrors, 'straight').spread.yy);

  test.each(['magnetic', 'north-seeking gyro', 'gyro aligned at the collar'] as const)(
    'is known no better than the line-up it is taken from, whatever tool read the dips: %s',
    (toolClass) => {
      expect(across(dipsOf(toolClass))).toBeCloseTo(across([lineUp]), 6);
      expect(across([lineUp])).toBeGreaterThan(1);
    },
  );

  test('between two measured ones inherits from both, each by its share', () => {
    const { stations } = bestStations({
      place: AT,
      north: 'grid',
      lineUp: { direction: pointing(90, -60), angles: {} },
      runs: [
        runOf(
          [
            [40, undefined, -60],
            [60, 92, -60],
          ],
          { north: 'grid' },
        ),
      ],
      anglesOf: () => ({}),
      settings: { longestGapM: 40, steelM: 6 },
    });
    expect(stations[1]?.azimuthFrom?.map(({ run, share }) => [run, share.toFixed(3)])).toEqual([
      [undefined, '0.333'],
      ['zq1-1', '0.667'],
    ]);
  });

  test('leaves a chance that is at most 99 %, and says what it rests on', () => {
    expect(chanceBasis([lineUp])).toBe('line-up');
    expect(chanceBasis(dipsOf('magnetic'))).toBe('line-up and dips');
    expect(chanceBasis(hole('magnetic'))).toBe('shots');
    expect(chanceWords(1, 'line-up')).toBe('at most 99 %');
    expect(chanceWords(0, 'line-up')).toBe('at most 1 %');
    expect(chanceWords(1, 'line-up and dips')).toBe('at most 99 %');
    expect(chanceWords(1, 'shots')).toBe('over 99 %');
    expect(chanceWords(1, 'shots marked as wrong')).toBe('not known');
    expect(chanceWords(1, 'no line-up')).toBe('not known');
    expect(chanceWords(1, 'shots that are left')).toBe('at most 99 %');
    expect(chanceWords(0.4, 'shots that are left')).toBe('about 40 %');
    expect(basisWords('line-up')).toContain('no shot to go by: it rests on the line-up alone');
    expect(basisWords('line-up and dips')).toContain('no azimuth to go by');
  });
});

describe('a hole that no one measured', () => {
  /** One sigma of how far 3000 holes come off their line in 120 m, walked metre by metre: a bend of their own and a wander. */
  const walkedM = (bendPer30m: number) => {
    const draw = normals(20260601);
    const degree = Math.PI / 180;
    const away = Array.from({ length: 3000 }, () => {
      const bend = (draw() * bendPer30m * degree) / 30;
      let [angle, off] = [0, 0];
      for (let metre = 0; metre < 120; metre++) {
        const turned = bend + (draw() * 0.35 * degree) / Math.sqrt(30);
        off += angle + turned / 2;
        angle += turned;
      }
      return off;
    });
    return Math.sqrt(away.reduce((sum, each) => sum + each ** 2, 0) / away.length);
  };

  test('strays from its line by its own bend and wander, as holes walked metre by metre do, to 4 %', () => {
    const { spread } = uncertaintyAt([lineUp], at(120), QUIET, 'straight');
    expect(Math.abs(Math.sqrt(spread.xx) / walkedM(0.55) - 1)).toBeLessThan(0.04);
    expect(Math.abs(Math.sqrt(spread.yy) / walkedM(0.45) - 1)).toBeLessThan(0.04);
    expect(Math.sqrt(spread.yy)).toBeGreaterThan(2);
  });

  test('strays sideways alone where its dips are measured, and no more once its azimuths are', () => {
    const at120 = (stations: readonly RankedStation[]) =>
      uncertaintyAt(stations, at(120), QUIET, 'straight').spread;
    const from = [{ toolClass: 'line-up' as const, run: undefined, depthMm: 0, share: 1 }];
    const dips = hole('magnetic').map((one) => (one.run === undefined ? one : { ...one, azimuthFrom: from }));
    // Between shots 30 m apart it strays no more than 0.05 m a shot.
    expect(at120(dips).xx).toBeLessThan(4 * 0.06 ** 2);
    expect(at120(dips).yy).toBeCloseTo(at120([lineUp]).yy, 6);
    expect(at120(hole('magnetic')).yy).toBeLessThan(4 * 0.06 ** 2);
  });
});

test('a direction pushed past vertical comes up on the other side', () => {
  expect(disturbed(pointing(90, -89.5), 0, -1)).toEqual(pointing(270, -89.5));
});

/** Numbers from 0 to 1, the same every time (mulberry32), made normal in pairs by Box & Muller 1958. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

describe('below the last shot', () => {
  const stations = hole('north-seeking gyro');
  const sigma = (depthM: number, projection: 'straight' | 'trend' = 'straight') =>
    uncertaintyAt(stations, at(depthM), QUIET, projection).ellipse.longM;

  test('a hole strays by itself, the more the further no one has measured', () => {
    expect(sigma(120)).toBeCloseTo(0.11, 2);
    expect(sigma(150)).toBeCloseTo(0.21, 2);
    expect(sigma(180)).toBeCloseTo(0.66, 2);
    expect(sigma(240)).toBeGreaterThan(2);
  });

  test('less on the trend, which knows the bend, but never not at all', () => {
    expect(sigma(180, 'trend')).toBeLessThan(sigma(180));
    expect(sigma(180, 'trend')).toBeGreaterThan(0.3);
  });

  test('its growth is said from the last shot to the target, and nothing where the target is measured', () => {
    const growth = growthBelow(stations, at(180), QUIET);
    expect(growthWords(growth)).toBe('One sigma grows: 0.1 m at 120 m, 0.2 m at 150 m, 0.7 m at 180 m');
    expect(growthBelow(stations, at(110), QUIET)).toEqual([]);
  });

  test('between shots it strays little, and more the further they are apart', () => {
    const apart = stations.filter(({ depthMm }) => depthMm === 0 || depthMm === 120_000);
    const { longM } = uncertaintyAt(apart, at(120), QUIET, 'straight').ellipse;
    expect(longM).toBeCloseTo(((0.35 * Math.PI) / 180) * Math.sqrt(120 ** 3 / 30 / 12), 3);
  });
});

describe('against a Monte Carlo run', () => {
  const errors = surveySettingsOf().toolErrors;
  const stations = hole('gyro aligned at the collar');
  const own = errors['gyro aligned at the collar'];
  const set = errors['line-up'];
  const plan: PlannedLine = { direction: pointing(91, -59.5), targetMm: at(150), from: ORIGIN };
  const draw = normals(20260314);

  /** The hole with every error drawn once: the same model as the product's, another way of working it out. */
  function drawn(): readonly RankedStation[] {
    const lineUpTurn = draw() * set.azimuthSystematicDeg;
    const lineUpDip = draw() * set.dipSystematicDeg;
    const runTurn = draw() * own.azimuthSystematicDeg + lineUpTurn;
    const runDip = draw() * own.dipSystematicDeg;
    return stations.map((one) => {
      if (one.toolClass === 'line-up') return { ...one, ...disturbed(one, lineUpTurn, lineUpDip) };
      const turn = runTurn + draw() * own.azimuthRandomDeg;
      return { ...one, ...disturbed(one, turn, runDip + draw() * own.dipRandomDeg) };
    });
  }

  /** How far a hole is off its straight line after so many metres that no one measured, walked metre by metre: one bend, and a step of wander each. */
  function walked(metres: number, bendPer30m: number): number {
    const bend = ((draw() * bendPer30m) / 30) * (Math.PI / 180);
    const wander = ((0.35 * Math.PI) / 180) * Math.sqrt(1 / 30);
    let [angle, off] = [0, 0];
    for (let metre = 0; metre < metres; metre++) {
      const step = bend + draw() * wander;
      off += angle + step / 2;
      angle += step;
    }
    return off;
  }

  const target = plannedPoint(plan, plan.targetMm);
  const chance = chanceAtTarget(stations, plan, 3, errors, 'straight');
  const unmeasured = Math.round(chance.atMm / 1000 - 120);
  const positions: Vector[] = [];
  let passed = 0;
  for (let index = 0; index < 20_000; index++) {
    const path = pathThrough(drawn(), AT);
    if (!path.ok) throw new Error('no path');
    const here = pointAt(path.value, chance.atMm, 'straight');
    const { up, right, down: tangent } = squareFrame(here);
    const strayed = plus(times(up, walked(unmeasured, 0.55)), times(right, walked(unmeasured, 0.45)));
    const last = plus(here.offset, strayed);
    positions.push(last);
    const away = minus(last, target);
    const square = Math.sqrt(Math.max(0, length(away) ** 2 - dot(away, tangent) ** 2));
    if (square <= 3) passed++;
  }

  test('the spread at the target is that of 20,000 drawn holes, to 3 %', () => {
    const path = pathThrough(stations, AT);
    if (!path.ok) throw new Error('no path');
    const here = pointAt(path.value, chance.atMm, 'straight');
    const frame = squareFrame(here);
    const variance = (axis: Vector) =>
      positions.reduce((sum, one) => sum + dot(minus(one, here.offset), axis) ** 2, 0) / positions.length;
    expect(Math.abs(Math.sqrt(variance(frame.up) / chance.uncertainty.spread.xx) - 1)).toBeLessThan(0.03);
    expect(Math.abs(Math.sqrt(variance(frame.right) / chance.uncertainty.spread.yy) - 1)).toBeLessThan(0.03);
  });

  test('the probability of passing within the radius is that of 20,000 drawn holes, to 0.02', () => {
    expect(chance.probability).toBeGreaterThan(0.05);
    expect(chance.probability).toBeLessThan(0.95);
    expect(Math.abs(chance.probability - passed / 20_000)).toBeLessThan(0.02);
  });
});
