import { describe, expect, test } from 'vitest';
import { readCollarTable } from '../../src/survey/collar/collar-table.ts';
import { POSITION_COLUMNS, positionRows } from '../../src/survey/path/position-table.ts';
import { pathByMetre } from '../../src/survey/path/projection.ts';
import { readShotTable, type ShotTableMeaning } from '../../src/survey/shots/shot-table.ts';
import { readTypedShot } from '../../src/survey/shots/typed-shot.ts';
import { AT, codesOf, pathOf, problemsOf, remediesOf, WHEN } from './build.ts';

const FILE = { file: 'shots.csv' };
const MEANING: ShotTableMeaning = {
  columns: { depth: 'Depth', dip: 'Dip', azimuth: 'Azi' },
  depthOf: 'station',
  toolOffsetMm: 0,
  angleAs: 'dip',
  expectedDipDeg: -60,
};
const HEAD = ['Depth', 'Dip', 'Azi'];

describe('a shot as typed', () => {
  const read = (depthM: number, dipDeg: number, azimuthDeg?: number) =>
    readTypedShot({ depthM, dipDeg, ...(azimuthDeg === undefined ? {} : { azimuthDeg }) }, -60, AT);

  test('that is in order is a shot, 360 being north', () => {
    expect(read(30, -60.4, 360)).toEqual({
      shot: { depthMm: 30_000, dipDeg: -60.4, azimuthDeg: 0 },
      findings: [],
    });
    expect(read(30, -60.4).shot).toEqual({ depthMm: 30_000, dipDeg: -60.4 });
  });

  test('with a slip of the pen is kept as typed, with the likely cause beside it', () => {
    const up = read(30, 60, 90);
    expect(up.shot?.dipDeg).toBe(60);
    expect(codesOf(up.findings)).toEqual(['survey-dip-upwards']);
    expect(codesOf(read(30, 30, 90).findings)).toEqual(['survey-dip-from-vertical']);
  });

  test('that can be none is none', () => {
    for (const [answer, code] of [
      [read(30, -60, 365), 'survey-azimuth-off-circle'],
      [read(30, -91, 90), 'survey-off-scale'],
      [read(-1, -60, 90), 'survey-off-scale'],
      [read(5001, -60, 90), 'survey-off-scale'],
      [read(Number.NaN, -60, 90), 'survey-off-scale'],
    ] as const) {
      expect(answer.shot).toBeUndefined();
      expect(codesOf(answer.findings)).toEqual([code]);
    }
    expect(remediesOf(read(30, 150, 90).findings)).toEqual([
      'Is it counted from vertically up? Then it is -60.0°.',
    ]);
  });
});

describe('a table of shots', () => {
  test('is read by the names of its columns, in any order and case', () => {
    const table = [
      ['azi', 'DEPTH ', 'remark', 'dip'],
      ['90.5', '30', 'fine', '-60.2'],
      ['', '', '', ''],
      ['', '60', '', '-59.8'],
    ];
    expect(readShotTable(table, MEANING, FILE)).toEqual({
      shots: [
        { depthMm: 30_000, dipDeg: -60.2, azimuthDeg: 90.5, place: { ...FILE, line: 2 } },
        { depthMm: 60_000, dipDeg: -59.8, place: { ...FILE, line: 4 } },
      ],
      findings: [],
    });
  });

  test('of bit depths has the tool offset taken off, and of inclinations is turned to dips', () => {
    const table = [HEAD, ['34.5', '30', '90']];
    const meaning = { ...MEANING, depthOf: 'bit', toolOffsetMm: 4500, angleAs: 'inclination' } as const;
    expect(readShotTable(table, meaning, FILE).shots).toEqual([
      { depthMm: 30_000, dipDeg: -60, azimuthDeg: 90, place: { ...FILE, line: 2 } },
    ]);
    expect(problemsOf(readShotTable([HEAD, ['3', '30', '90']], meaning, FILE).findings)).toEqual([
      'less the tool offset this is above the collar',
    ]);
  });

  test('brings the magnetic field where it has it', () => {
    const meaning = {
      ...MEANING,
      columns: { ...MEANING.columns, field: 'B', magneticDip: 'MDip' },
    };
    const table = [
      [...HEAD, 'B', 'MDip'],
      ['30', '-60', '88', '57012', '-65.1'],
    ];
    expect(readShotTable(table, meaning, FILE).shots[0]).toMatchObject({
      fieldNt: 57_012,
      magneticDipDeg: -65.1,
    });
  });

  test('names the line and the column of what it can not read, and reads the rest', () => {
    const { shots, findings } = readShotTable(
      [HEAD, ['30', '-60,5', '90'], ['', '-60', '90'], ['60', '-60', '91']],
      MEANING,
      FILE,
    );
    expect(shots).toHaveLength(1);
    expect(findings.map((one) => [one.place.line, one.place.field, one.problem])).toEqual([
      [2, 'Dip', 'this is not a number with a decimal point'],
      [3, 'Depth', 'nothing is here'],
    ]);
  });

  test('without a wanted column, or without anything, names what is missing', () => {
    expect(problemsOf(readShotTable([['Depth', 'Azi']], MEANING, FILE).findings)).toEqual([
      'there is no column "Dip"',
    ]);
    expect(readShotTable([], MEANING, FILE).findings).toHaveLength(3);
  });
});

describe('a table of collars', () => {
  const COLUMNS = { hole: 'Hole', easting: 'E', northing: 'N', elevation: 'RL' };
  const head = ['Hole', 'E', 'N', 'RL'];

  test('gives whole millimetres by hole', () => {
    expect(
      readCollarTable([head, ['ZQRC004', '745000.1234', '6500000.5', '401.27']], COLUMNS, FILE).collars,
    ).toMatchObject([
      { hole: 'ZQRC004', eastingMm: 745_000_123, northingMm: 6_500_000_500, elevationMm: 401_270 },
    ]);
  });

  test('refuses a hole twice, a hole without a name and a cell without a number', () => {
    const { collars, findings } = readCollarTable(
      [head, ['A', '1', '2', '3'], ['A', '4', '5', '6'], ['', '1', '2', '3'], ['B', 'x', '2', '3']],
      COLUMNS,
      FILE,
    );
    expect(collars.map((one) => one.hole)).toEqual(['A']);
    expect(findings.map((one) => one.place.line)).toEqual([3, 4, 5]);
  });

  test('refuses a coordinate further out than any grid reaches', () => {
    const { collars, findings } = readCollarTable([head, ['A', '-9007206033412', '2', '3']], COLUMNS, FILE);
    expect(collars).toEqual([]);
    expect(problemsOf(findings)).toEqual(['no grid reaches so far']);
  });
});

describe('positions by metre', () => {
  const points = pathByMetre(pathOf([0, 90, -60], [2, 90, -60]), 3000 as never);
  const collar = {
    rank: 'surveyed',
    eastingMm: 745_000_000,
    northingMm: 6_500_000_000,
    elevationMm: 400_000,
    grid: 'site',
    source: 'an invented source',
    at: WHEN,
    by: 'RQ',
  } as const;

  test('are on the grid of the collar, elevation upwards, and say what is projected', () => {
    const rows = positionRows(points, collar);
    expect(rows).toHaveLength(4);
    expect(rows[2]).toEqual([2, 745_001, 6_500_000, 398.268, 90, 'grid', -60, 'measured']);
    expect(rows[3]?.[7]).toBe('projected straight');
    for (const row of rows) expect(row).toHaveLength(POSITION_COLUMNS.length);
  });

  test('without a collar are counted from it', () => {
    expect(positionRows(points, undefined)[0]?.slice(0, 4)).toEqual([0, 0, 0, 0]);
  });

  test('stand on the mine grid too, where there is one', () => {
    const mineGrid = {
      mapOrigin: { eastM: 745_000, northM: 6_500_000 },
      mineOrigin: { eastM: 1000, northM: 2000 },
      rotationDeg: 90,
      scale: 1,
    };
    expect(positionRows(points, collar, mineGrid)[2]?.slice(8)).toEqual([1000, 2001]);
  });
});
