import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { enter } from '../../../src/commands/enter.ts';
import { survey } from '../../../src/commands/survey.ts';
import { copyOfSample, hear } from '../support/outside.ts';

const HOLE = 'MBRC003';

async function pipe(lines: readonly string[], keepGoing = false) {
  const folder = copyOfSample();
  const heard = hear(lines.join('\n'));
  const code = await enter(heard.outside, { folder, hole: HOLE, keepGoing });
  const { runs, shots } = JSON.parse(readFileSync(join(folder, `holes/${HOLE}.json`), 'utf8')).tables;
  return {
    code,
    out: heard.out(),
    err: heard.err(),
    folder,
    runs: Object.values(runs) as readonly object[],
    shots: Object.values(shots) as readonly object[],
  };
}

describe('a survey run from a pipe', () => {
  it('begins by ;run, and the shots behind it are its own', async () => {
    const { code, out, runs, shots } = await pipe([
      ';run north-seeking in offset 1.5 on 2026-03-13 tool gyro 9',
      ';shot b50 -59.7 271.1',
    ]);
    expect([code, out]).toEqual([
      0,
      '1: Survey run begun: north-seeking gyro, true north (the usual one, as none was given)\n2: shot at 48.5 m\n',
    ]);
    expect(runs.at(-1)).toMatchObject({
      tool: 'gyro 9',
      pass: 'in',
      toolOffsetMm: 1500,
      rank: 60,
      at: '2026-03-13T12:00:00+08:00',
    });
    expect(shots.at(-1)).toMatchObject({ depthMm: 48_500, azimuthDeg: 271.1 });
  });

  it('ranks by its class of tool, or as is said: the best at each depth makes the path', async () => {
    const { runs, folder } = await pipe([
      ';run magnetic open steel 9 rank 90 tool M2',
      ';shot 42 -58.9 269.9',
      ';run aligned tool gyro 5',
      ';shot 42 -59.9 270.5',
    ]);
    expect(runs.slice(1)).toMatchObject([{ rank: 90 }, { rank: 50 }]);
    const later = hear();
    await survey(later.outside, { folder, hole: HOLE, json: true, csv: false });
    expect(JSON.parse(later.out()).stations.at(-1)).toMatchObject({ depthMm: 42_000, dip: -58.9 });
  });

  it('that can not be read is refused with its form', async () => {
    const { code, err, runs } = await pipe([';run gyro']);
    expect([code, runs.length]).toEqual([1, 1]);
    expect(err).toContain('gyro is not a class of tool');
    expect(err).toContain('north-seeking | aligned | magnetic');
  });
});

describe('a shot from a pipe', () => {
  it.each([
    ['48 59.7 271', 'points upwards'],
    ['48 30.3 271', 'inclination from vertical'],
    ['48 -59.7 91', 'back-bearing'],
    ['40 -59.7 271', 'not below the one before it'],
    ['48 -59.7 285', 'the direction changes by'],
  ])(
    'that is doubtful (%s) is saved, reported with the likely cause, and stays marked',
    async (typed, why) => {
      const { code, out, err, shots, folder } = await pipe([`;shot ${typed}`]);
      expect([code, shots.length]).toEqual([1, 3]);
      expect(out).toContain('doubtful');
      expect(err).toContain(why);
      const later = hear();
      expect(await survey(later.outside, { folder, hole: HOLE, json: false, csv: false })).toBe(1);
      expect(later.out()).toContain(why);
    },
  );

  it('that was misread is corrected by its line with corrects, in the same place', async () => {
    const { code, out, shots } = await pipe([';shot 48 -59.7 91 =', ';shot 48 -59.7 271 corrects']);
    expect([code, shots.length]).toEqual([0, 3]);
    expect(out).toContain(
      'shot at 48 m corrected: dip -59.7°, azimuth 271.0°, first typed as dip -59.7°, azimuth 91.0°',
    );
    expect(shots.at(-1)).toMatchObject({
      azimuthDeg: 271,
      misread: expect.stringContaining('azimuth 91.0°'),
    });
  });

  it('that is so by = is saved and not reported', async () => {
    const { code, err, shots } = await pipe([';shot 48 -59.7 91 =']);
    expect([code, err, shots.length]).toEqual([0, '', 3]);
  });

  it.each([
    ['48 -59.7 365', 'an azimuth runs from 0 to 360'],
    ['48 -99 271', 'vertically down'],
    ['160 -59.7 271', 'Likely feet: × 0.3048 it is 48.8 m'],
    ['160 -59.7 271 =', 'Likely feet'],
    ['42 -59.7 271', 'the run has a shot at 42 m'],
  ])('that can not be (%s) is refused, = or not', async (typed, why) => {
    const { code, err, shots } = await pipe([`;shot ${typed}`]);
    expect([code, shots.length]).toEqual([1, 2]);
    expect(err).toContain(why);
  });
});
