import type { Condition } from '../../condition/condition.ts';
import { evaluate, type Reading } from '../../condition/evaluate.ts';
import { type Tri, triAll, triAny, triNot } from '../../quantity/tri.ts';
import { fieldNamed } from '../../schema/logging-schema.ts';
import { readCell } from '../../schema/read-cell.ts';
import type { Row } from '../../value/row.ts';
import type { Situation } from './situation.ts';
import { type Stretch, stretchesOf } from './stretch.ts';

/** The log laid end to end from its start to the logged head, and its fields as columns. Piece by piece: */
type Log = {
  readonly feetMm: readonly number[];
  /** Undefined where nothing is logged. */
  readonly rows: readonly (Row | undefined)[];
  /** No row, no return, or a question that is open: whatever is asked of it can't be told. */
  readonly inDoubt: readonly boolean[];
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

/** The stretches of the log where a condition holds. A metre in doubt can't be told. */
export function logWhere(situation: Situation, condition: Condition): readonly Stretch[] {
  const log = logOf(situation);
  const test = testOf(situation, log, condition);
  return stretchesOf(situation.header.logFromMm, log.feetMm, (piece) =>
    log.inDoubt[piece] ? 'cannot tell' : test(piece),
  );
}

/** The stretches of the log by a test of its rows, those in doubt among them. A metre without a row can't be told. */
export function logByRow(situation: Situation, test: (row: Row) => Tri): readonly Stretch[] {
  const { feetMm, rows } = logOf(situation);
  return stretchesOf(situation.header.logFromMm, feetMm, (piece) => {
    const row = rows[piece];
    return row === undefined ? 'cannot tell' : test(row);
  });
}

/** True of a row with a question that nobody has settled. */
export function isAsked(row: Row): boolean {
  return row.asked !== undefined && row.asked.length > 0;
}

function logOf(situation: Situation): Log {
  const known = LAID_OUT.get(situation);
  if (known !== undefined) return known;
  const log = layOut(situation);
  LAID_OUT.set(situation, log);
  return log;
}

function layOut({ rows: down, header, loggedMm }: Situation): Log {
  const feetMm: number[] = [];
  const rows: (Row | undefined)[] = [];
  const inDoubt: boolean[] = [];
  let atMm: number = header.logFromMm;
  const lay = (toMm: number, row: Row | undefined): void => {
    if (toMm <= atMm) return;
    feetMm.push(toMm);
    rows.push(row);
    inDoubt.push(row === undefined || row.noReturn === true || isAsked(row));
    atMm = toMm;
  };
  for (const row of down) {
    lay(Math.min(row.fromMm, loggedMm), undefined);
    lay(Math.min(row.toMm, loggedMm), row);
  }
  lay(loggedMm, undefined);
  return { feetMm, rows, inDoubt, columns: new Map() };
}

/** A condition as a test of a piece of the log. */
function testOf(situation: Situation, log: Log, condition: Condition): (piece: number) => Tri {
  const each = (parts: readonly Condition[]) => parts.map((part) => testOf(situation, log, part));
  if ('all' in condition) {
    const tests = each(condition.all);
    return (piece) => triAll(tests.map((test) => test(piece)));
  }
  if ('any' in condition) {
    const tests = each(condition.any);
    return (piece) => triAny(tests.map((test) => test(piece)));
  }
  if ('not' in condition) {
    const test = testOf(situation, log, condition.not);
    return (piece) => triNot(test(piece));
  }
  const { readings, saidBy } = columnOf(situation, log, condition.field, condition.of);
  const holds = readings.map((reading) => evaluate(condition, () => reading));
  return (piece) => holds[saidBy[piece]!]!;
}

/** One field of the log as a column. One that is not in the schema, or not in a row, is unknown there. */
function columnOf(situation: Situation, log: Log, name: string, of: string | undefined): Column {
  const key = JSON.stringify([name, of]);
  const known = log.columns.get(key);
  if (known !== undefined) return known;
  const column = readColumn(situation, log, name, of);
  log.columns.set(key, column);
  return column;
}

function readColumn({ schema }: Situation, { rows }: Log, name: string, of: string | undefined): Column {
  const field = fieldNamed(schema, name);
  const readings: Reading[] = [];
  const indexes = new Map<string | number, number>();
  const saidBy = rows.map((row) => {
    const cell = row?.cells[name];
    const reading: Reading =
      field === undefined || cell === undefined ? { says: 'unknown' } : readCell(schema, field, cell, of);
    const key = sayingOf(reading);
    const known = indexes.get(key);
    if (known !== undefined) return known;
    indexes.set(key, readings.length);
    return readings.push(reading) - 1;
  });
  return { readings, saidBy };
}

/** Different for readings that say different things. */
function sayingOf(reading: Reading): string | number {
  if (reading.says === 'number') return reading.number;
  if (reading.says === 'level') return `level ${reading.number} ${reading.code}`;
  return reading.says === 'codes' ? JSON.stringify([reading.codes, reading.number]) : reading.says;
}
