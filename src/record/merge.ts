import { bareEntriesBeyond, heldBy, isMerge, standingOf } from './ancestry.ts';
import { applyChanges, deedOf } from './apply.ts';
import type { Change, Deed, Document, Id, Tables, Thing } from './document.ts';
import { sealed } from './hash.ts';
import { isObject, type Json, type JsonObject, own, sameJson, setOwn } from './json.ts';
import {
  isSameAsked,
  isSettled,
  QUESTIONS,
  questionId,
  questionsIn,
  type StoredQuestion,
  settledAs,
  storedQuestion,
} from './questions.ts';
import { inOneOrder, NO_RECORDS, type Records, type Rival } from './rivals.ts';
import {
  cutsReopened,
  keptWhole,
  namedThings,
  type Path,
  settledAway,
  unseenCells,
  type WasDecided,
  type WasWritten,
  withSettled,
} from './written.ts';

/** A cell that both copies changed, each to something else. `undefined` in JSON is "not there". */
export interface Question {
  readonly table: string;
  readonly id: Id;
  /** The field (`depthMm`, or `cells.rock` for a member of one), or undefined where one copy took the thing out and the other changed it. */
  readonly field?: string;
  readonly ours: Json | undefined;
  readonly theirs: Json | undefined;
}

/**
 * Merges another copy into ours, by id and field. A newer copy is taken as it is, one that holds nothing new changes nothing.
 * Of a diverged one, what only one copy changed is taken; where both changed the same cell differently ours stays and a
 * question says what theirs was, so nothing is lost: their entries are kept in the merge entry. Each question becomes a thing of
 * the table `questions`. What was edited outside must be in both histories already (see recordOutside). Unrelated copies merge
 * too: that they should is the caller's decision. `records` says which records of one place both copies may have made, each under an id of
 * its own: of those the later one counts in both copies, and where they contradict each other that is a question.
 */
export function merge(
  ours: Document,
  theirs: Document,
  deed: Deed,
  records: Records = NO_RECORDS,
): { readonly document: Document; readonly questions: readonly Question[] } {
  const standing = standingOf(ours, theirs);
  if (standing === 'newer') return { document: theirs, questions: [] };
  if (standing === 'same' || standing === 'older') return { document: ours, questions: [] };
  const oursHeld = heldBy(ours.history);
  const theirsHeld = heldBy(theirs.history);
  const [ourCuts, theirCuts] = [
    cutsReopened(ours, theirsHeld, settledAway(theirs, oursHeld)),
    cutsReopened(theirs, oursHeld, settledAway(ours, theirsHeld)),
  ];
  const found = reconcile(
    sideOf(changed(ours, ourCuts), theirsHeld),
    sideOf(changed(theirs, theirCuts), oursHeld),
  );
  const { changes, rivals } = inOneOrder(ours, theirs, [...ourCuts, ...found.changes], records);
  const questions = [...found.questions, ...rivals.map(asQuestion)];
  const unasked = questions.filter((question) => !isOpenAlready(question, ours.tables, theirs.tables));
  const taken = applyChanges(ours.tables, changes);
  const closed = taken.ok ? settledElsewhere(taken.tables, ours.tables, theirs.tables) : [];
  const all = [...changes, ...closed, ...asking(unasked, ours.tables, theirs.tables)];
  const incoming = bareEntriesBeyond(theirs.history, oursHeld);
  // Merges alone, and nothing to take: the two have met already, and one entry more would only be passed to and fro.
  if (all.length === 0 && incoming.every(isMerge)) return { document: ours, questions: [] };
  const applied = applyChanges(ours.tables, all);
  if (!applied.ok) throw new Error(`a merge must fit the copy it was made for: ${applied.problem}`);
  const follows = [...ours.history.slice(-1), ...theirs.history.slice(-1)].map((entry) => entry.hash);
  const entry = sealed({ ...deedOf(deed), changes: applied.done, follows, incoming });
  return {
    document: { ...ours, tables: applied.tables, history: [...ours.history, entry] },
    questions: unasked,
  };
}

/** The copy with changes that its history does not tell: what it would be had it not made others. */
function changed(copy: Document, changes: readonly Change[]): Document {
  const applied = applyChanges(copy.tables, changes);
  if (!applied.ok) throw new Error(`a cut must be one that can be taken back: ${applied.problem}`);
  return { ...copy, tables: applied.tables };
}

function asQuestion({ table, id, field, later, earlier }: Rival): Question {
  return { table, id, field, ours: later, theirs: earlier };
}

function asking(questions: readonly Question[], ours: Tables, theirs: Tables): readonly Change[] {
  const isTaken = (id: Id): boolean =>
    [ours, theirs].some((tables) => own(own(tables, QUESTIONS), id) !== undefined);
  return questions.map((question) => {
    const thing = asStored(question);
    return { put: [QUESTIONS, questionId(thing, isTaken)], thing };
  });
}

function asStored({ table, id, field, ours, theirs }: Question): Thing & StoredQuestion {
  const about = { table, thing: id, ...(field === undefined ? {} : { field }) };
  return storedQuestion(about, [ours ?? null, theirs ?? null]);
}

/** True where one copy has a question about the same two values of the cell that is open, and the other copy has not settled it. */
function isOpenAlready(question: Question, ours: Tables, theirs: Tables): boolean {
  const asked = asStored(question);
  const settled = new Set(
    [...questionsIn(ours), ...questionsIn(theirs)]
      .filter(([, each]) => each.state === 'settled')
      .map(([id]) => id),
  );
  return [...questionsIn(ours), ...questionsIn(theirs)].some(
    ([id, each]) => each.state === 'open' && !settled.has(id) && isSameAsked(each, asked),
  );
}

/** Settles what only one copy asked and is open, where the other copy settled the same question under an id of its own that the first does not have as settled. */
function settledElsewhere(merged: Tables, ours: Tables, theirs: Tables): readonly Change[] {
  const has = (tables: Tables, id: Id) => own(own(tables, QUESTIONS), id);
  return questionsIn(merged).flatMap(([id, open]): readonly Change[] => {
    if (open.state !== 'open') return [];
    const [asking, other] = has(ours, id) === undefined ? [theirs, ours] : [ours, theirs];
    if (has(other, id) !== undefined) return [];
    const [, settled] =
      questionsIn(other).find(([twin, each]) => {
        const known = has(asking, twin);
        return (
          each.settled !== undefined && isSameAsked(each, open) && !(known !== undefined && isSettled(known))
        );
      }) ?? [];
    if (settled?.settled === undefined) return [];
    return [{ patch: [QUESTIONS, id], set: settledAs(open, settled.settled, settled) }];
  });
}

function sideOf(document: Document, held: ReadonlySet<string>): Side {
  const { tables } = document;
  const wrote = unseenCells(document, held);
  return {
    document,
    wrote: withSettled(tables, wrote),
    kept: keptWhole(tables, wrote),
    settledAway: settledAway(document, held),
  };
}

/** A copy, and what it wrote that the other copy has not seen. */
interface Side {
  readonly document: Document;
  readonly wrote: WasWritten;
  /** Things that it kept by settling, and things that it took out for another. */
  readonly kept: WasDecided;
  readonly settledAway: WasDecided;
}

interface Reconciled {
  readonly changes: Change[];
  readonly questions: Question[];
}

/** Where two copies differ, only one may have written: hers stands. Both, or neither (each settled it its own way): ask. */
function reconcile(ours: Side, theirs: Side): Reconciled {
  const out: Reconciled = { changes: [], questions: [] };
  for (const table of union(ours.document.tables, theirs.document.tables)) {
    const ourTable = own(ours.document.tables, table) ?? {};
    const theirTable = own(theirs.document.tables, table) ?? {};
    for (const id of union(ourTable, theirTable)) {
      const our = own(ourTable, id);
      const their = own(theirTable, id);
      if (sameJson(our, their)) continue;
      if (table === QUESTIONS) {
        out.changes.push(
          ...reconcileQuestion(id, our, their, whose(ours.wrote(table, id), theirs.wrote(table, id))),
        );
        continue;
      }
      if (our !== undefined && their !== undefined) {
        reconcileFields([table, id], our, their, ours.wrote, theirs.wrote, out);
        continue;
      }
      const standing = whose(ours.wrote(table, id), theirs.wrote(table, id));
      if (
        standing === 'ask' &&
        keptAndSettledAway(table, id, our === undefined ? [theirs, ours] : [ours, theirs])
      ) {
        if (their !== undefined) out.changes.push({ put: [table, id], thing: their });
      } else if (standing === 'ask') out.questions.push({ table, id, ours: our, theirs: their });
      else if (standing === 'theirs')
        out.changes.push(their === undefined ? { remove: [table, id] } : { put: [table, id], thing: their });
    }
  }
  return out;
}

/**
 * True of a thing that one copy kept, of two, and the other took out for the other one. It stays, as does the other one by the same rule seen
 * from there: the two are there twice again, which is asked about. Without this both would be gone.
 */
function keptAndSettledAway(table: string, id: Id, [has, lacks]: readonly [Side, Side]): boolean {
  return has.kept(table, id) && lacks.settledAway(table, id);
}

/**
 * A question is never asked about itself: one that is not here is taken, one that was settled (or opened again by undo) on one side is so on
 * the other. Two who settled it each their own way are asked about the cell.
 */
function reconcileQuestion(
  id: Id,
  our: Thing | undefined,
  their: Thing | undefined,
  standing: 'ours' | 'theirs' | 'ask',
): readonly Change[] {
  if (their === undefined || standing === 'ours') return [];
  if (our === undefined) return [{ put: [QUESTIONS, id], thing: their }];
  if (standing === 'ask' && (isSettled(our) || !isSettled(their))) return [];
  const { settled, state } = their;
  if (state === undefined) return [];
  return settled === undefined
    ? [{ patch: [QUESTIONS, id], set: { state }, unset: ['settled'] }]
    : [{ patch: [QUESTIONS, id], set: { state, settled } }];
}

function reconcileFields(
  [table, id]: readonly [string, Id],
  our: Thing,
  their: Thing,
  weWrote: WasWritten,
  theyWrote: WasWritten,
  out: Reconciled,
): void {
  const set: Record<string, Json> = {};
  const unset: string[] = [];
  const wrote = (path: Path) => whose(weWrote(table, id, path), theyWrote(table, id, path));
  const settle = (path: Path, ours: Json | undefined, theirs: Json | undefined): Json | undefined => {
    if (sameJson(ours, theirs)) return ours;
    const standing = wrote(path);
    if (standing === 'ask') out.questions.push({ table, id, field: path.join('.'), ours, theirs });
    return standing === 'theirs' ? theirs : ours;
  };
  for (const field of union(our, their)) {
    const ours = own(our, field);
    const theirs = own(their, field);
    const both = isObject(ours) && isObject(theirs);
    const settled = both ? settleMembers(field, ours, theirs, wrote, settle) : settle([field], ours, theirs);
    if (sameJson(settled, ours)) continue;
    if (settled === undefined) unset.push(field);
    else setOwn(set, field, settled);
  }
  if (Object.keys(set).length === 0 && unset.length === 0) return;
  out.changes.push({
    patch: [table, id],
    ...(Object.keys(set).length === 0 ? {} : { set }),
    ...(unset.length === 0 ? {} : { unset }),
  });
}

/** An object of which each member is settled by itself: a row's cells, one by one. */
function settleMembers(
  field: string,
  ours: JsonObject,
  theirs: JsonObject,
  wrote: (path: Path) => 'ours' | 'theirs' | 'ask',
  settle: (path: Path, ours: Json | undefined, theirs: Json | undefined) => Json | undefined,
): JsonObject {
  const settled: Record<string, Json> = {};
  for (const member of union(ours, theirs)) {
    const [our, their] = [own(ours, member), own(theirs, member)];
    const value = bothThings([field, member], our, their, wrote) ?? settle([field, member], our, their);
    if (value !== undefined) setOwn(settled, member, value);
  }
  return settled;
}

/**
 * What two copies hold where both hold things by name: each thing is theirs or ours. Undefined where they hold something else, where both
 * wrote one of the things, each differently, or where nothing would be left: that is asked about as one cell.
 */
function bothThings(
  path: Path,
  ours: Json | undefined,
  theirs: Json | undefined,
  wrote: (path: Path) => 'ours' | 'theirs' | 'ask',
): Json | undefined {
  const [our, their] = [namedThings(ours), namedThings(theirs)];
  if (our === undefined || their === undefined || our.holder !== their.holder) return undefined;
  const things: Record<string, Json> = {};
  for (const name of union(our.things, their.things)) {
    const pair = { ours: own(our.things, name), theirs: own(their.things, name) };
    const whoseIs = sameJson(pair.ours, pair.theirs) ? 'ours' : wrote([...path, our.holder, name]);
    if (whoseIs === 'ask') return undefined;
    const thing = pair[whoseIs];
    if (thing !== undefined) setOwn(things, name, thing);
  }
  return Object.keys(things).length === 0 ? undefined : { [our.holder]: things };
}

function whose(weWrote: boolean, theyWrote: boolean): 'ours' | 'theirs' | 'ask' {
  if (weWrote === theyWrote) return 'ask';
  return weWrote ? 'ours' : 'theirs';
}

function union(a: object, b: object): ReadonlySet<string> {
  return new Set([...Object.keys(a), ...Object.keys(b)]);
}
