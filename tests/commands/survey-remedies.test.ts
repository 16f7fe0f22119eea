import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { lineUpTake } from '../../src/commands/line-up-take.ts';
import { newProject } from '../../src/commands/new-project.ts';
import { survey } from '../../src/commands/survey.ts';
import { freshFolder, hear } from './support/outside.ts';

const HOLE = 'ZQRC001';
const DEPTHS = [30, 60, 90, 120, 150, 180];
const DIPS = [-59.2, -58.5, -57.7, -56.6, -55.9, -55.1];
/** As a tool that finds north reads it, from true north: 0.7° to the right of the grid here, which lies 11.69° right of magnetic. */
const TRUE = [91.5, 92.0, 92.4, 93.1, 93.8, 94.2];
const MAGNETIC = TRUE.map((deg) => Number((deg - 11.69).toFixed(1)));

const made = mkdtempSync(join(tmpdir(), 'offsider-remedies-'));
const drilled = join(made, 'project');
afterAll(() => rmSync(made, { recursive: true, force: true }));
beforeAll(async () => {
  const program = join(made, 'program.csv');
  writeFileSync(
    program,
    `hole,easting,northing,elevation,azimuth,north,dip,depth,target depth,target\n${HOLE},400100,6000100,400,90,grid,-60,180,150,lode\n`,
  );
  const heard = hear();
  const created = { folder: drilled, style: 'orogenic-gold', program, epsg: 7855, keepGoing: false };
  expect([await newProject(heard.outside, created), heard.err()]).toEqual([0, '']);
  const lined = hear();
  const readings = {
    ...{ cautions: 'NOK', permission: 'Mick Tarrant driller', way: 'device', azimuth: '90.65t' },
    ...{ compass: [], crewDip: '-60.1', clinometer: '-60.1', collar: '400100 6000100 400' },
  };
  await lineUpTake(lined.outside, { folder: drilled, hole: HOLE, json: false, record: true, readings });
  expect(lined.err()).toContain('Accepted and recorded');
  await typed(drilled, [';rod @180']);
});

async function typed(folder: string, lines: readonly string[]) {
  const heard = hear(lines.join('\n'));
  const code = await enter(heard.outside, { folder, hole: HOLE, rig: 'RIG1', keepGoing: true });
  return { code, out: heard.out(), err: heard.err() };
}

/** What the survey page says of the hole: its findings, and the line of the chance. */
async function page(folder: string) {
  const heard = hear();
  await survey(heard.outside, { folder, hole: HOLE, json: true, csv: false });
  const { findings } = JSON.parse(heard.out()) as { findings: readonly { code: string; remedy: string }[] };
  const text = hear();
  await survey(text.outside, { folder, hole: HOLE, json: false, csv: false });
  return {
    codes: findings.map(({ code }) => code),
    remedies: findings.map(({ remedy }) => remedy).join('\n'),
    text: text.out(),
  };
}

const shots = (azimuths: readonly number[], depths: readonly number[] = DEPTHS, dips = DIPS) =>
  azimuths.map((azimuth, index) => `;shot ${depths[index]} ${dips[index]} ${azimuth}`);
const NORTH_SEEKING = ';run north-seeking tool gyro 2';

/** A state as it was typed, what is said of it, the lines that follow its remedy, and the chance before and after. */
const CASES: readonly {
  readonly what: string;
  readonly typed: readonly string[];
  readonly codes: readonly string[];
  readonly remedy: RegExp;
  readonly follow: readonly string[];
  readonly before: RegExp;
}[] = [
  {
    what: 'a shot that stands alone: corrected',
    typed: [NORTH_SEEKING, ...shots(TRUE.with(2, 29.4))],
    codes: ['survey-shot-alone'],
    remedy: /If it was misread, correct it: ;shot 90, the right figures, then corrects/,
    follow: [';shot 90 -57.7 92.4 corrects'],
    before: /at most 99 %/,
  },
  {
    what: 'a back-bearing: corrected, turned by 180°',
    typed: [NORTH_SEEKING, ...shots(TRUE.with(2, 272.4))],
    codes: ['survey-back-bearing'],
    remedy: /correct it, turned by 180°: ;shot 90, its dip, the azimuth, then corrects/,
    follow: [';shot 90 -57.7 92.4 corrects'],
    before: /at most 99 %/,
  },
  {
    what: 'a magnetic run inside the rods: the azimuths rejected alone, a gyro run',
    typed: [';run magnetic in rods tool tool 5', ...shots(MAGNETIC)],
    codes: DEPTHS.map(() => 'survey-magnetic-in-steel'),
    remedy: /Reject the azimuth alone: the dip is kept/,
    follow: [';reject 30-180 azimuth inside the rods', NORTH_SEEKING, ...shots(TRUE)],
    before: /at most 99 %/,
  },
  {
    what: 'steel near the collar: those azimuths rejected alone',
    typed: [
      ';run magnetic in open tool tool 5',
      ...shots(MAGNETIC.map((deg, index) => Number((deg + ([14, 4][index] ?? 0)).toFixed(1)))),
    ],
    codes: ['survey-magnetic-in-steel'],
    remedy: /Reject these azimuths alone/,
    follow: [';reject 30-60 azimuth casing'],
    before: /at most 99 %/,
  },
  {
    what: 'a shot that stands alone and was read so: rejected',
    typed: [NORTH_SEEKING, ...shots(TRUE.with(2, 29.4))],
    codes: ['survey-shot-alone'],
    remedy: /If the tool reads so, reject it/,
    follow: [';reject 90 the tool moved'],
    before: /at most 99 %/,
  },
  {
    what: 'a run that is off all the way: surveyed again by another tool, the worse run rejected',
    typed: [NORTH_SEEKING, ...shots(TRUE.map((deg) => Number((deg - 6.3).toFixed(1))))],
    codes: ['survey-runs-disagree'],
    remedy: /Ask the driller to survey again, or reject the worse run/,
    follow: [';run north-seeking tool gyro 4', ...shots(TRUE), ';reject 30-180 of gyro 2: off by 6'],
    before: /not known within/,
  },
  {
    what: 'two runs that differ at one place: run again, the worse one rejected',
    typed: [
      NORTH_SEEKING,
      ...shots(TRUE),
      ';run north-seeking tool gyro 4',
      ...shots(TRUE, DEPTHS, [...DIPS.slice(0, 5), -51.6]),
    ],
    codes: ['survey-misclose'],
    remedy: /run the tool again, slower and with longer stops, and reject the shots of the worse run/,
    follow: [';reject 30-180 of gyro 4: worse at the foot', ';run north-seeking tool gyro 4', ...shots(TRUE)],
    before: /not known within/,
  },
  {
    what: 'a gyro that drifts beside one that finds north: rejected',
    typed: [
      NORTH_SEEKING,
      ...shots(TRUE),
      ';run aligned in open tool gyro 3',
      ...shots(TRUE.map((deg, index) => Number((deg - 0.7 + 0.93 * (index + 1)).toFixed(1)))),
    ],
    codes: ['survey-gyro-drift'],
    remedy: /Reject these shots, and keep gyro 2/,
    follow: [';reject 30-180 of gyro 3: drifts'],
    before: /over 99 %/,
  },
  {
    what: 'a run in feet: rejected, and recorded in metres',
    typed: [NORTH_SEEKING, ...shots(TRUE.slice(0, 1), [98])],
    codes: ['survey-depth-slip'],
    remedy: /if it is feet, reject these shots and record them in metres/,
    follow: [';reject 98 feet', ...shots(TRUE)],
    before: /at most \d+ %/,
  },
];

describe('the remedy of a survey finding, followed from the state it was given in', () => {
  it.each(CASES.map((each) => [each.what, each] as const))('settles %s', async (_, each) => {
    const { typed: lines, codes, remedy, follow, before } = each;
    const folder = join(freshFolder(), 'project');
    cpSync(drilled, folder, { recursive: true });
    await typed(folder, lines);
    const state = await page(folder);
    expect([...new Set(state.codes.filter((code) => code !== 'survey-shot-gap'))].sort()).toEqual(
      [...new Set(codes)].sort(),
    );
    expect(state.remedies).toMatch(remedy);
    expect(state.text).toMatch(before);
    const followed = await typed(folder, follow);
    expect(followed.err).toBe('');
    const after = await page(folder);
    // A shot that is rejected and not taken again leaves a gap, and rightly.
    expect(after.codes.filter((code) => code !== 'survey-shot-gap')).toEqual([]);
    expect(after.text).toMatch(/over 99 % within/);
  });
});
