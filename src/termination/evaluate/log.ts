import type { Condition } from '../../condition/condition.ts';
import { evaluate, type Reader, type Reading } from '../../condition/evaluate.ts';
import { type Tri, triAll, triAny, triNot } from '../../quantity/tri.ts';
import { byReference } from '../../record/by-reference.ts';
import { type Field, fieldNamed, type LoggingSchema } from '../../schema/logging-schema.ts';
import { readCell } from '../../schema/read-cell.ts';
import type { Row } from '../../value/row.ts';
import { deepestMm, type Situation } from './situation.ts';
import { type PieceState, type Stretch, stretchesOf } from './stretch.ts';

/** The log laid end to end from its start to the foot of the hole, and its fields as columns. Piece by piece: */
type Log = {
  readonly feetMm: readonly number[];
  /** Undefined where nothing is logged. */
  readonly rows: readonly (Row | undefined)[];
  /** The fields, or single codes of them, that were asked for so far. */
  readonly columns: Map<string, Column>;
};

/** What each piece says of a field. Metres mostly say what others said: a condition is asked once of each different reading. */
type Column = { readonly readings: readonly Reading[]; readonly saidBy: readonly number[] };

/**
 * Logs by the situation they were laid out from. Rules mostly ask the same few fields; laid out and read once for all of them, 20
 * rules cost a few passes over the rows. A situation is never changed, so what was read from it stays right.
 */
const LAID_OUT = new WeakMap<Situation, Log>();

/** Whether a second rock counts for what a row is, or the first alone. */
type Rocks = 'every rock' | 'main rock';

/** The stretches of the hole where a condition holds. A metre not logged or without return can't be told. */
export function logWhere(
  situation: Situation,
  condition: Condition,
  rocks: Rocks = 'every rock',
): readonly Stretch[] {
  const log = logOf(situation);
  const test = testOf(situation, log, condition, rocks);
  return stretchesOf(situation.header.logFromMm, log.feetMm, (piece): PieceState => {
    const row = log.rows[piece];
    const state = row === undefined ? 'not logged' : row.noReturn ? 'cannot tell' : test(piece);
    return state !== 'yes' && heardAt(situation, log, piece, condition) ? 'yes' : state;
  });
}

/** True where what waits for its row in a piece makes the condition hold by itself: of anything else there it says nothing. */
function heardAt(situation: Situation, { feetMm }: Log, piece: number, condition: Condition): boolean {
  const { schema, waiting = [], header } = situation;
  if (waiting.length === 0) return false;
  const fromMm = piece === 0 ? header.logFromMm : (feetMm[piece - 1] ?? 0);
  const footMm = feetMm[piece] ?? 0;
  const isLast = piece === feetMm.length - 1;
  const here = waiting.filter(({ atMm }) => atMm >= fromMm && (atMm < footMm || (isLast && atMm === footMm)));
  if (here.length === 0) return false;
  const read: Reader = (name, of) => {
    const field = fieldNamed(schema, name);
    const events = Object.fromEntries(
      here.filter((each) => each.field === name).map(({ code, field: _, ...event }) => [code, event]),
    );
    const isKnown = of === undefined ? Object.keys(events).length > 0 : Object.hasOwn(events, of);
    return field === undefined || !isKnown ? { says: 'unknown' } : readCell(schema, field, { events }, of);
  };
  return evaluate(condition, read) === 'yes';
}

/** The stretches of the hole by a test of its rows, those in doubt among them. A metre without a row can't be told. */
export function logByRow(situation: Situation, test: (row: Row) => Tri): readonly Stretch[] {
  const { feetMm, rows } = logOf(situation);
  return stretchesOf(situation.header.logFromMm, feetMm, (piece): PieceState => {
    const row = rows[piece];
    return row === undefined ? 'not logged' : test(row);
  });
}

/**
 * True of a row with an open question about a field; without a field, about the row as a whole. A question about pyrite leaves the
 * rock alone; a row that doesn't say which fields are in question is in question in all of them.
 */
export function isAsked({ asked, askedOf }: Row, field?: string): boolean {
  if (asked === undefined || asked.length === 0) return false;
  return askedOf === undefined || (field !== undefined && askedOf.includes(field));
}

function logOf(situation: Situation): Log {
  const known = LAID_OUT.get(situation);
  if (known !== undefined) return known;
  const log = layOut(situation);
  LAID_OUT.set(situation, log);
  return log;
}

function layOut(situation: Situation): Log {
  const { rows: down, header, waiting = [] } = situation;
  const feetMm: number[] = [];
  const rows: (Row | undefined)[] = [];
  let atMm: number = header.logFromMm;
  const lay = (toMm: number, row: Row | undefined): void => {
    if (toMm <= atMm) return;
    feetMm.push(toMm);
    rows.push(row);
    atMm = toMm;
  };
  // A metre that an event waits for is a piece of its own.
  const layUnlogged = (toMm: number): void => {
    for (const topMm of tops) {
      lay(Math.min(topMm, toMm), undefined);
      if (topMm + header.intervalMm > atMm) lay(Math.min(topMm + header.intervalMm, toMm), undefined);
    }
    lay(toMm, undefined);
  };
  const topOf = (mm: number): number =>
    header.logFromMm + Math.floor((mm - header.logFromMm) / header.intervalMm) * header.intervalMm;
  const tops = waiting.map((each) => topOf(each.atMm)).sort((a, b) => a - b);
  for (const row of down) {
    layUnlogged(row.fromMm);
    lay(row.toMm, row);
  }
  layUnlogged(deepestMm(situation));
  return { feetMm, rows, columns: new Map() };
}

/** A condition as a test of a piece of the log. */
function testOf(situation: Situation, log: Log, condition: Condition, rocks: Rocks): (piece: number) => Tri {
  const each = (parts: readonly Condition[]) => parts.map((part) => testOf(situation, log, part, rocks));
  if ('all' in condition) {
    const tests = each(condition.all);
    return (piece) => triAll(tests.map((test) => test(piece)));
  }
  if ('any' in condition) {
    const tests = each(condition.any);
    return (piece) => triAny(tests.map((test) => test(piece)));
  }
  if ('not' in condition) {
    const test = testOf(situation, log, condition.not, rocks);
    return (piece) => triNot(test(piece));
  }
  const { readings, saidBy } = columnOf(situation, log, condition.field, condition.of);
  const holds = readings.map((reading) => evaluate(condition, () => mainOf(reading, rocks)));
  return (piece) => holds[saidBy[piece]!]!;
}

/** Of a code field, the first code alone where only the main rock counts. */
function mainOf(reading: Reading, rocks: Rocks): Reading {
  const isCodeField = reading.says === 'codes' && reading.number === undefined;
  return isCodeField && rocks === 'main rock' ? { ...reading, codes: reading.codes.slice(0, 1) } : reading;
}

/** One field of the log as a column. */
function columnOf(situation: Situation, log: Log, name: string, of: string | undefined): Column {
  const key = JSON.stringify([name, of]);
  const known = log.columns.get(key);
  if (known !== undefined) return known;
  const column = readColumn(situation, log, name, of, key);
  log.columns.set(key, column);
  return column;
}

/** What a row says, and what sets it apart from other readings. */
type Said = { readonly reading: Reading; readonly saying: string | number };

const UNKNOWN: Said = { reading: { says: 'unknown' }, saying: 'unknown' };

/** What a row said of each field and code that was asked before: all rows are read again at each that is logged. */
const saidBefore = byReference((_schema: LoggingSchema, _row: Row) => new Map<string, Said>());

function readColumn(
  { schema }: Situation,
  { rows }: Log,
  name: string,
  of: string | undefined,
  key: string,
): Column {
  const field = fieldNamed(schema, name);
  const readings: Reading[] = [];
  const indexes = new Map<string | number, number>();
  const said = (row: Row | undefined): Said => {
    if (field === undefined || row === undefined) return UNKNOWN;
    const before = saidBefore(schema, row);
    const known = before.get(key);
    if (known !== undefined) return known;
    const reading = readField(schema, row, field, of);
    const found = { reading, saying: sayingOf(reading) };
    before.set(key, found);
    return found;
  };
  const saidBy = rows.map((row) => {
    const { reading, saying } = said(row);
    const known = indexes.get(saying);
    if (known !== undefined) return known;
    indexes.set(saying, readings.length);
    return readings.push(reading) - 1;
  });
  return { readings, saidBy };
}

/**
 * What a row says of a field: unknown where a question about it is open or no one looked, and nothing at all where the field is not
 * asked of such a row (the habit of sulphides in a rock that has none).
 */
export function readField(schema: LoggingSchema, row: Row, field: Field, of?: string): Reading {
  if (isAsked(row, field.name)) return { says: 'unknown' };
  const cell = row.cells[field.name];
  if (cell !== undefined) return readCell(schema, field, cell, of);
  const applies =
    field.onlyWhen === undefined
      ? 'yes'
      : evaluate(field.onlyWhen, (name, part) => {
          const other = fieldNamed(schema, name);
          return other === undefined ? { says: 'unknown' } : readField(schema, row, other, part);
        });
  return { says: applies === 'no' ? 'does not apply' : 'unknown' };
}

/** Different for readings that say different things. */
function sayingOf(reading: Reading): string | number {
  if (reading.says === 'number') return reading.number;
  if (reading.says === 'level') return `level ${reading.number} ${reading.code}`;
  return reading.says === 'codes' ? JSON.stringify([reading.codes, reading.number]) : reading.says;
}
