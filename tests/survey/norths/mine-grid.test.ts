import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bearingAndDistance } from '../../../src/survey/norths/grids.ts';
import { mapToMine, mineGridFromPoints, mineToMap } from '../../../src/survey/norths/mine-grid.ts';

const AT = { file: 'project.json' };
const peg = (eastM: number, northM: number) => ({ eastM, northM });
const coordinate = fc.double({ min: -20_000, max: 20_000, noNaN: true });

describe('a mine grid', () => {
  test('goes through its two common points, and mine north bears its rotation', () => {
    const made = mineGridFromPoints(
      { mine: peg(1000, 5000), map: peg(400_000, 6_500_000) },
      { mine: peg(1000, 6000), map: peg(400_500, 6_500_866.0254) },
      AT,
    );
    if (!made.ok) throw new Error(made.findings[0]?.problem);
    expect(made.value.rotationDeg).toBeCloseTo(30, 6);
    expect(made.value.scale).toBeCloseTo(1, 7);
    expect(mineToMap(made.value, peg(1000, 6000)).eastM).toBeCloseTo(400_500, 6);
    expect(mineToMap(made.value, peg(1000, 6000)).northM).toBeCloseTo(6_500_866.0254, 6);
  });

  test('takes a place there and back again, and turns every bearing by the rotation', () => {
    const angle = fc.double({ min: -180, max: 180, noNaN: true });
    fc.assert(
      fc.property(coordinate, coordinate, angle, (eastM, northM, rotationDeg) => {
        const grid = {
          mapOrigin: peg(400_000, 6_500_000),
          mineOrigin: peg(1000, 5000),
          rotationDeg,
          scale: 1.0004,
        };
        const back = mapToMine(grid, mineToMap(grid, peg(eastM, northM)));
        expect(back.eastM).toBeCloseTo(eastM, 6);
        expect(back.northM).toBeCloseTo(northM, 6);
        const onMap = bearingAndDistance(
          mineToMap(grid, peg(eastM, northM)),
          mineToMap(grid, peg(eastM, northM + 100)),
        );
        expect(Math.cos(((onMap.deg - rotationDeg) * Math.PI) / 180)).toBeCloseTo(1, 9);
        expect(onMap.metres).toBeCloseTo(100.04, 6);
      }),
    );
  });

  test('is refused from pegs too near each other, or whose distance differs between the grids', () => {
    const near = mineGridFromPoints(
      { mine: peg(0, 0), map: peg(400_000, 6_500_000) },
      { mine: peg(10, 0), map: peg(400_010, 6_500_000) },
      AT,
    );
    const stretched = mineGridFromPoints(
      { mine: peg(0, 0), map: peg(400_000, 6_500_000) },
      { mine: peg(1000, 0), map: peg(401_100, 6_500_000) },
      AT,
    );
    expect(near.ok ? [] : near.findings.map((one) => one.problem)).toEqual([
      'the two common points are less than 50 m apart',
    ]);
    expect(stretched.ok ? [] : stretched.findings.map((one) => one.problem)).toEqual([
      'the two points are 1100.00 m apart on the map grid and 1000.00 m in the mine grid',
    ]);
  });
});
