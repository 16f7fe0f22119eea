import { describe, expect, test } from 'vitest';
import { kindsIn } from '../../src/check/registry.ts';
import type { HoleBend } from '../../src/survey/blunders/bends.ts';
import { unseenWords } from '../../src/survey/blunders/blunder-words.ts';
import * as findings from '../../src/survey/findings.ts';
import type { RunWithShots } from '../../src/survey/shots/run-with-shots.ts';
import { checkedRuns, codesOf, pointing, problemsOf, runOf, straightRun } from './build.ts';

const check = (runs: readonly RunWithShots[], drilledM = 100, declinationDeg = 0) =>
  checkedRuns(runs, { declinationDeg }, { drilledM }).findings;

const DOWN = [
  [30, 90, -60],
  [60, 90.5, -59.5],
  [90, 91, -59],
] as const;

describe('the survey of a hole', () => {
  test('that is in order raises nothing', () => {
    expect(check([runOf(DOWN)])).toEqual([]);
  });

  test('names a slip of every kind at once', () => {
    const run = runOf([
      [30, 271, -60],
      [25, 90, 60],
      [200, 90, -60],
    ]);
    expect(new Set(codesOf(check([run])))).toEqual(
      new Set([
        'survey-shot-order',
        'survey-shot-below-drilled',
        'survey-dip-upwards',
        'survey-back-bearing',
        'survey-shot-gap',
      ]),
    );
  });

  test('says of a slip what it is, and not what it brings about: no jumps, no runs that disagree', () => {
    const backBearing = runOf([
      [30, 90, -60],
      [60, 270.5, -59.5],
      [90, 91, -59],
    ]);
    expect(codesOf(check([backBearing]))).toEqual(['survey-back-bearing']);
    const fromVertical = runOf(DOWN.map(([depth, azimuth, dip]) => [depth, azimuth, 90 + dip] as const));
    expect(new Set(codesOf(check([fromVertical])))).toEqual(new Set(['survey-dip-from-vertical']));
    const good = runOf(DOWN, { tool: 'tool 8' }, 'zq1-2');
    expect(new Set(codesOf(check([fromVertical, good])))).toEqual(new Set(['survey-dip-from-vertical']));
  });

  test('puts a back-bearing before anything it brings about', () => {
    const run = runOf([
      [30, 270, -60],
      [60, 90, -48],
    ]);
    expect(codesOf(check([run], 70)).slice(0, 2)).toEqual(['survey-back-bearing', 'survey-jump']);
  });

  test('says which run of a gyro drifts, where the two show it, and that the out run is to go either way', () => {
    const depths = [10, 20, 30, 40, 50, 60, 70, 80, 90, 100];
    const gyro = { toolClass: 'gyro aligned at the collar', north: 'grid', tool: 'gyro 3' } as const;
    const pair = (inwards: number, outwards: number) => {
      const run = (id: string, pass: 'in' | 'out', offDeg: (part: number) => number) =>
        runOf(
          (pass === 'in' ? depths : [...depths].reverse()).map(
            (depth) => [depth, 90 + offDeg(depth / 100), -60] as const,
          ),
          { ...gyro, pass },
          id,
        );
      return [
        run('zq1-1', 'in', (part) => inwards * part),
        run('zq1-2', 'out', (part) => inwards + outwards * (1 - part)),
      ];
    };
    const [out] = check(pair(0, 4));
    expect(out?.problem).toContain('the gyro drifts');
    expect(out?.remedy).toContain('Reject the out run');
    expect(out?.excerpt).toMatch(
      /^(3\.[5-9]|4\.[0-5])° ± .* in the out run alone$|^the out run is (3|4)\.\d° /,
    );
    expect(out?.excerpt).not.toContain('as much again');
    // Beside a third run that finds north the two are told apart.
    const truth = runOf(
      depths.map((depth) => [depth, 90, -60] as const),
      { north: 'grid', tool: 'gyro 9', pass: 'single' },
      'zq1-3',
    );
    const [alone] = check([...pair(0, 4), truth]);
    expect(alone?.excerpt).toContain('in the out run alone');
    expect(alone?.remedy).toContain('Keep the in run');
    const [both] = check([...pair(4, 4), truth]);
    expect(both?.excerpt).toContain('as much again on the way out');
  });

  test('tells a declination put in twice by the line-up, and by a better run', () => {
    const twice = straightRun(0, { toolClass: 'magnetic', north: 'magnetic', rank: 10, tool: 'tool 5' });
    const problem = 'the run reads as if the declination was applied twice';
    const [alone] = check([twice], 80, 5.6);
    expect(alone?.problem).toBe(problem);
    expect(alone?.excerpt).toMatch(/^5\.6° ± 1\.\d° right of the line-up; declination 5\.60° east$/);
    expect(alone?.place).toMatchObject({ fromMm: 12_000, toMm: 72_000, thing: 'tool 5, in' });
    const gyro = runOf(DOWN, { rank: 80 }, 'zq1-2');
    expect(problemsOf(check([twice, gyro], 100, 5.6))).toEqual([problem]);
  });

  test('compares any two runs over the same metres, whatever their tools, each by its own error', () => {
    const off = (toolClass: 'magnetic' | 'north-seeking gyro') =>
      check([
        runOf(DOWN),
        runOf([[60, 93.4, -59.5]], { toolClass, tool: 'tool 8', north: 'true', rank: 40 }, 'zq1-2'),
      ]);
    expect(codesOf(off('magnetic'))).toEqual([]);
    expect(problemsOf(off('north-seeking gyro'))).toEqual([
      'the azimuth of the shot is off, and no usual cause fits',
    ]);
  });

  test('names a gyro that was misaligned once anything that finds north is beside it', () => {
    const depths = [10, 20, 30, 40, 50, 60, 70, 80, 90];
    const aligned = straightRun(
      5,
      { toolClass: 'gyro aligned at the collar', north: 'grid', tool: 'gyro 3' },
      'zq1-1',
      depths,
    );
    for (const toolClass of ['magnetic', 'north-seeking gyro'] as const) {
      const beside = straightRun(0, { toolClass, north: 'true', tool: 'tool 8' }, 'zq1-2', depths);
      const [first, ...more] = check([aligned, beside]);
      expect(first?.problem).toBe('the gyro reads as if it was misaligned at the collar');
      expect(first?.place.thing).toBe('gyro 3, in');
      expect(more).toEqual([]);
    }
  });

  test('says of a mix-up that noise hides how large it is and what is known, and names nothing', () => {
    const gyro = straightRun(0.4, { north: 'grid' }, 'zq1-1', [10, 20, 30, 40, 50]);
    const { findings, unseen } = checkedRuns([gyro], { convergenceDeg: 0.4 });
    expect(findings.filter((each) => each.code !== 'survey-shot-gap')).toEqual([]);
    expect(unseen).toMatchObject([{ angle: 'convergence', tool: 'tool 7', effectDeg: 0.4 }]);
    expect(unseenWords(unseen[0]!)).toMatch(
      /Grid and true north mixed up would be 0\.4° and can't be seen in tool 7/,
    );
  });

  test('knows better how a hole starts where its neighbours bend alike', () => {
    const gyro = straightRun(0, { north: 'grid' }, 'zq1-1', [30, 60, 90]);
    const bend = { turnPer30m: 0.1, liftPer30m: 0, direction: pointing(90, -60) };
    const sigma = (neighbours: readonly HoleBend[]) =>
      checkedRuns([gyro], { convergenceDeg: 0.4 }, { neighbours }).unseen[0]?.sigmaDeg ?? Number.NaN;
    expect(sigma(Array(8).fill(bend))).toBeLessThan(0.97 * sigma([]));
    const elsewhere = { ...bend, direction: pointing(270, -60) };
    expect(sigma(Array(8).fill(elsewhere))).toBe(sigma([]));
  });
});

test('every kind of finding has a code of its own, a reason and a title', () => {
  const codes = kindsIn(findings).map((kind) => kind.code);
  expect(new Set(codes).size).toBe(codes.length);
  for (const kind of kindsIn(findings)) {
    expect(kind.code).toMatch(/^survey-[a-z]+(-[a-z]+)*$/);
    expect(kind.title).toMatch(/\.$/);
    expect(kind.rationale.length).toBeGreaterThan(60);
  }
});
