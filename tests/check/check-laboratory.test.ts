import { beforeAll, describe, expect, it } from 'vitest';
import { checkHole, checkProject } from '../../src/check/check-hole.ts';
import { openProject } from '../../src/commands/at-project.ts';
import type { Project } from '../../src/project/project.ts';
import type { Document, Tables } from '../../src/record/document.ts';
import { hear, SAMPLE } from '../commands/support/outside.ts';

let project: Project;
let documents: ReadonlyMap<string, Document>;
beforeAll(async () => {
  const opened = await openProject(hear().outside, { folder: SAMPLE });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  project = opened.value.project;
  documents = opened.value.desk.documents();
});

/** The sample's documents with some tables of some of them put otherwise. */
function changed(of: (document: Document) => Partial<Tables> | undefined): ReadonlyMap<string, Document> {
  return new Map(
    [...documents].map(([key, document]) => {
      const tables = of(document);
      return [
        key,
        tables === undefined
          ? document
          : ({ ...document, tables: { ...document.tables, ...tables } } as Document),
      ];
    }),
  );
}

const found = (all: ReadonlyMap<string, Document>) =>
  checkProject(project, all.values()).map((each) => each.code);

describe('chip trays compared with the check', () => {
  it('without a photograph are found in their hole, where a project photographs its trays', () => {
    const without = changed(({ id }) => (id === 'MBRC003' ? { trays: {} } : undefined));
    expect(found(without).filter((code) => code === 'tray-without-photo')).toHaveLength(2);
    const hole = without.get('hole/MBRC003');
    if (hole === undefined) throw new Error('no MBRC003');
    const here = checkHole(project, hole, without.values()).filter(
      (each) => each.code === 'tray-without-photo',
    );
    expect(here.map((each) => each.place.thing)).toEqual(['tray 1', 'tray 2']);
  });

  it('raise nothing in a project in which no tray is recorded', () => {
    expect(found(changed(({ kind }) => (kind === 'hole' ? { trays: {} } : undefined)))).not.toContain(
      'tray-without-photo',
    );
  });
});

describe('dispatches compared with the check', () => {
  it('raise nothing in the sample', () => {
    expect(found(documents).filter((code) => /dispatch|transfer|custody|receipt|result/.test(code))).toEqual(
      [],
    );
  });

  it('are found where a bag was spoiled after it went', () => {
    const spoiled = changed(({ id, tables }) => {
      if (id !== 'MBRC001') return undefined;
      const bags = Object.entries(tables.bags ?? {}).map(([bag, was]) => [
        bag,
        was.number === 'MB000121' ? { ...was, kind: 'spoiled', reason: 'torn' } : was,
      ]);
      return { bags: Object.fromEntries(bags) };
    });
    expect(found(spoiled)).toContain('dispatch-not-issued');
  });
});
