import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { survey } from '../../src/commands/survey.ts';
import { type ShotsAsked, surveyShots } from '../../src/commands/survey-shots.ts';
import { copyOfSample, freshFolder, hear } from './support/outside.ts';

const HOLE = 'MBRC003';
const SOUND = ['Depth,Dip,Azimuth', '10,-60.0,270.3', '20,-60.0,270.4'];

function csv(lines: readonly string[]): string {
  const file = join(freshFolder(), 'shots.csv');
  writeFileSync(file, lines.join('\r\n'));
  return file;
}

async function take(lines: readonly string[], more: Partial<ShotsAsked> = {}, folder = copyOfSample()) {
  const heard = hear();
  const code = await surveyShots(heard.outside, {
    folder,
    hole: HOLE,
    shots: csv(lines),
    run: 'north-seeking in tool gyro 9',
    columns: '',
    bitDepths: false,
    inclinations: false,
    keepGoing: false,
    insist: false,
    ...more,
  });
  const { runs, shots } = JSON.parse(readFileSync(join(folder, `holes/${HOLE}.json`), 'utf8')).tables;
  const all = <T>(table: Readonly<Record<string, T>>) => Object.values(table);
  return {
    code,
    out: heard.out(),
    err: heard.err(),
    folder,
    runs: all<object>(runs),
    shots: all<{ readonly depthMm: number }>(shots),
  };
}

describe('shots from a CSV', () => {
  it('are one run of the hole, and make its path at once', async () => {
    const { code, out, runs, shots, folder } = await take(SOUND);
    expect([code, out]).toEqual([
      0,
      'MBRC003: 2 shots recorded as one run of gyro 9 (north-seeking gyro, true north).\n',
    ]);
    expect(runs.at(-1)).toMatchObject({ tool: 'gyro 9', pass: 'in', rank: 60 });
    expect(shots.slice(2)).toMatchObject([
      { depthMm: 10_000, dipDeg: -60, azimuthDeg: 270.3 },
      { depthMm: 20_000, dipDeg: -60, azimuthDeg: 270.4 },
    ]);
    const later = hear();
    await survey(later.outside, { folder, hole: HOLE, json: true, csv: false });
    expect(JSON.parse(later.out()).stations.map((one: { depthMm: number }) => one.depthMm)).toContain(20_000);
  });

  it('have their columns mapped, cells parted by semicolons too, and rows of other holes passed over', async () => {
    const { code, shots } = await take(
      ['Hole;MD;Incl;Azi;Remark', 'MBRC001;10;30;90;', 'mbrc003;13;30;270.3;soft', 'MBRC003;23;30;270.4;'],
      {
        columns: 'hole=Hole, depth=MD, dip=Incl, azimuth=Azi',
        bitDepths: true,
        inclinations: true,
        run: 'north-seeking in offset 3 tool gyro 9',
      },
    );
    expect(code).toBe(0);
    expect(shots.slice(2)).toMatchObject([
      { depthMm: 10_000, dipDeg: -60 },
      { depthMm: 20_000, dipDeg: -60 },
    ]);
  });

  it.each([
    ['10,60,270.3', 'points upwards'],
    ['10,30,270.3', 'inclination from vertical'],
    ['10,-60,90.3', 'back-bearing'],
    ['5,-60,270.3\n3,-60,270.3', 'not below the one before it'],
    ['10,-60,300', 'which agree'],
  ])(
    'that are doubtful (%j) are told with the likely cause, and recorded only when insisted on',
    async (rows, why) => {
      const lines = ['depth,dip,azimuth', ...rows.split('\n')];
      const held = await take(lines);
      expect([held.code, held.shots.length]).toEqual([1, 2]);
      expect(held.err).toContain(why);
      expect(held.err).toContain('Nothing is recorded. Where the doubtful ones are so, give --insist.');
      const insisted = await take(lines, { insist: true });
      expect(insisted.code).toBe(1);
      expect(insisted.shots.length).toBeGreaterThan(2);
    },
  );

  it.each([
    ['10,-60,365', 'shots.csv:4, field azimuth: an azimuth runs from 0 to 360'],
    ['10,-95,270', 'field dip: a dip runs from -90'],
    ['160,-60,270', 'Likely feet: × 0.3048 it is 48.8 m'],
    ['10,-60,abc', 'field azimuth: this is not a number'],
    ['10,"-60,5",270', 'this is not a number with a decimal point'],
  ])('that can be none (%j) are named by line, and left out only when told to go on', async (row, why) => {
    const lines = [...SOUND, row];
    const held = await take(lines);
    expect([held.code, held.shots.length]).toEqual([1, 2]);
    expect(held.err).toContain(why);
    const left = await take(lines, { keepGoing: true });
    expect([left.code, left.shots.length]).toEqual([1, 4]);
  });

  it('are not taken in twice', async () => {
    const { folder } = await take(SOUND);
    const again = await take(SOUND, { insist: true, keepGoing: true }, folder);
    expect([again.code, again.shots.length]).toEqual([1, 4]);
    expect(again.err).toContain('It was taken in before');
  });

  it.each([
    [{ run: 'gyro' }, 2, 'gyro is not a class of tool'],
    [{ columns: 'deep=MD' }, 2, 'this names no column'],
    [{ columns: 'depth=MD' }, 1, 'there is no column "MD"'],
    [{ shots: '/nowhere/shots.csv' }, 2, 'the file or its folder is not there'],
    [{ hole: 'NOSUCH' }, 2, 'the project has no such hole'],
  ] as const)('are refused with the reason for %j', async (more, code, why) => {
    const refused = await take(SOUND, more);
    expect(refused.code).toBe(code);
    expect(refused.err).toContain(why);
    expect(refused.shots).toHaveLength(2);
  });
});
