import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Made } from '../hole/commands/made.ts';
import { QUESTION_FINDINGS, REFUSALS } from '../hole/findings.ts';
import { headerOf, holeThings } from '../hole/hole.ts';
import { HOLE_RECORDS } from '../hole/records.ts';
import type { Project } from '../project/project.ts';
import { formatInterval, type Interval, within } from '../quantity/interval.ts';
import { applyChanges } from '../record/apply.ts';
import type { Change, Document, Id, Thing } from '../record/document.ts';
import { isObject, type Json, own, sameJson } from '../record/json.ts';
import {
  isSameAsked,
  keptBySettling,
  QUESTIONS,
  questionsIn,
  type StoredQuestion,
  settledAs,
} from '../record/questions.ts';
import { checkRow } from '../schema/check/row-checks.ts';
import { projectForHole } from '../standing/hole-schema.ts';
import { type LoggedTwice, rowsLoggedTwice } from '../standing/logged-twice.ts';
import {
  fieldAndMember,
  inWords,
  openQuestions,
  sidesOf,
  standsNow,
  twiceInWords,
} from '../standing/questions.ts';
import { rivalOf, sharedInPart } from '../standing/rival-records.ts';
import { rodsRecordedTwice } from '../standing/rods-twice.ts';
import { settledRodTwice } from './settle-rod.ts';

/**
 * What a question is settled with. `ours` leaves the cell as it is, whatever that is by now. Of two rows or two records of a rod both are
 * there, so it is `first` or `second`; `both` keeps two rows over the same metres by splitting them, and is for those alone.
 */
export type Chosen = 'ours' | 'theirs' | 'first' | 'second' | 'both';

/**
 * An open question of a document settled, as one edit: the cell takes theirs or stays, and the question, with every other that asks the same
 * two values of that cell, is settled. Theirs is refused where the cell was changed since the merge, where its thing is gone, and where the row
 * would not fit its schema or the rows beside it. Of two records of a rod one is taken out; `documents` say which of its bags were sent.
 */
export function settleQuestion(
  project: Project,
  document: Document,
  question: Id,
  chosen: Chosen,
  newId: () => Id,
  documents: Iterable<Document> = [document],
): Result<Made> {
  const isHole = document.kind === 'hole';
  const rows = isHole ? rowsLoggedTwice(document).find(({ id }) => id === question) : undefined;
  if (rows !== undefined)
    return isCellChoice(chosen)
      ? refused(notACell(document))
      : ok(settledTwice(project, document, rows, chosen, newId));
  if (chosen === 'both') return refused(notTwoRows(document));
  const rod = isHole ? rodsRecordedTwice(document).find(({ id }) => id === question) : undefined;
  if (rod !== undefined)
    return isCellChoice(chosen)
      ? refused(notACell(document))
      : ok(settledRodTwice(document, rod, chosen, documents));
  const asked = openQuestions(document).find(([id]) => id === question)?.[1];
  if (asked === undefined) return refused(notOpen(document));
  if (!isCellChoice(chosen)) return refused(notTwice(document));
  const { schema } = document.kind === 'hole' ? projectForHole(project, document) : project;
  const words = inWords(schema, document, question, asked);
  const now = standsNow(document, asked);
  const settled = settledChanges(document, asked, chosen);
  const out = givesWay(document, asked, chosen, newId);
  if (chosen === 'ours')
    return ok({ what: `settled ${words.cell}: kept ${words.stands}`, changes: [...out, ...settled] });
  if (now === 'gone') return refused(goneSince(document, words.cell));
  if (now === 'changed') return refused(changedSince(document, words));
  const taken = now === 'theirs' ? [] : out.length > 0 ? out : takeTheirs(document, asked, newId);
  const changes = [...taken, ...settled];
  const unfit = rowUnfit(project, document, asked, changes);
  if (unfit !== undefined) return refused(unfit);
  return ok({ what: `settled ${words.cell}: theirs taken, ${words.stands} → ${words.theirs}`, changes });
}

function isCellChoice(chosen: Chosen): chosen is 'ours' | 'theirs' {
  return chosen === 'ours' || chosen === 'theirs';
}

/** Two rows over the same metres: one is taken out, or both are cut so that neither covers the other. */
function settledTwice(
  project: Project,
  document: Document,
  pair: LoggedTwice,
  chosen: 'first' | 'second' | 'both',
  newId: () => Id,
): Made {
  const { schema } = projectForHole(project, document);
  const words = twiceInWords(schema, document, pair);
  const { cell } = words;
  const [first, second] = sidesOf(words);
  if (chosen === 'both')
    return {
      what: `settled ${cell}: both kept, split`,
      changes: [
        ...splitRows(pair.first, pair.second, newId),
        ...keptBySettling(document.tables, [
          ['rows', pair.first[0]],
          ['rows', pair.second[0]],
        ]),
      ],
    };
  const [stays, out] = chosen === 'first' ? [pair.first, pair.second] : [pair.second, pair.first];
  const [kept, taken] = chosen === 'first' ? [first, second] : [second, first];
  return {
    what: `settled ${cell}: kept ${kept}; taken out ${taken}`,
    changes: [{ remove: ['rows', out[0]] }, ...keptBySettling(document.tables, [['rows', stays[0]]])],
  };
}

/**
 * Cuts two rows that cover the same metres. The row inside another keeps its metres and the outer one gives way above and below it; else each
 * gives up half of what they share, in whole centimetres.
 */
function splitRows(
  first: LoggedTwice['first'],
  second: LoggedTwice['second'],
  newId: () => Id,
): readonly Change[] {
  const at = (id: Id, fromMm: number, toMm: number): Change => ({
    patch: ['rows', id],
    set: { fromMm, toMm },
  });
  const same = sameJson([first[1].fromMm, first[1].toMm], [second[1].fromMm, second[1].toMm]);
  const [inner, outer] = within(first[1], second[1]) ? [first, second] : [second, first];
  if (!same && within(inner[1], outer[1])) {
    const above = inner[1].fromMm > outer[1].fromMm;
    const below = outer[1].toMm > inner[1].toMm;
    const rest: Thing = { ...outer[1], fromMm: inner[1].toMm, toMm: outer[1].toMm } as unknown as Thing;
    if (!above) return [at(outer[0], inner[1].toMm, outer[1].toMm)];
    const cut = at(outer[0], outer[1].fromMm, inner[1].fromMm);
    return below ? [cut, { put: ['rows', newId()], thing: rest }] : [cut];
  }
  const [upper, lower] = first[1].fromMm <= second[1].fromMm ? [first, second] : [second, first];
  const halfway = Math.round((lower[1].fromMm + Math.min(upper[1].toMm, lower[1].toMm)) / 20) * 10;
  const cutMm = Math.min(Math.max(halfway, lower[1].fromMm + 1), upper[1].toMm - 1);
  return [at(upper[0], upper[1].fromMm, cutMm), at(lower[0], cutMm, lower[1].toMm)];
}

function settledChanges(
  document: Document,
  asked: StoredQuestion,
  chosen: 'ours' | 'theirs',
): readonly Change[] {
  return questionsIn(document.tables)
    .filter(([, each]) => each.state === 'open' && isSameAsked(each, asked))
    .map(([id, each]): Change => ({ patch: [QUESTIONS, id], set: settledAs(each, chosen, asked) }));
}

/** The change that makes a cell, or a whole thing, what the other copy had. */
function takeTheirs(document: Document, asked: StoredQuestion, newId: () => Id): readonly Change[] {
  const { table, thing, field, theirs } = asked;
  if (field === undefined)
    return [isObject(theirs) ? { put: [table, thing], thing: theirs } : { remove: [table, thing] }];
  const [name, member] = fieldAndMember(field);
  const rival = rivalOf(document, asked);
  const stands = own(own(document.tables, table), thing);
  const shared = rival === undefined || stands === undefined ? undefined : sharedInPart(stands, rival[1]);
  // Of metres that two records share in part only those are said again, by a record of their own.
  if (shared !== undefined)
    return [
      { put: [table, newId()], thing: { ...sharedFields(rival?.[1] ?? {}, name), ...shared } as Thing },
    ];
  // A decision is one thing with its depth and its reason: the one chosen counts as the last one.
  if (rival !== undefined && HOLE_RECORDS.latestAlone.has(table))
    return [{ remove: [table, rival[0]] }, { put: [table, rival[0]], thing: rival[1] }];
  if (member === undefined) return [cellSet(table, thing, name, theirs)];
  const held = own(own(own(document.tables, table), thing), name);
  const { [member]: _, ...others } = isObject(held) ? held : {};
  const members = theirs === null ? others : { ...others, [member]: theirs };
  return [cellSet(table, thing, name, members)];
}

/**
 * What a record loses that counts whatever a later one says: a cavity settled as solid, metres settled as sampled. It is taken out of the metres that
 * the two share and stands on the others; nothing where the question is of another kind.
 */
function givesWay(
  document: Document,
  asked: StoredQuestion,
  chosen: 'ours' | 'theirs',
  newId: () => Id,
): readonly Change[] {
  const { table, thing, field = '' } = asked;
  const rival = rivalOf(document, asked);
  const stands = own(own(document.tables, table), thing);
  const [wins, loses] = chosen === 'ours' ? [asked.ours, asked.theirs] : [asked.theirs, asked.ours];
  const isCavity = table === 'feltByDriller' && field === 'felt' && loses === 'cavity';
  const isUnsampled = table === 'stream' && field === 'unsampled' && wins === null;
  if (rival === undefined || stands === undefined || !(isCavity || isUnsampled)) return [];
  const [[id, out], other] = chosen === 'ours' ? [rival, stands] : [[thing, stands] as const, rival[1]];
  const [from, to] = [out, other].map((each) => each as unknown as Interval) as [Interval, Interval];
  const { [field]: _, fromMm: _from, toMm: _to, ...rest } = out;
  const pieces: readonly (readonly [number, number, Thing])[] = [
    [from.fromMm, Math.min(to.fromMm, from.toMm), out],
    ...(isUnsampled && Object.keys(rest).length > 0
      ? [[Math.max(from.fromMm, to.fromMm), Math.min(from.toMm, to.toMm), rest] as const]
      : []),
    [Math.max(to.toMm, from.fromMm), from.toMm, out],
  ];
  return [
    { remove: [table, id] },
    ...pieces.flatMap(([fromMm, toMm, record]): readonly Change[] =>
      fromMm < toMm ? [{ put: [table, newId()], thing: { ...record, fromMm, toMm } }] : [],
    ),
  ];
}

/** What a record of part of the metres takes over of a whole one: the value asked about, and who said it where that belongs to it. */
function sharedFields(record: Thing, field: string): Thing {
  return Object.fromEntries(
    Object.entries(record).filter(([name]) => [field, 'driller', 'at', 'by'].includes(name)),
  );
}

function cellSet(table: string, thing: Id, name: string, value: Json): Change {
  return value === null
    ? { patch: [table, thing], unset: [name] }
    : { patch: [table, thing], set: { [name]: value } };
}

/** Why the row of a question would not fit once it is settled: the first fault of its own that it does not have now, or a row that it would overlap. */
function rowUnfit(
  project: Project,
  document: Document,
  { table, thing }: StoredQuestion,
  changes: readonly Change[],
): Finding | undefined {
  if (table !== 'rows' || document.kind !== 'hole') return undefined;
  const applied = applyChanges(document.tables, changes);
  if (!applied.ok) return unfit(document, applied.problem);
  const after = holeThings({ ...document, tables: applied.tables }, 'rows');
  const row = after.find(([id]) => id === thing)?.[1];
  if (row === undefined) return undefined;
  const { schema } = projectForHole(project, document);
  const before = holeThings(document, 'rows').find(([id]) => id === thing)?.[1];
  const known = new Set(before === undefined ? [] : checkRow(schema, before).map((each) => each.problem));
  const fault = checkRow(schema, row).find((each) => each.severity === 'fault' && !known.has(each.problem));
  if (fault !== undefined) return unfit(document, `${formatInterval(row)}: ${fault.problem}`);
  const over = after.find(([id, each]) => id !== thing && each.fromMm < row.toMm && row.fromMm < each.toMm);
  return over === undefined
    ? undefined
    : unfit(document, `${formatInterval(row)} would cover metres of the row ${formatInterval(over[1])}`);
}

const placeOf = (document: Document) =>
  document.kind === 'hole' ? { hole: headerOf(document).name } : { thing: `${document.kind} ${document.id}` };

const notTwoRows = (document: Document) =>
  QUESTION_FINDINGS.unfit.at(placeOf(document), {
    problem: 'only two rows over the same metres can both be kept',
    remedy: 'Here one of the two is right: choose it, as they are listed.',
  });

/** Ours and theirs mean one thing on one laptop and another on the other: of two things that both are there nothing says which is whose. */
const notACell = (document: Document) =>
  QUESTION_FINDINGS.unfit.at(placeOf(document), {
    problem: 'both are in the hole, so neither is ours or theirs',
    remedy: 'Keep the first or the second, as they are listed, with who wrote each and when.',
  });

const notTwice = (document: Document) =>
  QUESTION_FINDINGS.unfit.at(placeOf(document), {
    problem: 'this question is about one value, so there is no first or second',
    remedy: 'Keep ours, which is there now, or take theirs.',
  });

const notOpen = (document: Document) =>
  REFUSALS.notThere.at(placeOf(document), {
    problem: 'this question is not open any more',
    remedy: 'Look at the list again: it shows what is open.',
  });

const goneSince = (document: Document, cell: string) =>
  REFUSALS.notThere.at(placeOf(document), {
    problem: `${cell}: what it belongs to was taken out since`,
    remedy: 'Settle it with ours, which leaves it out; or undo the removal first.',
  });

const changedSince = (
  document: Document,
  { cell, stands, theirs }: { readonly cell: string; readonly stands: string; readonly theirs: string },
) =>
  QUESTION_FINDINGS.changed.at(placeOf(document), {
    problem: `${cell} was changed since the merge: it is ${stands} now, theirs is ${theirs}`,
    remedy:
      'Look again. Ours keeps what is there now; for theirs, amend it by hand, then settle it with ours.',
  });

const unfit = (document: Document, problem: string) =>
  QUESTION_FINDINGS.unfit.at(placeOf(document), {
    problem,
    remedy: 'Keep ours, or first amend what is in the way and then take theirs.',
  });
