import { documentFault } from '../files/document-file.ts';
import { foldLines } from '../files/fold.ts';
import type { WorkLine } from '../files/journal-line.ts';
import { HOLE_RECORDS } from '../hole/records.ts';
import { everyEntry, standingOf } from '../record/ancestry.ts';
import { chainFault, replay } from '../record/chain.ts';
import type { Deed, Document, Entry, Id } from '../record/document.ts';
import { emptyDocument } from '../record/document.ts';
import { identifierFault } from '../record/identifiers.ts';
import { sameJson } from '../record/json.ts';
import { merge, type Question } from '../record/merge.ts';
import { recordOutside } from '../record/outside.ts';
import { NO_RECORDS } from '../record/rivals.ts';

/** What came of holding another copy against ours. */
export type Outcome = 'new' | 'same' | 'older' | 'newer' | 'merged';

/** Another copy taken in: the document that comes of it, and its entries after the entry `onto` of ours. */
export type TakenIn =
  | {
      readonly ok: true;
      readonly outcome: Outcome;
      readonly document: Document;
      readonly entries: readonly Entry[];
      readonly onto: string;
      readonly questions: readonly Question[];
    }
  | { readonly ok: false; readonly problem: string };

/**
 * Holds another copy of a document against ours: a newer one is taken, an older one changes nothing, a diverged one is
 * merged. What was edited in it outside offsider becomes an entry first. Refused where its history does not hold, where
 * it is another document under the same name, and where what comes of it could not be kept in a file.
 */
export function takeIn(ours: Document | undefined, copy: Document, deed: (what: string) => Deed): TakenIn {
  const misnamed = identifierFault(copy.id);
  if (misnamed !== undefined) return { ok: false, problem: `"${copy.id}" can't be an id: ${misnamed}` };
  const edited = withOutside(copy, deed);
  if ('problem' in edited) return { ok: false, problem: edited.problem };
  const mine = ours ?? emptyDocument(copy);
  const recorded = asTakenBefore(mine, copy, edited);
  const standing = standingOf(mine, recorded);
  if (standing === 'unrelated')
    return { ok: false, problem: `it is another ${copy.kind} that goes by the name ${copy.id}` };
  if (standing === 'same' || standing === 'older')
    return { ok: true, outcome: standing, document: mine, entries: [], onto: '', questions: [] };
  const { document, questions } = merge(
    mine,
    recorded,
    deed('merged with another copy'),
    mine.kind === 'hole' ? HOLE_RECORDS : NO_RECORDS,
  );
  if (document === mine)
    return { ok: true, outcome: 'same', document: mine, entries: [], onto: '', questions: [] };
  const fault = documentFault(document, everyThing(document));
  if (fault !== undefined) return { ok: false, problem: fault };
  const shared = sharedStart(mine.history, document.history);
  return {
    ok: true,
    outcome: standing === 'diverged' ? 'merged' : ours === undefined ? 'new' : 'newer',
    document,
    entries: document.history.slice(shared),
    onto: mine.history[shared - 1]?.hash ?? '',
    questions,
  };
}

/**
 * Takes in a copy of a document whose own file is gone: it becomes the document, with what the journal still holds of it folded
 * on. Refused where that does not follow on from this copy: saved edits would be lost.
 */
export function takeInMissing(
  lines: readonly WorkLine[],
  copy: Document,
  deed: (what: string) => Deed,
): TakenIn {
  const fresh = takeIn(undefined, copy, deed);
  if (!fresh.ok) return fresh;
  const folded = foldLines(fresh.document, lines);
  if (folded.misfit !== undefined)
    return {
      ok: false,
      problem: `the journal holds saved edits that do not follow on from this copy: ${folded.misfit.problem}`,
    };
  const whole = folded.copy === undefined ? fresh : takeIn(folded.document, folded.copy, deed);
  if (!whole.ok) return whole;
  const document = folded.copy === undefined ? folded.document : whole.document;
  return { ...whole, outcome: 'new', document, entries: document.history, onto: '' };
}

function withOutside(copy: Document, deed: (what: string) => Deed): Document | { readonly problem: string } {
  const fault = chainFault(copy.history);
  if (fault !== undefined)
    return { problem: `entry ${fault.index + 1} of its history has been changed: ${fault.problem}` };
  try {
    const isEmptied = Object.keys(copy.tables).length === 0 && Object.keys(replay(copy.history)).length > 0;
    if (isEmptied)
      return { problem: 'its tables are empty and its history is not: something took all out of it' };
    return recordOutside(copy, deed('edited outside offsider'));
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
}

/** A copy edited outside that was taken in before, with the entry made then: the same edit is not a second one, and asks nothing again. */
function asTakenBefore(ours: Document, copy: Document, edited: Document): Document {
  const made = edited.history.at(-1);
  if (made === undefined || edited.history.length === copy.history.length) return edited;
  const before = everyEntry(ours.history).find(
    (entry) =>
      entry.outside === true &&
      sameJson(entry.follows, made.follows) &&
      sameJson(entry.changes, made.changes),
  );
  return before === undefined ? edited : { ...edited, history: [...copy.history, before] };
}

function sharedStart(a: readonly Entry[], b: readonly Entry[]): number {
  const parted = a.findIndex((entry, index) => entry.hash !== b[index]?.hash);
  return parted < 0 ? a.length : parted;
}

function everyThing(document: Document): readonly (readonly [table: string, id: Id])[] {
  return Object.entries(document.tables).flatMap(([table, things]) =>
    Object.keys(things).map((id) => [table, id] as const),
  );
}
