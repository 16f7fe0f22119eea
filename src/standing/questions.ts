import type { Finding } from '../finding/finding.ts';
import { safeText } from '../finding/safe-text.ts';
import { QUESTION_FINDINGS } from '../hole/findings.ts';
import { headerOf } from '../hole/hole.ts';
import { formatInterval } from '../quantity/interval.ts';
import { localDate, localTime, parseStamp } from '../quantity/stamp.ts';
import type { Document, DocumentName, Entry, Id } from '../record/document.ts';
import { isObject, type Json, own, sameJson } from '../record/json.ts';
import { isSameAsked, questionsIn, type StoredQuestion, turned } from '../record/questions.ts';
import { type Path, writersOf } from '../record/written.ts';
import { fieldNamed, type LoggingSchema } from '../schema/logging-schema.ts';
import type { Cell } from '../value/cell.ts';
import type { Row } from '../value/row.ts';
import { cellText, nameWords, rowWords, valueWords } from './history-words.ts';
import { type LoggedTwice, rowsLoggedTwice } from './logged-twice.ts';
import { rivalOf, sharedInPart } from './rival-records.ts';
import { type RodTwice, rodsBesideEachOther, rodsRecordedTwice } from './rods-twice.ts';

/** How a cell is beside what a question says of it; `gone`: the thing that it is a cell of is not there any more. */
export type StandsNow = 'ours' | 'theirs' | 'changed' | 'gone';

/** An open question in words: what it is about, and what each copy says. */
export interface OpenQuestion {
  readonly document: DocumentName;
  readonly id: Id;
  readonly cell: string;
  /** The two by name: ours is what is there now. Where both are there they are first and second, the same in every copy. */
  readonly labels: readonly ['ours', 'theirs'] | readonly ['first', 'second'];
  readonly ours: string;
  readonly theirs: string;
  /** Who wrote each of the two and when; empty where no entry says. */
  readonly writers: readonly [string, string];
  readonly now: StandsNow;
  /** What is in the cell now. */
  readonly stands: string;
  /** Set where it is about two things of which one is enough: rows over the same metres, which can both be kept by splitting, or records of a rod. */
  readonly twice?: 'rows' | 'rod';
}

/**
 * The open questions of a document of any kind with their ids, oldest first; of several about one cell and the same two values the first.
 * Ours is the value that is in this copy, whichever way round the question is stored.
 */
export function openQuestions(document: Document): readonly (readonly [Id, StoredQuestion])[] {
  const open = questionsIn(document.tables).filter(([, question]) => question.state === 'open');
  return open
    .filter(([, each], index) => open.findIndex(([, other]) => isSameAsked(each, other)) === index)
    .map(([id, each]) => [id, standsNow(document, each) === 'theirs' ? turned(each) : each]);
}

/** The field of a question and the member of it: `cells.rock` is the member `rock` of the field `cells`. */
export function fieldAndMember(field: string): readonly [field: string, member?: string] {
  const dot = field.indexOf('.');
  return dot < 0 ? [field] : [field.slice(0, dot), field.slice(dot + 1)];
}

function pathOf(field: string): Path {
  const [name, member] = fieldAndMember(field);
  return member === undefined ? [name] : [name, member];
}

/** What is there now where a question asks; undefined where nothing does. */
export function standing(document: Document, question: StoredQuestion): Json | undefined {
  const thing = own(own(document.tables, question.table), question.thing);
  if (question.field === undefined || thing === undefined) return thing;
  const [field, member] = fieldAndMember(question.field);
  const value = own(thing, field);
  if (member === undefined) return value;
  return isObject(value) ? own(value, member) : undefined;
}

/** How the cell of a question stands now. */
export function standsNow(document: Document, question: StoredQuestion): StandsNow {
  const isThere = own(own(document.tables, question.table), question.thing) !== undefined;
  if (question.field !== undefined && !isThere) return 'gone';
  const now = standing(document, question) ?? null;
  if (sameJson(now, question.ours)) return 'ours';
  return sameJson(now, question.theirs) ? 'theirs' : 'changed';
}

/** The open questions of a document in the words of the log sheet: rows that stand over the same metres first, then rods recorded twice, then cells. */
export function questionWords(schema: LoggingSchema, document: Document): readonly OpenQuestion[] {
  const isHole = document.kind === 'hole';
  return [
    ...(isHole ? rowsLoggedTwice(document).map((pair) => twiceInWords(schema, document, pair)) : []),
    ...(isHole ? rodsRecordedTwice(document).map((pair) => rodTwiceInWords(document, pair)) : []),
    ...openQuestions(document).map(([id, question]) => inWords(schema, document, id, question)),
  ];
}

/** How many questions of a document are open. */
export function countOpen(document: Document): number {
  const twice =
    document.kind === 'hole' ? [...rowsLoggedTwice(document), ...rodsRecordedTwice(document)] : [];
  return twice.length + openQuestions(document).length;
}

/** Two rows over the same metres as a question. */
export function twiceInWords(schema: LoggingSchema, document: Document, pair: LoggedTwice): OpenQuestion {
  const said = ([, row]: LoggedTwice['first']): string => {
    const place = sameJson([row.fromMm, row.toMm], [pair.shared.fromMm, pair.shared.toMm])
      ? ''
      : `${formatInterval(row)}: `;
    return safeText(`${place}${rowWords(schema, row)}`);
  };
  const { kind, id } = document;
  const [one, other] = writersOf(
    document,
    [pair.first, pair.second].map(([row]) => ({ table: 'rows', id: row, value: {} })),
  );
  const [ours, theirs] = [said(pair.first), said(pair.second)];
  const cell = `${formatInterval(pair.shared)}, logged twice`;
  return {
    document: { kind, id },
    id: pair.id,
    cell,
    labels: ['first', 'second'],
    ours,
    theirs,
    writers: [writerWords(one), writerWords(other)],
    now: 'ours',
    stands: 'both',
    twice: 'rows',
  };
}

/** Two records of one rod as a question. */
export function rodTwiceInWords(hole: Document, { id, first, second }: RodTwice): OpenQuestion {
  const [one, other] = writersOf(
    hole,
    [first, second].map(([rod]) => ({ table: 'rods', id: rod, value: {} })),
  );
  const [ours, theirs] = rodsBesideEachOther(hole, first, second);
  return {
    document: { kind: hole.kind, id: hole.id },
    id,
    cell: `rod ${second[1].rod}, recorded twice`,
    labels: ['first', 'second'],
    ours: safeText(ours),
    theirs: safeText(theirs),
    writers: [writerWords(one), writerWords(other)],
    now: 'ours',
    stands: 'both',
    twice: 'rod',
  };
}

/** The two sides of a question, each with who wrote it and when: what tells two copies apart on either laptop. */
export function sidesOf({ ours, theirs, writers }: OpenQuestion): readonly [string, string] {
  const [one, other] = writers.map((writer) => (writer === '' ? '' : ` (${writer})`));
  return [`${ours}${one}`, `${theirs}${other}`];
}

function writerWords(entry: Entry | undefined): string {
  if (entry === undefined) return '';
  if (entry.outside === true) return 'edited outside offsider';
  const at = parseStamp(entry.at);
  return safeText(at === undefined ? entry.by : `${entry.by} ${localDate(at)} ${localTime(at)}`);
}

/** One question of a document in words. */
export function inWords(
  schema: LoggingSchema,
  document: Document,
  id: Id,
  question: StoredQuestion,
): OpenQuestion {
  const said = (value: Json | undefined) => safeText(saidOf(schema, question, value ?? null));
  const now = standsNow(document, question);
  const { table, thing, field } = question;
  const path = field === undefined ? {} : { path: pathOf(field) };
  const rival = rivalOf(document, question);
  const [ourWriter, theirWriter] = writersOf(document, [
    { table, id: thing, ...path, value: question.ours },
    { table, id: rival?.[0] ?? thing, ...path, value: question.theirs },
  ]);
  return {
    document: { kind: document.kind, id: document.id },
    id,
    cell: safeText(`${whereOf(document, question)}${fieldLabel(schema, question)}`),
    labels: ['ours', 'theirs'],
    ours: said(question.ours),
    theirs: said(question.theirs),
    writers: [writerWords(ourWriter), writerWords(theirWriter)],
    now,
    stands: now === 'gone' ? 'gone' : said(standing(document, question)),
  };
}

/** The open questions of a document as findings, placed by hole and row; of another document by its name. */
export function questionFindings(schema: LoggingSchema, document: Document): readonly Finding[] {
  return openQuestions(document).map(([id, question]) => {
    const words = inWords(schema, document, id, question);
    const { cell } = words;
    const [ours, theirs] = sidesOf(words);
    const interval = document.kind === 'hole' ? intervalOf(document, question) : undefined;
    const named = document.kind === 'hole' ? { hole: headerOf(document).name } : {};
    const thing = document.kind === 'hole' ? cell : `${document.kind} ${document.id}, ${cell}`;
    return QUESTION_FINDINGS.open.at(
      { ...named, ...(interval ?? { thing }) },
      {
        problem: `conflict between two copies: ${cell}: ours ${ours}, theirs ${theirs}. ${standsWords(words)}`,
        remedy: 'See which is right, then ;questions in the console or offsider questions says which holds.',
      },
    );
  });
}

function standsWords({ now, stands }: OpenQuestion): string {
  if (now === 'gone') return 'What it belongs to was taken out since';
  return now === 'changed' ? `Changed since: it is ${stands} now` : 'Ours is kept';
}

function whereOf(document: Document, question: StoredQuestion): string {
  const interval = intervalOf(document, question);
  if (interval !== undefined)
    return question.table === 'rows'
      ? formatInterval(interval)
      : `${nameWords(question.table)} ${formatInterval(interval)}`;
  return question.table === question.thing
    ? nameWords(question.table)
    : `${nameWords(question.table)} ${handleOf(document, question)}`;
}

/** The name by which a person knows a thing: its number, name, rod or tray; else its id. */
function handleOf(document: Document, question: StoredQuestion): string {
  const thing = thingOf(document, question);
  const named = ['number', 'name', 'rod', 'tray', 'code', 'depthMm', 'at'].find(
    (field) => thing !== undefined && own(thing, field) !== undefined,
  );
  return named === undefined ? question.thing : valueWords(named, own(thing, named));
}

/** The thing that a question is about: as it is, or as either copy had it where it is gone. */
function thingOf(document: Document, { table, thing, field, ours, theirs }: StoredQuestion) {
  const stands = own(own(document.tables, table), thing);
  if (stands !== undefined || field !== undefined) return stands;
  return [ours, theirs].find((each) => isObject(each)) as { readonly [name: string]: Json } | undefined;
}

function intervalOf(document: Document, question: StoredQuestion) {
  const thing = thingOf(document, question);
  const rival = rivalOf(document, question);
  const shared = thing === undefined || rival === undefined ? undefined : sharedInPart(thing, rival[1]);
  if (shared !== undefined) return shared;
  const [fromMm, toMm] = [own(thing, 'fromMm'), own(thing, 'toMm')];
  return typeof fromMm === 'number' && typeof toMm === 'number' ? { fromMm, toMm } : undefined;
}

/** Fields of a row that are no cell, in the words of the log sheet. */
const ROW_FIELDS: Readonly<Record<string, string>> = {
  fromMm: 'top of the row',
  toMm: 'bottom of the row',
  noReturn: 'no return',
  carried: 'carried from the row above',
  repeat: 'typed as the same as the row above',
  asked: 'marked ?',
};

function fieldLabel(schema: LoggingSchema, { table, field }: StoredQuestion): string {
  if (field === undefined) return table === 'rows' ? ', the whole row' : ', all of it';
  const [name, member] = fieldAndMember(field);
  if (member === undefined)
    return `, ${(table === 'rows' ? ROW_FIELDS[name] : undefined) ?? nameWords(name)}`;
  if (table === 'rows' && name === 'cells') return `, ${fieldNamed(schema, member)?.label ?? member}`;
  return `, ${nameWords(name)} ${nameWords(member)}`;
}

function saidOf(schema: LoggingSchema, { table, field }: StoredQuestion, value: Json): string {
  if (value === null) return field === undefined ? 'taken out' : 'nothing';
  if (field === undefined)
    return table === 'rows' && isRow(value) ? rowWords(schema, value) : valueWords('', value);
  const [name, member] = fieldAndMember(field);
  if (table === 'rows' && name === 'carried' && Array.isArray(value))
    return value.map((each) => fieldNamed(schema, String(each))?.label ?? String(each)).join(', ');
  if (table === 'rows' && name === 'cells' && member !== undefined && isObject(value))
    return cellText(schema, member, value as unknown as Cell);
  return valueWords(member ?? name, value);
}

function isRow(value: Json): value is Json & Row {
  return isObject(value) && isObject(own(value, 'cells'));
}
