import { beforeAll, describe, expect, it } from 'vitest';
import {
  beginRun,
  doubtsOfShot,
  earlierWords,
  isRejected,
  openRun,
  recordShotRead,
  type ShotRead,
  turnRejection,
} from '../../src/acts/shot.ts';
import type { Made, Maker } from '../../src/hole/commands/made.ts';
import { holeNouns, holeThing, holeThings } from '../../src/hole/hole.ts';
import type { Project } from '../../src/project/project.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import type { Stamp } from '../../src/quantity/stamp.ts';
import { applyChanges } from '../../src/record/apply.ts';
import type { Document } from '../../src/record/document.ts';
import { surveyChecksOf, surveyOf, targetOf } from '../../src/standing/survey.ts';
import type { RunSaid } from '../../src/survey/shots/run-said.ts';
import { sampleFiles, sitDown } from '../console/support/sitting.ts';

let project: Project;
let hole: Document;
beforeAll(async () => {
  const sitting = await sitDown(sampleFiles());
  project = sitting.state().project;
  hole = sitting.hole('MBRC003');
});

let count = 0;
const MAKER: Maker = { newId: () => `t-${count++}`, at: '2026-03-14T09:00:00+08:00' as Stamp, by: 'NOK' };

const read = (depthM: number, dipDeg: number, azimuthDeg?: number): ShotRead => ({
  depthMm: depthFromMetres(depthM),
  dipDeg,
  ...(azimuthDeg === undefined ? {} : { azimuthDeg }),
});

function made(document: Document, { changes }: Made): Document {
  const applied = applyChanges(document.tables, changes);
  if (!applied.ok) throw new Error(applied.problem);
  return { ...document, tables: applied.tables };
}

const MAGNETIC: RunSaid = {
  tool: 'tool 5',
  toolClass: 'magnetic',
  north: 'magnetic',
  pass: 'single',
  inside: 'rods',
  toolOffsetMm: 3000,
  operator: 'driller',
};

const codes = (shot: ShotRead, document: Document = hole) =>
  doubtsOfShot(project, document, shot, MAKER, []).own.map((each) => each.code);

describe('a shot read out', () => {
  it('goes into the run that was begun last', () => {
    const begun = made(hole, beginRun(MAGNETIC, MAKER));
    const recorded = recordShotRead(project, begun, read(48, -59.7), MAKER);
    if (!recorded.ok) throw new Error('it was refused');
    const shot = holeNouns(made(begun, recorded.value), 'shots').at(-1);
    expect(shot).toMatchObject({ run: openRun(begun)?.[0], depthMm: 48_000, dipDeg: -59.7 });
    expect(shot).not.toHaveProperty('azimuthDeg');
  });

  it('is refused where no run was begun: its north would be a guess', () => {
    const none: Document = { ...hole, tables: { ...hole.tables, runs: {}, shots: {} } };
    expect(recordShotRead(project, none, read(48, -59.7, 271), MAKER)).toMatchObject({
      ok: false,
      findings: [{ problem: expect.stringContaining('no survey run is begun') }],
    });
  });

  it('is refused below the drilled depth, with feet named where they are likely', () => {
    expect(recordShotRead(project, hole, read(170, -59.7, 271), MAKER)).toMatchObject({
      ok: false,
      findings: [{ code: 'survey-shot-below-drilled', remedy: expect.stringContaining('feet') }],
    });
  });

  it('is refused so beside the shots of its run: a slipped depth was the next one, not one above them', () => {
    const drilled: Document = {
      ...hole,
      tables: { ...hole.tables, rods: { r1: { at: MAKER.at, rod: 30, depthMm: 180_000 } } },
    };
    const more = [72, 102].reduce((document, depthM) => {
      const recorded = recordShotRead(project, document, read(depthM, -59.7, 271), MAKER);
      if (!recorded.ok) throw new Error('it was refused');
      return made(document, recorded.value);
    }, drilled);
    expect(recordShotRead(project, more, read(231, -59.6, 271), MAKER)).toMatchObject({
      findings: [{ remedy: expect.stringContaining('132.0 m is on the schedule') }],
    });
    expect(recordShotRead(project, drilled, read(210, -59.6, 271), MAKER)).toMatchObject({
      findings: [{ remedy: expect.not.stringContaining('12.0 m') }],
    });
  });

  it('is refused where its run has one at its depth, and taken once that one is rejected', () => {
    const again = read(42, -59.9, 271);
    expect(recordShotRead(project, hole, again, MAKER)).toMatchObject({
      ok: false,
      findings: [{ code: 'rows-overlap' }],
    });
    const id = holeThings(hole, 'shots').find(([, shot]) => shot.depthMm === 42_000)?.[0] ?? '';
    const rejected = turnRejection(hole, id, 'shot', 'tool not still');
    if (!rejected.ok) throw new Error('it was refused');
    expect(recordShotRead(project, made(hole, rejected.value), again, MAKER).ok).toBe(true);
  });
});

describe('a doubtful shot', () => {
  it('is none where it fits what is known', () => {
    expect(codes(read(50, -59.7, 271))).toEqual([]);
    expect(codes(read(50, -59.7))).toEqual([]);
  });

  it.each([
    ['60 typed for -60', read(50, 59.7, 271), 'survey-dip-upwards'],
    ['an inclination from vertical', read(50, 30.2, 271), 'survey-dip-from-vertical'],
    ['a back-bearing', read(50, -59.7, 91), 'survey-back-bearing'],
    ['a jump', read(50, -50, 271), 'survey-jump'],
  ])('is asked about: %s', (_what, shot, code) => {
    expect(codes(shot)[0]).toBe(code);
  });

  it('is a magnetic azimuth inside the rods, and not its dip', () => {
    const begun = made(hole, beginRun(MAGNETIC, MAKER));
    expect(codes(read(50, -59.7, 270), begun)).toContain('survey-magnetic-in-steel');
    expect(codes(read(50, -59.7), begun)).not.toContain('survey-magnetic-in-steel');
  });

  it('is not one that has metres without a shot below it: the next shots fill them', () => {
    const often = { ...project, survey: { ...project.survey, longestGapM: 5 } };
    const gaps = (depthM: number) =>
      doubtsOfShot(often, hole, read(depthM, -59.7, 271), MAKER, []).own.map(({ code, place }) => [
        code,
        place.toMm,
      ]);
    expect(gaps(44)).toEqual([]);
    expect(gaps(50)).toEqual([['survey-shot-gap', 50_000]]);
  });

  it('does not repeat what was doubtful before it', () => {
    const first = recordShotRead(project, hole, read(50, -59.7, 91), MAKER);
    if (!first.ok) throw new Error('it was refused');
    const before = made(hole, first.value);
    const { own, earlier } = doubtsOfShot(project, before, read(53, -59.7, 91), MAKER, []);
    expect([...own, ...earlier].filter((each) => each.place.fromMm === 50_000)).toEqual([]);
  });
});

describe('the shot below a misread one', () => {
  const misread = read(48, -59.7, 207.9);
  const taken = (document: Document, shot: ShotRead) => {
    const recorded = recordShotRead(project, document, shot, MAKER);
    if (!recorded.ok) throw new Error('it was refused');
    return made(document, recorded.value);
  };

  it('is good: the misread one is named by its depth, as the survey page names it', () => {
    expect(doubtsOfShot(project, hole, misread, MAKER, [])).toMatchObject({
      own: [
        {
          code: 'survey-jump',
          problem: expect.stringContaining("the deeper shot's azimuth would be 270.9°"),
        },
      ],
      earlier: [],
    });
    const before = taken(hole, misread);
    const good = read(54, -59.6, 271.1);
    const { own, earlier } = doubtsOfShot(project, before, good, MAKER, []);
    expect(own).toEqual([]);
    expect(earlier).toHaveLength(1);
    expect(earlierWords(earlier)[0]).toMatch(/^the shot at 48 m looks wrong: it points .* 270\.9°, in line$/);
    // One judgement: what is said on entry stays in the findings of the page, and the path goes by what they leave.
    const after = taken(before, good);
    expect(surveyChecksOf(project, after, []).findings).toEqual(expect.arrayContaining([...earlier]));
    expect(surveyOf(project, after).leftOut.map(({ depthMm }) => depthMm)).toEqual([48_000]);
  });

  it('settles which of the two was wrong: until then no chance is given', () => {
    const before = taken(hole, misread);
    expect(targetOf(project, before)?.chanceBasis).toBe('shots marked as wrong');
    expect(targetOf(project, taken(before, read(54, -59.6, 271.1)))?.chanceBasis).not.toBe(
      'shots marked as wrong',
    );
  });
});

describe('a rejection', () => {
  const id = () => holeThings(hole, 'shots').at(-1)?.[0] ?? '';

  it('of the azimuth alone leaves the dip, and is turned back with its reason in the words of the edit', () => {
    const rejected = turnRejection(hole, id(), 'azimuth', 'near steel');
    if (!rejected.ok) throw new Error('it was refused');
    const after = made(hole, rejected.value);
    expect(holeThing(after, 'shots', id())).toMatchObject({ azimuthRejected: 'near steel', dipDeg: -59.8 });
    const back = turnRejection(after, id(), 'azimuth', 'it was another shot');
    if (!back.ok) throw new Error('it was refused');
    expect(back.value.what).toBe('azimuth at 42 m used again: it was another shot');
    expect(made(after, back.value).tables.shots).toEqual(hole.tables.shots);
  });

  it('tells what is rejected', () => {
    const shot = holeThing(hole, 'shots', id());
    if (shot === undefined) throw new Error('no shot');
    expect(isRejected(shot, 'shot')).toBe(false);
    expect(isRejected({ ...shot, rejected: 'x' }, 'shot')).toBe(true);
    expect(isRejected({ ...shot, rejected: 'x' }, 'azimuth')).toBe(false);
  });

  it('is refused for a shot that is not there, and for an azimuth that was never read', () => {
    expect(turnRejection(hole, 'no one', 'shot', 'x').ok).toBe(false);
    const dipOnly = recordShotRead(project, hole, read(50, -59.7), MAKER);
    if (!dipOnly.ok) throw new Error('it was refused');
    const after = made(hole, dipOnly.value);
    const last = holeThings(after, 'shots').at(-1)?.[0] ?? '';
    expect(turnRejection(after, last, 'azimuth', 'x')).toMatchObject({
      ok: false,
      findings: [{ problem: 'the shot has no azimuth' }],
    });
  });
});
