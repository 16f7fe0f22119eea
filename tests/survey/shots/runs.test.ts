import { describe, expect, test } from 'vitest';
import { bestStations, runsByRank, type StationSources } from '../../../src/survey/shots/runs.ts';
import { AT, codesOf, pointing, runOf, withShots } from '../build.ts';

const SOURCES: StationSources = {
  place: AT,
  north: 'grid',
  lineUp: { direction: pointing(90, -60), angles: {} },
  runs: [],
  anglesOf: () => ({ declinationDeg: 2, convergenceDeg: -1 }),
  settings: { longestGapM: 40, steelM: 6 },
};
const stations = (said: Partial<StationSources>) =>
  bestStations({ ...SOURCES, ...said }).stations.map(
    (one) => [one.depthMm / 1000, one.azimuth.deg, one.dip, one.basis] as const,
  );

describe('the stations of a path', () => {
  test('are the line-up as station 0, marked as set, and shots turned to the north of the path', () => {
    const run = runOf([[30, 90, -60]], { toolClass: 'magnetic', north: 'magnetic' });
    expect(stations({ runs: [run] })).toEqual([
      [0, 90, -60, 'set'],
      [30, 93, -60, 'measured'],
    ]);
  });

  test('come from the best run at each depth', () => {
    const gyro = runOf(
      [
        [30, 90, -60],
        [60, 90, -59],
      ],
      { rank: 80 },
      'zq1-2',
    );
    const single = runOf(
      [
        [12, 95, -60],
        [42, 95, -60],
        [72, 95, -60],
      ],
      { rank: 10 },
      'zq1-1',
    );
    expect(stations({ runs: [single, gyro] }).map(([depth]) => depth)).toEqual([0, 12, 30, 60, 72]);
  });

  test('let a poorer run into a gap longer than allowed', () => {
    const gyro = runOf(
      [
        [30, 90, -60],
        [90, 90, -59],
      ],
      { rank: 80 },
      'zq1-2',
    );
    const single = runOf([[60, 95, -60]], { rank: 10 }, 'zq1-1');
    expect(stations({ runs: [gyro, single] }).map(([depth]) => depth)).toEqual([0, 30, 60, 90]);
  });

  test('keep the later of two runs of one rank, and the later of two shots at one depth', () => {
    const early = runOf([[30, 90, -60]], { at: runOf([]).run.at }, 'zq1-1');
    const late = runOf([[30, 94, -60]], { at: '2026-03-15T04:00:00+08:00' as never }, 'zq1-2');
    expect(runsByRank([early, late]).map((one) => one.id)).toEqual(['zq1-2', 'zq1-1']);
    const twice = runOf([
      [30, 90, -60],
      [30, 94, -60],
    ]);
    expect(stations({ runs: [twice] })).toEqual([
      [0, 90, -60, 'set'],
      [30, 95, -60, 'measured'],
    ]);
  });

  test('have a shot at the collar only where no line-up is there', () => {
    const run = runOf([
      [0, 88, -61],
      [30, 90, -60],
    ]);
    expect(stations({ runs: [run] })[0]).toEqual([0, 90, -60, 'set']);
    expect(stations({ runs: [run], lineUp: undefined })[0]).toEqual([0, 89, -61, 'measured']);
  });

  test('leave a rejected shot out', () => {
    const run = withShots(runOf([[30, 90, -60]]), { rejected: 'wrong hole' });
    expect(stations({ runs: [run] })).toEqual([[0, 90, -60, 'set']]);
  });
});

describe('an azimuth that is rejected alone, unusable in steel or missing', () => {
  test('leaves the dip standing and is taken from the stations about it', () => {
    const run = runOf([
      [20, 89, -58],
      [40, undefined, -57],
      [60, 93, -56],
    ]);
    expect(stations({ runs: [run] })[2]).toEqual([40, 92, -57, 'dip measured']);
  });

  test('is taken from a poorer run at the same place where there is one', () => {
    const steel = runOf([[40, 10, -57]], { toolClass: 'magnetic', inside: 'rods', rank: 80 }, 'zq1-2');
    const poorer = runOf([[40.4, 93, -58]], { rank: 10 }, 'zq1-1');
    expect(stations({ runs: [steel, poorer] })).toEqual([
      [0, 90, -60, 'set'],
      [40, 94, -57, 'dip measured'],
    ]);
  });

  test('goes over north the short way', () => {
    const run = runOf([
      [20, 357, -58],
      [40, undefined, -57],
      [60, 1, -56],
    ]);
    expect(stations({ runs: [run] })[2]?.[1]).toBe(0);
  });
});

test('azimuths that can not be turned are named, and their dips still stand', () => {
  const run = runOf([[30, 10, -58]]);
  const made = bestStations({ ...SOURCES, runs: [run], anglesOf: () => ({}) });
  expect(codesOf(made.findings)).toEqual(['survey-north-not-known']);
  expect(made.stations[1]).toMatchObject({ dip: -58, basis: 'dip measured', azimuth: { deg: 90 } });
});
