import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeSample } from '../../.ci/sample-project.ts';
import { checkProject } from '../../src/check/check-hole.ts';
import { type AtProject, holesOf, openProject } from '../../src/commands/at-project.ts';
import { printState } from '../../src/commands/state.ts';
import { headerOf, holeNouns, rowsDown } from '../../src/hole/hole.ts';
import { headsOf } from '../../src/standing/heads.ts';
import { bestCollar, positionOf } from '../../src/survey/collar/collars.ts';
import { gridByCode, toWgs84 } from '../../src/survey/norths/grids.ts';
import { freshFolder, hear, SAMPLE } from './support/outside.ts';

const top = join(import.meta.dirname, '../..');

describe('the sample project', () => {
  it('is what its generator writes, byte for byte', async () => {
    const into = freshFolder();
    await writeSample(into);
    const files = (folder: string) =>
      readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
        .sort();
    expect(files(into)).toEqual(files(SAMPLE));
    for (const file of files(into))
      expect(readFileSync(join(into, file), 'utf8') === readFileSync(join(SAMPLE, file), 'utf8'), file).toBe(
        true,
      );
  });
});

describe('what the sample project holds', () => {
  it('has files whose $schema is in its own folder', () => {
    for (const kind of ['project', 'logging']) {
      const { $schema } = JSON.parse(readFileSync(join(SAMPLE, `${kind}.json`), 'utf8'));
      expect(JSON.parse(readFileSync(join(SAMPLE, $schema), 'utf8'))).toMatchObject({ type: 'object' });
    }
  });

  let at: AtProject;
  beforeAll(async () => {
    const opened = await openProject(hear().outside, { folder: SAMPLE });
    if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
    at = opened.value;
  });
  const hole = (id: string) => at.desk.get({ kind: 'hole', id })!;

  it('lies in open ocean, on no one’s ground, and says so in the README and where the project stands', () => {
    const grid = gridByCode(7851);
    if (grid === undefined) throw new Error('the grid of the sample is not in the table');
    for (const each of holesOf(at.desk)) {
      const collar = bestCollar(holeNouns(each, 'collars'));
      const position = collar && toWgs84(grid, positionOf(collar));
      // South of 36 degrees between these meridians there is no land and no island; from an atlas.
      expect(position?.latDeg).toBeLessThan(-36);
      expect(position?.lonDeg).toBeGreaterThan(121.5);
      expect(position?.lonDeg).toBeLessThan(122.5);
    }
    expect(readFileSync(join(top, 'README.md'), 'utf8')).toMatch(/its coordinates lie in open ocean/);
    const heard = hear();
    printState({ ...at, outside: heard.outside });
    expect(heard.out()).toMatch(/^Mulgara Bend .*\(an invented place; its coordinates lie in open ocean\)$/m);
  });

  it('opens with nothing found, and its checks find nothing worse than a note', () => {
    expect(at.desk.findings()).toEqual([]);
    expect(at.warnings).toEqual([]);
    const found = checkProject(at.project, at.desk.documents().values());
    expect(found.filter((finding) => finding.severity !== 'note')).toEqual([]);
  });

  it('has a program of seven holes and a redrill, in every state but suspended', () => {
    const states = holesOf(at.desk).map((each) => [each.id, headerOf(each).state]);
    expect(states).toEqual([
      ['MBRC001', 'complete'],
      ['MBRC002', 'abandoned'],
      ['MBRC002A', 'complete'],
      ['MBRC003', 'drilling'],
      ['MBRC004', 'planned'],
      ['MBRC005', 'planned'],
      ['MBRC006', 'planned'],
      ['MBRC007', 'planned'],
    ]);
    expect(headerOf(hole('MBRC002A')).parent).toMatchObject({ hole: 'MBRC002', reason: 'redrill' });
  });

  it('has a finished hole of 150 m from cover to fresh rock, with a metre without return, wet metres and an amendment', () => {
    const finished = hole('MBRC001');
    const rows = rowsDown(finished).map(([, row]) => row);
    expect(rows).toHaveLength(150);
    expect(rows.filter((row) => row.noReturn)).toHaveLength(1);
    expect(rows.every((row) => row.asked === undefined)).toBe(true);
    expect(holeNouns(finished, 'stream').filter((fact) => fact.moisture === 'wet')).toHaveLength(2);
    expect(finished.history.some((entry) => entry.what.startsWith('amended'))).toBe(true);
    expect(holeNouns(finished, 'decisions')).toMatchObject([
      { kind: 'ended', verdict: 'ask', depthMm: 150_000 },
    ]);
  });

  it('has its bags with standards, blanks and duplicates, a control put off and placed, and a mismatch mended', () => {
    const finished = hole('MBRC001');
    const kinds = new Set(holeNouns(finished, 'bags').map((bag) => bag.kind));
    expect([...kinds].sort()).toEqual(['blank', 'field duplicate', 'primary', 'standard']);
    expect(holeNouns(finished, 'putOff')).toMatchObject([{ kind: 'standard', placedAt: expect.any(String) }]);
    expect(holeNouns(finished, 'rods').filter((rod) => rod.mismatch !== undefined)).toMatchObject([
      { mismatch: 'bags-too-few' },
    ]);
  });

  it('has a hole half-way down with the rig 8 m ahead of the log, and an activity going on', () => {
    expect(headsOf(hole('MBRC003'))).toMatchObject({ drilledMm: 54_000, loggedMm: 46_000, behindMm: 8_000 });
    expect(at.desk.get({ kind: 'shift', id: 'RC7_2026-03-14_DAY' })).toBeDefined();
  });
});
