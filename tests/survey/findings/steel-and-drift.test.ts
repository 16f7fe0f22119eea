import { describe, expect, test } from 'vitest';
import { checkedRuns, codesOf, runOf } from '../build.ts';

const ANGLES = { declinationDeg: 11.69, convergenceDeg: 0.5 };
const DEPTHS = [30, 60, 90, 120, 150, 180];
/** A hole that turns half a degree and lifts 0.7° a rod or so, by grid azimuths turned into what was read. */
const GRID = [90.8, 91.3, 91.7, 92.4, 93.1, 93.5];
const DIPS = [-59.2, -58.5, -57.7, -56.6, -55.9, -55.1];

const shots = (plusDeg: (index: number) => number, count = DEPTHS.length) =>
  DEPTHS.slice(0, count).map(
    (depthM, index) => [depthM, GRID[index]! + plusDeg(index), DIPS[index]!] as const,
  );
const of = (...runs: readonly ReturnType<typeof runOf>[]) =>
  checkedRuns(runs, ANGLES, { drilledM: 180 }).findings.filter(({ code }) => code !== 'survey-shot-gap');
/** From grid to the north that the run is recorded from. */
const toTrue = ANGLES.convergenceDeg;
const toMagnetic = ANGLES.convergenceDeg - ANGLES.declinationDeg;

describe('a magnetic run whose first shots steel draws', () => {
  const drawn = (count = DEPTHS.length) =>
    runOf(
      shots((index) => toMagnetic + ([14, 4][index] ?? 0), count),
      { toolClass: 'magnetic', north: 'magnetic', pass: 'single' },
    );

  test('is named at those shots, their azimuths alone, and nothing is said of a bend or of the declination', () => {
    const found = of(drawn());
    expect(found).toMatchObject([
      {
        code: 'survey-magnetic-in-steel',
        place: { fromMm: 30_000, toMm: 60_000, thing: 'tool 7' },
        problem: 'the azimuths of these shots look drawn by steel near the collar (casing, rods, the rig)',
      },
    ]);
  });

  test('is a question at its first shot: declination or steel, the next shot tells', () => {
    const [found] = of(drawn(1));
    expect(found?.problem).toContain('declination was applied twice');
    expect(found?.remedy).toContain('Or steel near the collar (casing, rods) draws it: the next shot tells.');
    expect(codesOf(of(drawn(2)))).toEqual(['survey-magnetic-in-steel']);
  });

  test('is settled by rejecting those azimuths', () => {
    const run = drawn();
    const settled = {
      ...run,
      shots: run.shots.map((shot, index) => (index < 2 ? { ...shot, azimuthRejected: 'steel' } : shot)),
    };
    expect(of(settled)).toEqual([]);
  });

  test('is held against no other run for it', () => {
    const gyro = runOf(
      shots(() => toTrue),
      { tool: 'gyro 2', pass: 'single' },
      'zq1-2',
    );
    expect(codesOf(of(drawn(), gyro))).toEqual(['survey-magnetic-in-steel']);
  });
});

describe('a gyro aligned at the collar beside one that finds north', () => {
  const north = runOf(
    shots(() => toTrue),
    { tool: 'gyro 2' },
  );
  const aligned = (bottomDeg: number) =>
    runOf(
      shots((index) => (bottomDeg * (index + 1)) / DEPTHS.length),
      { tool: 'gyro 3', toolClass: 'gyro aligned at the collar', north: 'grid' },
      'zq1-2',
    );

  test.each([5.6, -4])(
    'is said to drift where it parts from it with depth, by %d° at the bottom',
    (bottomDeg) => {
      const found = of(north, aligned(bottomDeg));
      expect(found).toMatchObject([
        {
          code: 'survey-gyro-drift',
          place: { thing: 'gyro 3, in' },
          problem: 'the gyro drifts: with depth it parts more and more from gyro 2, in',
          remedy: expect.stringContaining('Reject these shots, and keep gyro 2, in.'),
        },
      ]);
      expect(Number(/^(\d+\.\d)°/.exec(found[0]?.excerpt ?? '')?.[1])).toBeCloseTo(Math.abs(bottomDeg), 0);
    },
  );

  test('is not where the two part by their errors', () => {
    expect(of(north, aligned(0.8))).toEqual([]);
  });

  test('is settled by rejecting its shots', () => {
    const run = aligned(5.6);
    expect(of(north, { ...run, shots: run.shots.map((shot) => ({ ...shot, rejected: 'drift' })) })).toEqual(
      [],
    );
  });
});

describe('magnetic azimuths', () => {
  test('recorded as those of a gyro are named, and settled when recorded again as magnetic', () => {
    const [found, ...more] = of(
      runOf(
        shots(() => toMagnetic),
        { tool: 'gyro 2' },
      ),
    );
    expect(found?.problem).toBe('the run reads as if the declination was left out');
    expect(found?.remedy).toContain('record the run again as of magnetic north, the tool as magnetic.');
    expect(more).toEqual([]);
    const again = { tool: 'gyro 2', toolClass: 'magnetic', north: 'magnetic' } as const;
    expect(
      of(
        runOf(
          shots(() => toMagnetic),
          again,
        ),
      ),
    ).toEqual([]);
  });

  test('that had the declination taken off are named, with what to add', () => {
    const off = shots(() => toMagnetic - ANGLES.declinationDeg);
    const [found] = of(runOf(off, { toolClass: 'magnetic', north: 'magnetic' }));
    expect(found?.problem).toBe('the run reads as if the declination was taken off its magnetic azimuths');
    expect(found?.remedy).toContain('11.7° added to each azimuth');
  });
});
