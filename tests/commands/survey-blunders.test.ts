import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/commands/check.ts';
import { enter } from '../../src/commands/enter.ts';
import { survey } from '../../src/commands/survey.ts';
import { surveyShots } from '../../src/commands/survey-shots.ts';
import { copyOfSample, freshFolder, hear } from './support/outside.ts';

const HOLE = 'MBRC003';
const NAMED = 'the gyro reads as if it was misaligned at the collar';
/** The hole was set to 269.9 grid and a gyro that finds north reads the like at 12 and 42 m. */
const OFF_BY_6 = [
  'depth,dip,azimuth',
  '10,-60.0,276.0',
  '20,-60.0,276.1',
  '30,-59.9,276.2',
  '40,-59.9,276.4',
];
const RUN = 'aligned in from grid tool gyro 3';

async function takeCsv(folder: string, insist: boolean, run = RUN, rows = OFF_BY_6) {
  const shots = join(freshFolder(), 'shots.csv');
  writeFileSync(shots, rows.join('\n'));
  const heard = hear();
  const how = { columns: '', bitDepths: false, inclinations: false, keepGoing: false };
  const code = await surveyShots(heard.outside, { folder, hole: HOLE, shots, run, insist, ...how });
  return { code, out: heard.out(), err: heard.err() };
}

describe('a blunder of a whole run', () => {
  it('is named before a CSV is taken in, then in the survey, in the check of the project and as JSON', async () => {
    const folder = copyOfSample();
    const held = await takeCsv(folder, false);
    expect(held.err).toContain(NAMED);
    expect(held.err).toContain('Nothing is recorded.');
    const taken = await takeCsv(folder, true);
    expect(taken.out).toContain('4 shots recorded as one run of gyro 3');

    const text = hear();
    expect(await survey(text.outside, { folder, hole: HOLE, json: false, csv: false })).toBe(1);
    expect(text.out()).toContain(`${HOLE}, 10–40, gyro 3, in: ${NAMED}`);
    expect(text.out()).toMatch(/6\.0° ± 1\.1° right of the line-up and gyro 2/);
    // A chance by shots that are said to be wrong would be a false one.
    expect(text.out()).toMatch(
      /not known within \d+ m \(it rests on shots marked as wrong: settle them first\)/,
    );
    expect(text.out()).not.toMatch(/\d % within/);
    const json = hear();
    await survey(json.outside, { folder, hole: HOLE, json: true, csv: false });
    expect(JSON.parse(json.out()).findings.map((each: { code: string }) => each.code)).toContain(
      'survey-gyro-misaligned',
    );
    const checked = hear();
    expect(await check(checked.outside, { folder, json: false })).toBe(1);
    expect(checked.out() + checked.err()).toContain(NAMED);
  });

  it('is named from a pipe, shot by shot, as soon as the shots show it', async () => {
    const heard = hear(
      [`;run ${RUN}`, ...OFF_BY_6.slice(1).map((row) => `;shot ${row.replaceAll(',', ' ')}`)].join('\n'),
    );
    await enter(heard.outside, { folder: copyOfSample(), hole: HOLE, keepGoing: true });
    expect(heard.err()).toContain(NAMED);
  });

  it('of one shot is named at the next, good one by the depth of the misread one', async () => {
    const heard = hear(';shot 48 -59.7 207.9\n;shot 54 -59.6 271.1');
    await enter(heard.outside, { folder: copyOfSample(), hole: HOLE, keepGoing: true });
    expect(heard.out()).toMatch(/1: shot at 48 m, doubtful\n2: shot at 54 m$/m);
    expect(heard.err()).toMatch(
      /line:2, MBRC003: the shot at 48 m looks wrong: it points .*270\.9°, in line\n/,
    );
    expect(heard.err()).toContain('The shot of this line is not in doubt.');
  });

  it('can be settled as its remedy says: the shots rejected, and the same shots recorded again from the right north', async () => {
    const folder = copyOfSample();
    const rows = ['depth,dip,azimuth', '10,-60.0,270.0', '20,-60.0,270.1'];
    expect((await takeCsv(folder, true, 'north-seeking in from grid tool gyro 9', rows)).code).toBe(0);
    const again = await takeCsv(folder, false, 'north-seeking in from grid tool gyro 9', rows);
    expect(again.err).toContain('the hole has a run of this tool with the same shots');
    const other = await takeCsv(folder, true, 'north-seeking in from true tool gyro 9', rows);
    expect(other.out).toContain('2 shots recorded as one run of gyro 9 (north-seeking gyro, true north)');
  });
});

it('what noise hides in a survey is said, with its size and one sigma of what is known', async () => {
  const heard = hear();
  await survey(heard.outside, { folder: copyOfSample(), hole: HOLE, json: false, csv: false });
  expect(heard.out()).toMatch(
    /Grid and true north mixed up would be \d\.\d° and can't be seen in gyro 2: one sigma of what is known is \d\.\d°\./,
  );
});

it('dips without any azimuth are listed, though they make no path', async () => {
  const folder = copyOfSample();
  const file = join(folder, `holes/${HOLE}.json`);
  const hole = JSON.parse(readFileSync(file, 'utf8'));
  hole.tables.lineUps = {};
  for (const shot of Object.values<{ azimuthDeg?: number }>(hole.tables.shots)) delete shot.azimuthDeg;
  writeFileSync(file, JSON.stringify(hole));
  const heard = hear();
  await survey(heard.outside, { folder, hole: HOLE, json: false, csv: false });
  expect(heard.out()).toContain('No path yet: dips are read, no azimuth is known.');
  expect(heard.out()).not.toContain('without a shot');
  expect(heard.out()).toMatch(/12 +-60\.1°\n *42 +-59\.8°/);
});
