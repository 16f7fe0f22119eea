import type { Condition } from '../condition/condition.ts';
import { evaluate, type Reader, type Reading } from '../condition/evaluate.ts';
import { type Tri, triAll, triAny, triNot } from '../quantity/tri.ts';
import { fieldNamed } from '../schema/logging-schema.ts';
import { readCell } from '../schema/read-cell.ts';
import type { Row } from '../value/row.ts';
import type { Situation } from './situation.ts';
import { type Stretch, stretchesOf } from './stretch.ts';

/** The log laid end to end from its start to the logged head, and its fields as columns. Piece by piece: */
type Log = {
  readonly feetMm: readonly number[];
  /** Undefined where nothing is logged. */
  readonly rows: readonly (Row | undefined)[];
  /** No row, no return, or a question that is open: whatever is asked of it can't be told. */
  readonly inDoubt: readonly boolean[];
  /** What each piece says of a field, or of one code of it; filled as fields are asked for. */
  readonly columns: Map<string, readonly Reading[]>;
};

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
  let atMm: number = header.logFromMm;
  const lay = (toMm: number, row: Row | undefined): void => {
    if (toMm <= atMm) return;
    feetMm.push(toMm);
    rows.push(row);
    atMm = toMm;
  };
  for (const row of down) {
    lay(Math.min(row.fromMm, loggedMm), undefined);
    lay(Math.min(row.toMm, loggedMm), row);
  }
  lay(loggedMm, undefined);
  const inDoubt = rows.map((row) => row === undefined || row.noReturn === true || isAsked(row));
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
  const column = columnOf(situation, log, condition.field, condition.of);
  let at = 0;
  const read: Reader = () => column[at]!;
  return (piece) => {
    at = piece;
    return evaluate(condition, read);
  };
}

const UNKNOWN: Reading = { says: 'unknown' };

/** One field of the log as a column. One that is not in the schema, or not in a row, is unknown there. */
function columnOf(situation: Situation, log: Log, name: string, of: string | undefined): readonly Reading[] {
  const key = JSON.stringify([name, of]);
  const known = log.columns.get(key);
  if (known !== undefined) return known;
  const field = fieldNamed(situation.schema, name);
  const column = log.rows.map((row) => {
    const cell = row?.cells[name];
    return field === undefined || cell === undefined ? UNKNOWN : readCell(situation.schema, field, cell, of);
  });
  log.columns.set(key, column);
  return column;
}
