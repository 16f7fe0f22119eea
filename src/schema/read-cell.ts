import type { Reader, Reading } from '../condition/evaluate.ts';
import { type Amount, type Cell, type PointEvent, qualifiedIn, sharesIn } from '../value/cell.ts';
import type { Cells } from '../value/row.ts';
import { type Field, fieldNamed, type LoggingSchema, scaleOf } from './logging-schema.ts';

/** What an amount counts as, in percent: a trace as the field says (0 where it says nothing). */
export function percentOf(amount: Amount, field: Field): number {
  if (amount !== 'trace') return amount;
  return 'traceCountsAsPercent' in field ? (field.traceCountsAsPercent ?? 0) : 0;
}

/** Reads the cells of one row for a condition. A field that is not in the row was not asked of it: unknown. */
export function readerOf(schema: LoggingSchema, cells: Cells): Reader {
  return (name, of) => {
    const field = fieldNamed(schema, name);
    const cell = cells[name];
    return field === undefined || cell === undefined
      ? { says: 'unknown' }
      : readCell(schema, field, cell, of);
  };
}

/**
 * What one cell says, as a whole or of one code. Levels of several codes read as the highest, percents as their sum. What more is said
 * of one code is beside its amount.
 */
export function readCell(schema: LoggingSchema, field: Field, cell: Cell, of?: string): Reading {
  const reading = readPlain(schema, field, cell, of);
  const qualities = of === undefined ? undefined : qualifiedIn(cell)[of];
  if (qualities === undefined || reading.says === 'none') return reading;
  return { ...reading, says: 'codes', codes: Object.values(qualities) };
}

function readPlain(schema: LoggingSchema, field: Field, cell: Cell, of?: string): Reading {
  if ('absent' in cell) return cell.absent === 'none' ? { says: 'none' } : { says: 'unknown' };
  if ('code' in cell) return readCode(cell, of);
  if ('level' in cell) {
    const code = scaleOf(schema, field)?.levels.find((each) => each.level === cell.level)?.code;
    return { says: 'level', number: cell.level, ...(code === undefined ? {} : { code }) };
  }
  if ('levels' in cell) return readLevels(cell.levels, of);
  if ('percents' in cell) return readPercents(cell.percents, field, of);
  if ('codes' in cell) return readCodes(Object.keys(cell.codes), of);
  if ('events' in cell) return readEvents(cell.events, of);
  if ('percent' in cell) return { says: 'number', number: percentOf(cell.percent, field) };
  if ('number' in cell) return { says: 'number', number: cell.number };
  if ('flag' in cell) return { says: 'codes', codes: [] };
  return { says: 'codes', codes: [cell.text] };
}

/** Codes without amounts: all of them, or the one that is asked. */
function readCodes(codes: readonly string[], of: string | undefined): Reading {
  const found = of === undefined ? codes : codes.filter((code) => code === of);
  return found.length === 0 ? { says: 'none' } : { says: 'codes', codes: found };
}

/** Events: all of them, or the one that is asked with what was measured of it. */
function readEvents(events: { readonly [code: string]: PointEvent }, of: string | undefined): Reading {
  const reading = readCodes(Object.keys(events), of);
  const number = of === undefined || !Object.hasOwn(events, of) ? undefined : events[of]?.number;
  return number === undefined || reading.says !== 'codes' ? reading : { ...reading, number };
}

/** A code field: which codes are there; of one code, its share in percent (the first takes what the others leave). */
function readCode(cell: Extract<Cell, { code: string }>, of: string | undefined): Reading {
  const shares = sharesIn(cell);
  if (of === undefined) return { says: 'codes', codes: [cell.code, ...shares.map(({ code }) => code)] };
  if (of === cell.code)
    return { says: 'number', number: shares.reduce((left, { percent }) => left - percent, 100) };
  const share = shares.find(({ code }) => code === of);
  return share === undefined ? { says: 'none' } : { says: 'number', number: share.percent };
}

/** Percents by code. One code is read alone, without going through the others: rules ask it of every row. */
function readPercents(
  percents: { readonly [code: string]: Amount },
  field: Field,
  of: string | undefined,
): Reading {
  if (of !== undefined) {
    const amount = Object.hasOwn(percents, of) ? percents[of] : undefined;
    return amount === undefined ? { says: 'none' } : { says: 'number', number: percentOf(amount, field) };
  }
  const sum = Object.values(percents).reduce<number>((all, amount) => all + percentOf(amount, field), 0);
  return { says: 'codes', codes: Object.keys(percents), number: sum };
}

function readLevels(levels: { readonly [code: string]: number }, of: string | undefined): Reading {
  if (of === undefined)
    return { says: 'codes', codes: Object.keys(levels), number: Math.max(...Object.values(levels)) };
  const level = Object.hasOwn(levels, of) ? levels[of] : undefined;
  return level === undefined ? { says: 'none' } : { says: 'number', number: level };
}
