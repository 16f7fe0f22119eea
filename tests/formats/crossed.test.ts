import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { takeIn } from '../../src/desk/take-in.ts';
import { formatNeeded } from '../../src/files/document-file.ts';
import { documentBytes } from '../../src/files/print-document.ts';
import { copyIn } from '../../src/files/read-copy.ts';
import { everyEntry } from '../../src/record/ancestry.ts';
import { apply } from '../../src/record/apply.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import type { Document } from '../../src/record/document.ts';
import { rowLogged } from '../desk/support/values.ts';

/**
 * Two copies of a hole that took each other in on five evenings, as format 1 wrote them: each merge holds the other copy's entries with
 * their own merges inside, five deep. They asked twice about a remark, under an id of each copy.
 */
const crossed = (name: string): Document => {
  const file = `crossed/${name}.json`;
  const read = copyIn(readFileSync(new URL(file, import.meta.url)), file);
  if (!read.ok) throw new Error(read.findings[0]?.problem);
  return read.value;
};
const ours = crossed('ours');
const theirs = crossed('theirs');

let number = 0;
const deed = (what: string) => {
  number += 1;
  return { edit: `t5-${number}`, at: '2026-03-20T08:00:00+08:00', by: 'AR', what };
};
const taken = (here: Document, copy: Document) => {
  const made = takeIn(here, copy, deed);
  if (!made.ok) throw new Error(made.problem);
  return made;
};
const logged = (document: Document, id: string, fromM: number): Document => {
  const made = apply(document, deed('logged'), [rowLogged(id, fromM)]);
  if (!made.ok) throw new Error(made.problem);
  return made.document;
};
const printed = (document: Document): string =>
  new TextDecoder().decode(documentBytes({ document, position: { generation: 1, sequence: 1 } }));

describe('copies of format 1 that crossed', () => {
  it('are read, hold their chain and make their tables', () => {
    for (const copy of [ours, theirs]) {
      expect(copy.history.some((entry) => entry.merged !== undefined)).toBe(true);
      expect(chainFault(copy.history)).toBeUndefined();
      expect(replay(copy.history)).toEqual(copy.tables);
    }
  });

  it('are written in format 1 until a merge of today is in them', () => {
    expect(printed(ours)).toContain('"format": 1');
    const both = taken(logged(ours, 't5-90', 30), logged(theirs, 't5-91', 31)).document;
    expect([formatNeeded(ours), formatNeeded(both)]).toEqual([1, 2]);
    expect(printed(both)).toContain('"format": 2');
  });

  it('go on crossing: what was nested stays as it is, nothing nests further, and every row comes through', () => {
    let copies: readonly [Document, Document] = [ours, theirs];
    const sizes: number[] = [];
    for (let evening = 1; evening <= 30; evening += 1) {
      const [here, there] = [
        logged(copies[0], `t5-a${evening}`, 20 + 2 * evening),
        logged(copies[1], `t5-b${evening}`, 21 + 2 * evening),
      ];
      copies = [taken(here, there).document, taken(there, here).document];
      sizes.push(printed(copies[0]).length);
    }
    const [at10 = 0, at20 = 0, at30 = 0] = [sizes[9], sizes[19], sizes[29]];
    expect(at30 - at20).toBeLessThan(1.1 * (at20 - at10));
    for (const { history, tables } of copies) {
      expect(chainFault(history)).toBeUndefined();
      expect(Object.keys(tables.rows ?? {})).toHaveLength(Object.keys(ours.tables.rows ?? {}).length + 60);
      expect(everyEntry(history).length).toBeGreaterThan(100);
    }
    const [one, other] = copies;
    expect(taken(one, other).outcome).toBe('same');
  });
});
