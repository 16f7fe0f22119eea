import { heldBy } from '../record/ancestry.ts';
import { apply, applyChanges } from '../record/apply.ts';
import { asChange, replay } from '../record/chain.ts';
import { type Document, documentKey, type Entry, emptyDocument } from '../record/document.ts';
import type { Generation } from './journal.ts';
import { documentsOf, type Link, type WorkLine } from './journal-line.ts';

/** What a document is once the journal is folded in. */
export interface Folded {
  readonly document: Document;
  /** The copy found in the file, where it had gone its own way since the journal was written. */
  readonly copy?: Document;
  /** The first sequence that the file did not hold; undefined where it held everything. */
  readonly firstMissing?: number;
  /** The line that does not fit, where one does not: from there on nothing was folded in. */
  readonly misfit?: { readonly seq: number; readonly problem: string };
}

/**
 * All lines of a journal in order, one for each sequence: where two generations hold the same sequence the later one
 * counts (it was begun because writing the earlier one failed). `overruled` are those that say something else there: the
 * work of a console that had been displaced and did not know it yet.
 */
export function linesInOrder(generations: readonly Generation[]): {
  readonly lines: readonly WorkLine[];
  readonly overruled: readonly { readonly generation: number; readonly line: WorkLine }[];
} {
  const bySequence = new Map<number, { readonly generation: number; readonly line: WorkLine }>();
  const overruled: { readonly generation: number; readonly line: WorkLine }[] = [];
  for (const { generation, lines } of generations) {
    for (const line of lines) {
      const before = bySequence.get(line.seq);
      if (before !== undefined && !sameWork(before.line, line)) overruled.push(before);
      bySequence.set(line.seq, { generation, line });
    }
  }
  const lines = [...bySequence.values()].map(({ line }) => line).sort((a, b) => a.seq - b.seq);
  return { lines, overruled };
}

function sameWork(a: WorkLine, b: WorkLine): boolean {
  return (
    a.links.length === b.links.length && a.links.every((link, index) => link.makes === b.links[index]?.makes)
  );
}

/**
 * The lines that concern each document, in order, by the document's key: from where it was last made again (its file was lost and
 * put back). One that was let go, and not made since, has none.
 */
export function linesByDocument(lines: readonly WorkLine[]): ReadonlyMap<string, readonly WorkLine[]> {
  const found = new Map<string, WorkLine[]>();
  for (const line of lines) {
    for (const [index, name] of documentsOf(line).entries()) {
      const key = documentKey(name);
      if ('letGo' in line) found.delete(key);
      else if (line.links[index]?.onto === '') found.set(key, [line]);
      else {
        const list = found.get(key) ?? [];
        if (list.at(-1) !== line) list.push(line);
        found.set(key, list);
      }
    }
  }
  return found;
}

/**
 * Folds a document's lines into it. A line that its history already holds is skipped, by hash and not by number, so
 * that a file brought in from another project is judged rightly too; any other must follow the last entry and give the
 * hash that the journal says. Where the file has gone its own way, ours is rebuilt from the entry where the two parted.
 */
export function foldLines(found: Document, lines: readonly WorkLine[]): Folded {
  const onFile = foldOnto(found, lines);
  if (onFile.misfit === undefined) return onFile;
  const line = lines.find((candidate) => candidate.seq === onFile.misfit?.seq);
  const onto = line === undefined ? undefined : linkFor(line, found)?.onto;
  const parted = onto === '' ? 0 : found.history.findIndex((entry) => entry.hash === onto) + 1;
  if (parted === 0 && onto !== '') return onFile;
  const history = found.history.slice(0, parted);
  const ours = foldOnto({ ...found, history, tables: replay(history) }, lines);
  return ours.misfit === undefined ? { ...ours, copy: found } : onFile;
}

function foldOnto(found: Document, lines: readonly WorkLine[]): Folded {
  const held = heldBy(found.history);
  let document = found;
  let firstMissing: number | undefined;
  for (const line of lines) {
    const link = linkFor(line, found);
    if (link === undefined || held.has(link.makes)) continue;
    const next = foldLine(document, line, link);
    if (!next.ok)
      return { document, ...missingFrom(firstMissing), misfit: { seq: line.seq, problem: next.problem } };
    document = next.document;
    firstMissing ??= line.seq;
  }
  return { document, ...missingFrom(firstMissing) };
}

function missingFrom(seq: number | undefined): { readonly firstMissing?: number } {
  return seq === undefined ? {} : { firstMissing: seq };
}

function linkFor(line: WorkLine, document: Document): Link | undefined {
  const key = documentKey(document);
  return line.links[documentsOf(line).findIndex((name) => documentKey(name) === key)];
}

type FoldedLine =
  | { readonly ok: true; readonly document: Document }
  | { readonly ok: false; readonly problem: string };

function foldLine(document: Document, line: WorkLine, link: Link): FoldedLine {
  if ('adopt' in line) return takeEntries(document, line.adopt.entries, link.onto);
  if ('letGo' in line) return { ok: false, problem: 'it was given up' };
  const last = document.history.at(-1)?.hash ?? '';
  if (last !== link.onto) return { ok: false, problem: 'it was made on another state of the file' };
  const part = line.edit.parts.find((candidate) => documentKey(candidate.document) === documentKey(document));
  const applied = apply(document, line.edit, part?.changes ?? []);
  if (!applied.ok) return applied;
  if (applied.entry.hash !== link.makes)
    return { ok: false, problem: 'it does not give what it gave when it was saved' };
  return applied;
}

/**
 * A document with entries of another copy (or a merge) put after the entry `onto` (its hash; empty for the start). Ours
 * after that one may go only where the entries hold them, merged.
 */
function takeEntries(document: Document, entries: readonly Entry[], onto: string): FoldedLine {
  const kept = onto === '' ? 0 : document.history.findIndex((entry) => entry.hash === onto) + 1;
  const last = document.history.at(-1)?.hash;
  const cut = kept < document.history.length;
  if ((kept === 0 && onto !== '') || (cut && !heldBy(entries).has(last ?? '')))
    return { ok: false, problem: 'its entries do not follow on' };
  const history = document.history.slice(0, kept);
  let taken: Document = cut ? { ...document, history, tables: replay(history) } : document;
  for (const entry of entries) {
    if (entry.follows[0] !== taken.history.at(-1)?.hash)
      return { ok: false, problem: 'its entries do not follow on' };
    const applied = applyChanges(taken.tables, entry.changes.map(asChange));
    if (!applied.ok) return applied;
    taken = { ...taken, tables: applied.tables, history: [...taken.history, entry] };
  }
  return { ok: true, document: taken };
}

/** A document rebuilt from the journal alone: possible where the line that made it is still there. */
export function rebuild(
  name: { readonly kind: string; readonly id: string },
  lines: readonly WorkLine[],
): Document | undefined {
  const first = lines[0];
  const blank = emptyDocument(name);
  if (first === undefined || linkFor(first, blank)?.onto !== '') return undefined;
  const folded = foldOnto(blank, lines);
  return folded.misfit === undefined ? folded.document : undefined;
}
