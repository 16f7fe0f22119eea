import { type Field, type LoggingSchema, listOf, scaleOf } from '../schema/logging-schema.ts';
import { type Amount, type Cell, sameCell } from '../value/cell.ts';
import { writeAmount } from './read-amount.ts';
import { readNamed } from './read-named.ts';
import type { Saying } from './said.ts';

/** A cell said by its field, as short as can be: `weathering'3`, `note''wet at top'`. */
export function writeNamedCell(schema: LoggingSchema, field: Field, cell: Cell): string {
  return shortest(schema, field, valuesFor(schema, field, cell), '', { cell });
}

/** One code with its amount said by its field: `alteration'chl'2`. */
export function writeNamedAmount(schema: LoggingSchema, field: Field, code: string, amount: Amount): string {
  const behind = field.kind === 'codes' && amount === 1 ? '' : `'${writeAmount(amount)}`;
  return shortest(schema, field, spellings(code), behind, { code, amount });
}

/** One event with what was measured of it said by its field: `events'wst'2`. */
export function writeNamedEvent(
  schema: LoggingSchema,
  field: Field,
  code: string,
  number: number | undefined,
): string {
  const behind = number === undefined ? '' : `'${writeAmount(number)}`;
  const meant = { event: code, ...(number === undefined ? {} : { number }) };
  return shortest(schema, field, spellings(code), behind, meant);
}

/**
 * The shortest spelling that reads back as meant. A value that can't be logged again (a retired code, a level off the
 * scale) is spelled all the same: read back, it is refused with the reason.
 */
function shortest(
  schema: LoggingSchema,
  field: Field,
  values: readonly string[],
  behind: string,
  meant: Saying,
): string {
  const texts = values
    .flatMap((value) =>
      isWord(value) ? [value, quoted(schema, field, value)] : [quoted(schema, field, value)],
    )
    .map((value) => `${field.name}'${value}${behind}`)
    .sort((a, b) => a.length - b.length);
  return texts.find((text) => readsAs(schema, field, text, meant)) ?? texts[0] ?? `${field.name}'nr`;
}

function readsAs(schema: LoggingSchema, field: Field, text: string, meant: Saying): boolean {
  const read = readNamed(schema, text, 0, field.name);
  if ('kind' in read || read.end !== text.length) return false;
  if ('code' in meant)
    return 'code' in read.says && read.says.code === meant.code && read.says.amount === meant.amount;
  if ('event' in meant)
    return 'event' in read.says && read.says.event === meant.event && read.says.number === meant.number;
  return 'cell' in read.says && 'cell' in meant && sameCell(read.says.cell, meant.cell);
}

function isWord(value: string): boolean {
  return /^[^ '/=]+$/.test(value);
}

function quoted(schema: LoggingSchema, field: Field, value: string): string {
  return listOf(schema, field) === undefined ? `'${value.replaceAll("'", "''")}'` : `'${value}'`;
}

/** Lower case first: no Shift where it can be helped. */
function spellings(code: string): readonly string[] {
  return [code.toLowerCase(), code];
}

function valuesFor(schema: LoggingSchema, field: Field, cell: Cell): readonly string[] {
  if ('absent' in cell) return [cell.absent === 'none' ? '0' : 'nr'];
  if ('code' in cell) return spellings(cell.code);
  if ('level' in cell) {
    const code = scaleOf(schema, field)?.levels.find((each) => each.level === cell.level)?.code;
    return [`${cell.level}`, ...(code === undefined ? [] : spellings(code))];
  }
  if ('percent' in cell) return [writeAmount(cell.percent)];
  if ('number' in cell) return [cell.number === 0 && field.canBeNone ? '.0' : shortNumber(cell.number)];
  if ('flag' in cell) return ['1'];
  return 'text' in cell ? [cell.text] : [];
}

/** Without the 0 before the point: `.5`, `-.5`. */
function shortNumber(number: number): string {
  return String(number).replace(/^(-?)0\./, '$1.');
}
