import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type CollarsAsked, collars } from '../../src/commands/collars.ts';
import { survey } from '../../src/commands/survey.ts';
import { fromWgs84, gridByCode, toWgs84 } from '../../src/survey/norths/grids.ts';
import { copyOfSample, freshFolder, hear } from './support/outside.ts';

const HEAD = 'hole,easting,northing,elevation';
const SOUND = 'MBRC003,412499.123,6002239.456,431.789';

/** The peg of MBRC003 as a receiver set to another zone gives it. */
function readInZone(zone: number): string {
  const at = toWgs84(gridByCode(7851)!, { eastM: 412_500, northM: 6_002_240 })!;
  const { eastM, northM } = fromWgs84(gridByCode(7800 + zone)!, at)!;
  return `${eastM.toFixed(1)},${northM.toFixed(1)}`;
}

async function take(lines: readonly string[], more: Partial<CollarsAsked> = {}, folder = copyOfSample()) {
  const file = join(freshFolder(), 'collars.csv');
  writeFileSync(file, lines.join('\n'));
  const heard = hear();
  const asked = { folder, file, columns: '', source: 'Dune Survey', mineGrid: false, keepGoing: false };
  const code = await collars(heard.outside, { ...asked, ...more });
  const collarsOf = (hole: string) =>
    Object.values(JSON.parse(readFileSync(join(folder, `holes/${hole}.json`), 'utf8')).tables.collars) as {
      readonly rank: string;
    }[];
  return { code, out: heard.out(), err: heard.err(), folder, collarsOf };
}

async function firstPosition(folder: string) {
  const heard = hear();
  await survey(heard.outside, { folder, hole: 'MBRC003', json: false, csv: true });
  return heard.out().split('\r\n')[1];
}

describe('surveyed collars from a CSV', () => {
  it('stand beside the positions there are, and the path is counted from them', async () => {
    const folder = copyOfSample();
    const before = await firstPosition(folder);
    const { code, out, collarsOf } = await take([HEAD, SOUND], {}, folder);
    expect(code).toBe(0);
    expect(out).toMatch(/MBRC003: surveyed collar 412499\.123 E .* m from the .* The others are kept\./);
    const kept = collarsOf('MBRC003');
    expect(kept.map((one) => one.rank)).toEqual([...new Set(['planned', ...kept.map((one) => one.rank)])]);
    expect(kept.at(-1)).toMatchObject({
      rank: 'surveyed',
      eastingMm: 412_499_123,
      elevationMm: 431_789,
      source: 'Dune Survey',
    });
    expect(await firstPosition(folder)).toMatch(/^0,412499\.123,6002239\.456,431\.789,/);
    expect(before).not.toMatch(/^0,412499\.123/);
  });

  it('that are there already are passed over', async () => {
    const { folder } = await take([HEAD, SOUND]);
    const again = await take([HEAD, SOUND], {}, folder);
    expect([again.code, again.out]).toEqual([0, 'Nothing new: every position is there already.\n']);
    expect(again.collarsOf('MBRC003').filter((one) => one.rank === 'surveyed')).toHaveLength(1);
  });

  it.each([
    ['MBRC003,6002239.4,412499.1,431', /7905 km from the nearest planned one.*east and north swapped/s],
    ['MBRC003,1353343.5,19692386.5,431', /Likely feet \(× 0\.3048\)/],
    [`MBRC003,${readInZone(50)},431`, /km from the nearest planned one.*Likely zone 50, not zone 51/s],
    [`MBRC003,${readInZone(52)},431`, /km from the nearest planned one.*Likely zone 52, not zone 51/s],
    ['NOSUCH,412499.1,6002239.4,431', /collars\.csv:3: the project has no hole of this name/],
    ['MBRC003,412499.1,north,431', /collars\.csv:3, field northing: this is not a number/],
  ])('are held back with the likely cause and the distance for %s', async (row, why) => {
    const held = await take([HEAD, 'MBRC001,412482.1,6002198.5,431.4', row]);
    expect(held.code).toBe(1);
    expect(held.err).toMatch(why);
    expect(held.collarsOf('MBRC001').some((one) => one.rank === 'surveyed')).toBe(false);
    const others = await take([HEAD, 'MBRC001,412482.1,6002198.5,431.4', row], { keepGoing: true });
    expect(others.code).toBe(1);
    expect(others.collarsOf('MBRC001').some((one) => one.rank === 'surveyed')).toBe(true);
  });

  it('further from the plan than the project allows are taken and told', async () => {
    const { code, err, collarsOf } = await take([HEAD, 'MBRC003,412519.1,6002239.4,431']);
    expect(code).toBe(1);
    expect(err).toMatch(/the collar is \d+\.\d m from where it was planned, towards 0\d\d° grid/);
    expect(collarsOf('MBRC003').at(-1)).toMatchObject({ rank: 'surveyed' });
  });

  it('on the peg of another hole are told so', async () => {
    const { err } = await take([HEAD, 'MBRC004,412499.6,6002240.2,431']);
    expect(err).toContain('It is on the peg of MBRC003: the wrong peg, or the two exchanged?');
  });

  it('in the mine grid are turned to the map grid; without one in project.json they are refused', async () => {
    const none = await take([HEAD, SOUND], { mineGrid: true });
    expect([none.code, none.err]).toEqual([2, expect.stringContaining('the project has no mine grid')]);
    const folder = copyOfSample();
    const file = join(folder, 'project.json');
    const mineGrid =
      '"mineGrid": {"rotationDeg": 90, "mapOrigin": {"eastM": 412499, "northM": 6002239}, "mineOrigin": {"eastM": 1000, "northM": 2000}},';
    writeFileSync(file, readFileSync(file, 'utf8').replace('"survey": {', `"survey": { ${mineGrid}`));
    const turned = await take([HEAD, 'MBRC003,1000,2001,431'], { mineGrid: true }, folder);
    expect(turned.code).toBe(0);
    expect(turned.collarsOf('MBRC003').at(-1)).toMatchObject({
      eastingMm: 412_500_000,
      northingMm: 6_002_239_000,
    });
  });
});
