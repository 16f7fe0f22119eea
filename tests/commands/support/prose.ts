import { fieldApplies } from '../../../src/schema/applies.ts';
import {
  codeOf,
  type Field,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  scaleOf,
} from '../../../src/schema/logging-schema.ts';
import {
  type Amount,
  type Amounts,
  amountsIn,
  type Cell,
  cellOfAmounts,
  codeWith,
  NONE,
  qualifiedIn,
  sameCell,
  sharesIn,
  withQualified,
} from '../../../src/value/cell.ts';
import type { Cells } from '../../../src/value/row.ts';

/*
 * A reader of geologists' prose, for the tests alone and apart from the entry line. It knows the words of a schema and a little
 * plain English, turns each statement into what a row should hold, and hands back those that it can't place.
 */

/** Some metres in prose: what their rows should hold, as said here or above and not taken back since. */
type Told = {
  readonly fromM: number;
  readonly toM: number;
  readonly cells: Cells;
  readonly statements: readonly string[];
  readonly notPlaced: readonly string[];
};

/** English for words of the schemas. */
const SAME: readonly (readonly [RegExp, string])[] = [
  [/\bhalf a per ?cent\b/g, '0.5 %'],
  [/\b(a trace of|traces of|a trace)\b/g, 'trace'],
  [/\bin patches\b/g, 'patchy'],
  [/\bgrained\b/g, 'grain size'],
  [/\bmagnetic\b(?! suscept)/g, 'magnetism'],
  [/\b1? ?litres? a second\b/g, '1 l/s'],
  [/\bweakly\b/g, 'weak'],
  [/\bmoderately (?!weathered)/g, 'moderate '],
  [/\bstrongly\b/g, 'strong'],
];
const FILLER = new Set(
  'longer a an the of it its is are in on to into now still as well again also here down up all some rock this that by only alone other about wall dyke back'.split(
    ' ',
  ),
);
const NEGATIONS = new Set(['no', 'not', 'neither', 'nor', 'gone', 'without']);
const SEPARATORS = new Set([',', ';', ':', 'and', 'with', 'but', 'nor']);

type Meaning =
  | { readonly is: 'code'; readonly field: Field; readonly code: string }
  | { readonly is: 'field'; readonly field: Field }
  | { readonly is: 'quality'; readonly list: string; readonly code: string }
  | { readonly is: 'level'; readonly of: readonly { readonly field: Field; readonly level: number }[] }
  | { readonly is: 'percent'; readonly amount: Amount }
  | { readonly is: 'number'; readonly number: number }
  | { readonly is: 'depth'; readonly atMm: number }
  | { readonly is: 'not' };
type Clause = { readonly text: string; readonly means: readonly Meaning[]; readonly unknown: boolean };
type Subject = { readonly field: Field; readonly code?: string };
type Vocabulary = ReadonlyMap<string, Meaning>;

/** What is written of a hole, interval by interval: `12–13 m: Basalt, fresh. Pyrite 2 %.` Lines without depths are passed over. */
export function readNarrative(schema: LoggingSchema, text: string): readonly Told[] {
  const vocabulary = vocabularyOf(schema);
  let above: Cells = {};
  return [...text.matchAll(/^(\d+)–(\d+) m: (.*)$/gm)].map(([, from, to, prose = '']) => {
    const read = readProse(schema, vocabulary, prose, above);
    // Below metres that no one saw it goes on from the last ones that were seen.
    above = read.unseen ? above : read.cells;
    return { ...read, fromM: Number(from), toM: Number(to) };
  });
}

/** What words of the program say, read by the same reader. */
export function readWords(schema: LoggingSchema, pieces: readonly string[]): Omit<Told, 'fromM' | 'toM'> {
  return readProse(schema, vocabularyOf(schema), pieces.join('. '), {});
}

/** Statements in a row: each changes what the ones above it left. */
function readProse(schema: LoggingSchema, vocabulary: Vocabulary, prose: string, above: Cells) {
  const statements: string[] = [];
  const notPlaced: string[] = [];
  const said = new Map<string, Cell>();
  for (const sentence of prose.split(/\.(?:\s+|$)/)) {
    let subject: Subject | undefined;
    for (const clause of clausesOf(vocabulary, sentence)) {
      statements.push(clause.text);
      const own = clause.unknown ? undefined : subjectOf(clause, subject);
      const before =
        own === undefined ? undefined : (said.get(own.field.name) ?? carried(schema, own.field, above, said));
      const cell = own === undefined ? undefined : changed(schema, own, before, clause);
      if (own === undefined || cell === undefined) notPlaced.push(clause.text);
      else said.set(own.field.name, cell);
      subject = own ?? subject;
    }
  }
  return { ...rowOf(schema, above, said), statements, notPlaced };
}

/** The row that statements make: what was said, then what stays from above, where the field applies. */
function rowOf(
  schema: LoggingSchema,
  above: Cells,
  said: ReadonlyMap<string, Cell>,
): { readonly cells: Cells; readonly unseen: boolean } {
  const unseen = [...said].some(([name, cell]) => {
    const field = schema.fields.find((each) => each.name === name);
    const code = field !== undefined && 'code' in cell ? codeOf(schema, field, cell.code) : undefined;
    return code?.noChips === true || code?.caution?.kind === 'void';
  });
  const cells: { [field: string]: Cell } = {};
  for (const field of schema.fields) {
    const cell = said.get(field.name) ?? (unseen ? undefined : carried(schema, field, above, said));
    if (cell !== undefined && fieldApplies(schema, cells, field)) cells[field.name] = cell;
  }
  return { cells, unseen };
}

/** What stays of a field from above: nothing that lies at one place, nor what belongs to a rock or a zone that ended; none stays none. */
function carried(
  { fields }: LoggingSchema,
  { name, carry, notAcross = [] }: Field,
  above: Cells,
  said: ReadonlyMap<string, Cell>,
): Cell | undefined {
  const hasChanged = (barrier: string): boolean =>
    said.has(barrier) && !sameCell(said.get(barrier), above[barrier]);
  const ends = fields.some((field) => notAcross.includes(field.name) && hasChanged(field.name));
  const cell = above[name];
  const isNone = cell !== undefined && 'absent' in cell;
  return carry && (isNone || !ends) ? cell : undefined;
}

/** What a clause is about: what it names, the field of a level that only one has, or what the clause before it was about. */
function subjectOf({ means }: Clause, before: Subject | undefined): Subject | undefined {
  const code = means.findLast((each) => each.is === 'code');
  const field = means.find((each) => each.is === 'field');
  if (code?.is === 'code') return { field: code.field, code: code.code };
  if (field?.is === 'field') return { field: field.field };
  const level = means.find((each) => each.is === 'level');
  if (level?.is === 'level' && level.of.length === 1 && level.of[0]?.field.kind === 'level')
    return { field: level.of[0].field };
  return before;
}

/** The cell of a field after a clause, or undefined where the clause says nothing of it that can be made out. */
function changed(
  schema: LoggingSchema,
  { field, code }: Subject,
  before: Cell | undefined,
  { means }: Clause,
): Cell | undefined {
  const isNot = means.some((each) => each.is === 'not');
  if (field.kind === 'flag') return isNot ? NONE : { flag: true };
  if (field.kind === 'level') {
    const level = levelIn(means, field);
    return isNot ? NONE : level === undefined ? undefined : { level };
  }
  if (field.kind === 'percent') {
    const percent = means.find((each) => each.is === 'percent');
    return isNot ? NONE : percent?.is === 'percent' ? { percent: percent.amount } : undefined;
  }
  if (code === undefined) return isNot ? NONE : undefined;
  const kept = before !== undefined && !('absent' in before) ? before : undefined;
  if (field.kind === 'events') return eventIn(kept, code, means);
  // No rock and no zone is not a thing that a row can hold.
  if (field.kind === 'code') return isNot ? undefined : codeIn(schema, field, kept, code, means);
  if (field.kind !== 'codes' && field.kind !== 'levels' && field.kind !== 'percents') return undefined;
  const { [code]: was, ...others } = amountsIn(kept);
  const amount = isNot ? undefined : (amountIn(means, field) ?? was);
  if (!isNot && amount === undefined) return undefined;
  const amounts: Amounts = amount === undefined ? others : { ...amountsIn(kept), [code]: amount };
  if (Object.keys(amounts).length === 0) return NONE;
  const qualified = kept === undefined ? {} : qualifiedIn(kept);
  return withQualified(cellOfAmounts(field.kind, amounts), {
    ...qualified,
    [code]: { ...qualified[code], ...qualitiesIn(means) },
  });
}

/** A rock, a phase, a colour: with a percent it is beside the first; of two hues the last one is the colour. */
function codeIn(
  schema: LoggingSchema,
  field: Field,
  before: Cell | undefined,
  code: string,
  means: readonly Meaning[],
): Cell | undefined {
  const percent = means.find((each) => each.is === 'percent');
  if (percent?.is === 'percent') {
    if (before === undefined || !('code' in before) || typeof percent.amount !== 'number') return undefined;
    const others = sharesIn(before).filter((share) => share.code !== code);
    return codeWith(before.code, [...others, { code, percent: percent.amount }]);
  }
  const named = means.flatMap((each) => (each.is === 'code' && each.field === field ? [each.code] : []));
  const list = listOf(schema, field)?.name ?? '';
  const second = named.length === 2 && named[0] !== undefined ? { [list]: named[0] } : {};
  const qualities = { ...qualitiesIn(means), ...second };
  return withQualified({ code }, { [code]: qualities });
}

function eventIn(before: Cell | undefined, code: string, means: readonly Meaning[]): Cell {
  const events = before !== undefined && 'events' in before ? before.events : {};
  const depth = means.find((each) => each.is === 'depth');
  const number = means.find((each) => each.is === 'number');
  return {
    events: {
      ...events,
      [code]: {
        ...events[code],
        ...(depth?.is === 'depth' ? { atMm: depth.atMm } : {}),
        ...(number?.is === 'number' ? { number: number.number } : {}),
      },
    },
  };
}

function levelIn(means: readonly Meaning[], field: Field): number | undefined {
  for (const each of means) {
    const level = each.is === 'level' ? each.of.find((of) => of.field === field)?.level : undefined;
    if (level !== undefined) return level;
    if (each.is === 'number') return each.number;
  }
  return undefined;
}

function amountIn(means: readonly Meaning[], field: Field): Amount | undefined {
  if (field.kind === 'codes') return 1;
  if (field.kind === 'levels') return levelIn(means, field);
  const percent = means.find((each) => each.is === 'percent');
  return percent?.is === 'percent' ? percent.amount : undefined;
}

function qualitiesIn(means: readonly Meaning[]): { readonly [list: string]: string } {
  return Object.fromEntries(means.flatMap((each) => (each.is === 'quality' ? [[each.list, each.code]] : [])));
}

/** Every phrase that a schema gives a meaning to, in small letters. What is in front of a comma will do where it is plain. */
function vocabularyOf(schema: LoggingSchema): Vocabulary {
  const words = new Map<string, Meaning>();
  const short = new Map<string, Meaning | undefined>();
  const add = (label: string, meaning: Meaning): void => {
    const phrase = label.toLowerCase();
    if (!words.has(phrase)) words.set(phrase, meaning);
    const [head, tail] = phrase.split(/, | \(/);
    if (head === undefined || tail === undefined) return;
    short.set(head, short.has(head) ? undefined : meaning);
    short.set(`${tail} ${head}`, meaning);
  };
  for (const field of schema.fields) {
    for (const { level, label } of scaleOf(schema, field)?.levels ?? []) {
      const known = words.get(label.toLowerCase());
      const of = known?.is === 'level' ? known.of : [];
      words.set(label.toLowerCase(), { is: 'level', of: [...of, { field, level }] });
    }
    for (const { code, label } of listOf(schema, field)?.codes ?? []) add(label, { is: 'code', field, code });
    for (const { list } of qualifiersOf(field).filter(
      ({ list }) => !('list' in field && field.list === list),
    ))
      for (const { code, label } of schema.lists[list]?.codes ?? [])
        add(label, { is: 'quality', list, code });
    add(field.label, { is: 'field', field });
    add(field.label.split(' ').at(-1) ?? '', { is: 'field', field });
  }
  for (const [phrase, meaning] of short)
    if (meaning !== undefined && !words.has(phrase)) words.set(phrase, meaning);
  return words;
}

/** A sentence in clauses, each of the words between two commas, an "and" or a "with", that no phrase of the schema spans. */
function clausesOf(vocabulary: Vocabulary, sentence: string): readonly Clause[] {
  const plain = SAME.reduce((text, [from, to]) => text.replace(from, to), sentence.toLowerCase());
  const words = plain.match(/\d+(?:\.\d+)?|[\p{L}–’/-]*\p{L}|[,;:%()]/gu) ?? [];
  const clauses: Clause[] = [];
  let [text, means, unknown]: [string[], Meaning[], boolean] = [[], [], false];
  const end = (): void => {
    if (text.some((word) => /\p{L}|\d/u.test(word)) && (means.length > 0 || unknown))
      clauses.push({ text: text.join(' '), means, unknown });
    [text, means, unknown] = [[], [], false];
  };
  for (let at = 0; at < words.length; ) {
    const { meaning, length, isSplit } = phraseAt(vocabulary, words, at);
    if (isSplit) end();
    else text.push(words.slice(at, at + length).join(' '));
    if (meaning === 'unknown') unknown = true;
    else means.push(...meaning);
    at += length;
  }
  end();
  return clauses;
}

type Phrase = {
  readonly meaning: readonly Meaning[] | 'unknown';
  readonly length: number;
  readonly isSplit?: true;
};

/** The longest phrase from a word on. */
function phraseAt(vocabulary: Vocabulary, words: readonly string[], at: number): Phrase {
  for (let length = Math.min(10, words.length - at); length > 0; length -= 1) {
    const phrase = words
      .slice(at, at + length)
      .join(' ')
      .replaceAll(' ,', ',');
    const meaning = vocabulary.get(phrase);
    if (meaning !== undefined) return { meaning: [meaning], length };
  }
  const [word = '', next = '', afterNext] = words.slice(at);
  if (word === 'at' && afterNext === 'm')
    return { meaning: [{ is: 'depth', atMm: Number(next) * 1000 }], length: 3 };
  if (/^\d/.test(word))
    return next === '%'
      ? { meaning: [{ is: 'percent', amount: Number(word) }], length: 2 }
      : { meaning: [{ is: 'number', number: Number(word) }], length: /^(l\/s|g|mm)$/.test(next) ? 2 : 1 };
  if (word === 'trace') return { meaning: [{ is: 'percent', amount: 'trace' }], length: 1 };
  const negation: readonly Meaning[] = NEGATIONS.has(word) ? [{ is: 'not' }] : [];
  if (SEPARATORS.has(word)) return { meaning: negation, length: 1, isSplit: true };
  if (negation.length > 0 || FILLER.has(word) || '()'.includes(word)) return { meaning: negation, length: 1 };
  const parts = word.split('-');
  const hues = parts.flatMap((part) => vocabulary.get(part) ?? []);
  return parts.length > 1 && hues.length === parts.length
    ? { meaning: hues, length: 1 }
    : { meaning: 'unknown', length: 1 };
}
