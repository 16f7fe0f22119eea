import { beforeAll, describe, expect, it } from 'vitest';
import { setExpected } from '../../src/acts/expected.ts';
import { planOf } from '../../src/hole/hole.ts';
import type { Project } from '../../src/project/project.ts';
import { applyChanges } from '../../src/record/apply.ts';
import type { Document } from '../../src/record/document.ts';
import { expectedFindingsOf, expectedLoggedOf } from '../../src/standing/survey.ts';
import { sampleFiles, sitDown } from '../console/support/sitting.ts';

let project: Project;
let hole: Document;
beforeAll(async () => {
  const sitting = await sitDown(sampleFiles());
  project = sitting.state().project;
  // The sample's own expectations are taken out: each case says its own.
  hole = sitting.hole('MBRC003');
  hole = expecting('Cuckoo lode none', 'old stope none');
});

function expecting(...said: readonly string[]): Document {
  let document = hole;
  for (const each of said) {
    const made = setExpected(project, document, each);
    if (!made.ok) throw new Error(made.findings[0]?.problem);
    const applied = applyChanges(document.tables, made.value.changes);
    if (!applied.ok) throw new Error(applied.problem);
    document = { ...document, tables: applied.tables };
  }
  return document;
}

const names = (document: Document) => planOf(document)?.expects?.map((each) => each.name);

describe('what a plan expects', () => {
  it('is added in order of depth; one of the same name is replaced; none takes it out', () => {
    expect(names(expecting('lode 70-78', 'old stope 60-64 void'))).toEqual(['old stope', 'lode']);
    const moved = expecting('lode 70-78', 'lode 50-58');
    expect(planOf(moved)?.expects).toMatchObject([{ name: 'lode', fromMm: 50_000 }]);
    expect(planOf(expecting('lode 70-78', 'lode none'))).not.toHaveProperty('expects');
  });

  it.each([
    ['lode seventy', 'a name and a depth are wanted'],
    ['lode 70 seen rock NOSUCH', 'rock has no code NOSUCH'],
    ['lode 70 seen nosuch', 'there is no field nosuch'],
    ['lode none', 'the plan expects no lode'],
  ])('is refused for %j: %s', (said, why) => {
    expect(setExpected(project, hole, said)).toMatchObject({
      ok: false,
      findings: [{ problem: expect.stringContaining(why) }],
    });
  });

  it('is beside the log at once, and is a finding where it came far off', () => {
    const document = expecting('lode 70-78 seen sulphides PYR>=2');
    expect(expectedLoggedOf(project, document)).toMatchObject([{ state: 'seen', loggedTopMm: 45_000 }]);
    expect(expectedFindingsOf(project, document).map((each) => each.code)).toEqual(['survey-expected-off']);
    expect(expectedFindingsOf(project, expecting('lode 46 seen sulphides PYR>=2'))).toEqual([]);
  });
});
