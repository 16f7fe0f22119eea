import { beforeAll, describe, expect, it } from 'vitest';
import { checkHole, checkProject } from '../../src/check/check-hole.ts';
import { openProject } from '../../src/commands/at-project.ts';
import type { Project } from '../../src/project/project.ts';
import type { Document, Thing } from '../../src/record/document.ts';
import { hear, SAMPLE } from '../commands/support/outside.ts';

let project: Project;
let documents: ReadonlyMap<string, Document>;
beforeAll(async () => {
  const opened = await openProject(hear().outside, { folder: SAMPLE });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  project = opened.value.project;
  documents = opened.value.desk.documents();
});

/** The sample's holes with one thing of one hole put otherwise. */
function withThing(id: string, table: string, index: number, change: Thing): ReadonlyMap<string, Document> {
  const hole = documents.get(`hole/${id}`)!;
  const [thing, was] = Object.entries(hole.tables[table] ?? {})[index]!;
  const tables = { ...hole.tables, [table]: { ...hole.tables[table], [thing]: { ...was, ...change } } };
  return new Map([...documents, [`hole/${id}`, { ...hole, tables }]]);
}

const codes = (changed: ReadonlyMap<string, Document>, id: string) =>
  checkHole(project, changed.get(`hole/${id}`)!, changed.values()).map((finding) => finding.code);

describe('a hole compared with every check', () => {
  it('has one note in a sound one where a rod went by without a look at cyclone and splitter', () => {
    expect(codes(documents, 'MBRC003')).toEqual(['hygiene-not-looked']);
  });

  it.each([
    [
      'a row of a field that the schema has not',
      'rows',
      3,
      { cells: { nosuch: { flag: true } } },
      'row-field-unknown',
    ],
    ['a bag under a number used in another hole', 'bags', 2, { number: 'MB000121' }, 'number-used-twice'],
    ['a mismatch that was noted and not mended', 'rods', 4, { unmended: true }, 'mismatch-unmended'],
    ['a contaminated metre', 'stream', 1, { contaminated: true }, 'metres-contaminated'],
    ['a wet metre', 'stream', 1, { moisture: 'wet' }, 'wet-run'],
    ['a metre of which little came up', 'stream', 1, { recovery: 'poor' }, 'recovery-low'],
    ['a shot whose dip points up', 'shots', 1, { dipDeg: 59.8 }, 'survey-dip-upwards'],
  ])('finds %s, and says where', (_what, table, index, change, code) => {
    const changed = withThing('MBRC003', table, index, change as Thing);
    const found = checkHole(project, changed.get('hole/MBRC003')!, changed.values());
    expect(found.map((finding) => finding.code)).toContain(code);
    for (const finding of found) expect(finding.place.hole).toBe('MBRC003');
  });
});

describe('cells that two copies changed differently', () => {
  const asked = (key: string, question: Thing) => {
    const document = documents.get(key)!;
    const tables = { ...document.tables, questions: { 'z9-1': { ...question, state: 'open' } } };
    const changed = new Map([...documents, [key, { ...document, tables }]]);
    return checkProject(project, changed.values()).filter(({ code }) => code === 'question-open');
  };

  it('are warned of by hole and row', () => {
    const [thing] = Object.entries(documents.get('hole/MBRC003')!.tables.rows!)[3]!;
    const cell = { table: 'rows', thing, field: 'cells.rock', ours: { code: 'SHA' }, theirs: null };
    expect(asked('hole/MBRC003', cell)).toMatchObject([
      { severity: 'warning', place: { hole: 'MBRC003', fromMm: 3000, toMm: 4000 } },
    ]);
  });

  it('are warned of in a shift, by its name', () => {
    const key = [...documents.keys()].find((each) => each.startsWith('shift/'))!;
    const cell = { table: 'shift', thing: 'shift', field: 'name', ours: 'DAY', theirs: 'NIGHT' };
    expect(asked(key, cell)).toMatchObject([
      { severity: 'warning', place: { thing: `${key.replace('/', ' ')}, shift, name` } },
    ]);
  });
});

describe('a project compared with every check', () => {
  it('finds what is wrong in each hole, once', () => {
    const changed = withThing('MBRC003', 'bags', 2, { number: 'MB000121' });
    const twice = checkProject(project, changed.values()).filter(
      (finding) => finding.code === 'number-used-twice',
    );
    expect(twice.length).toBeGreaterThan(0);
    expect(new Set(twice.map((finding) => JSON.stringify(finding))).size).toBe(twice.length);
  });
});
