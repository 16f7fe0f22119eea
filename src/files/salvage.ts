import { asChange } from '../record/chain.ts';
import { type Change, type DocumentName, documentKey } from '../record/document.ts';
import { draftOf, makeChange, tablesOf } from '../record/draft.ts';
import type { WorkLine } from './journal-line.ts';

/** What can be had of a document from lines of a journal that does not reach back to where it was made. */
export interface Salvaged {
  /** Things that stand after the lines, each put. */
  readonly changes: readonly Change[];
  /** How many changes of the lines fitted, and how many were to things that nothing here holds. */
  readonly fitting: number;
  readonly lost: number;
}

/** Plays a document's lines from nothing; changes of things that are not there are counted and left out. */
export function salvage(name: DocumentName, lines: readonly WorkLine[]): Salvaged {
  const draft = draftOf({});
  let fitting = 0;
  let lost = 0;
  for (const change of lines.flatMap((line) => changesOf(name, line))) {
    if ('problem' in makeChange(draft, change)) lost += 1;
    else fitting += 1;
  }
  const changes = Object.entries(tablesOf(draft)).flatMap(([table, things]) =>
    Object.entries(things).map(([id, thing]): Change => ({ put: [table, id], thing })),
  );
  return { changes, fitting, lost };
}

function changesOf(name: DocumentName, line: WorkLine): readonly Change[] {
  if ('letGo' in line) return [];
  if ('adopt' in line) return line.adopt.entries.flatMap((entry) => entry.changes.map(asChange));
  const key = documentKey(name);
  return line.edit.parts.filter((part) => documentKey(part.document) === key).flatMap((part) => part.changes);
}
