import proj4 from 'proj4';
import { describe, expect, it } from 'vitest';
import { gridWkt } from '../../../src/survey/norths/grid-wkt.ts';
import { type Grid, gridByCode } from '../../../src/survey/norths/grids.ts';
import { gridCodes } from '../../support/projections/grid-codes.ts';

const WGS84 = '+proj=longlat +datum=WGS84';

/** Places about the middle of a grid, longitude and latitude. */
function places(grid: Grid): readonly (readonly [number, number])[] {
  const degrees = (name: string): number => Number(new RegExp(`\\+${name}=(\\S+)`).exec(grid.proj)?.[1] ?? 0);
  const zone = degrees('zone');
  const lon = zone === 0 ? degrees('lon_0') : zone * 6 - 183;
  const lat = Math.max(-75, Math.min(75, degrees('lat_0') || degrees('lat_1') || 20));
  return [
    [lon, lat],
    [lon + 1.3, lat + 2],
    [lon - 0.9, lat - 3],
  ];
}

describe('well-known text of a grid', () => {
  it('projects as the grid does, to the millimetre, for every grid of the register that has one', () => {
    let read = 0;
    const apart: string[] = [];
    for (const code of gridCodes()) {
      const grid = gridByCode(code)!;
      const wkt = gridWkt(grid);
      if (wkt === undefined) continue;
      read += 1;
      const eastNorth = grid.proj.replace(/\+axis=\S+/, '');
      for (const place of places(grid)) {
        const [east = 0, north = 0] = proj4(WGS84, eastNorth, [...place]);
        const [x = Number.NaN, y = Number.NaN] = proj4(WGS84, wkt, [...place]);
        if (!(Math.hypot(x - east, y - north) < 0.001)) apart.push(`${code} ${place.join(' ')}`);
      }
    }
    expect(apart).toEqual([]);
    expect(read).toBe(1332);
  });

  it('names the code of the register, but not of a grid that counts west and south', () => {
    expect(gridWkt(gridByCode(7851)!)).toContain('AUTHORITY["EPSG","7851"]]');
    expect(gridWkt(gridByCode(2052)!)).not.toContain('"2052"');
    expect(gridWkt(gridByCode(2056)!)).toBeUndefined();
  });

  it('keeps a quotation mark in a name from ending it', () => {
    const wkt = gridWkt({ name: 'our "own"', proj: '+proj=tmerc +lon_0=121 +k=1 +x_0=50000 +ellps=GRS80' })!;
    expect(wkt).toContain('PROJCS["our own"');
  });
});
