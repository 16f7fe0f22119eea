import { breaksCarry } from '../schema/cautions.ts';
import { type RowSaid, sameObservation } from '../value/row.ts';
import { type Way, type Written, waysToSay } from './field-items.ts';
import { type EntryContext, parseLine } from './parse.ts';
import { NO_RETURN } from './typing-index.ts';

/**
 * The shortest line that says a row where it is, with `=` where it would be asked: `parseLine` of it is the row
 * again, for every row that can be observed. A row that can't be logged again (it holds a retired code) is written as
 * near as can be, and is refused with the reason when it is typed.
 */
export function writeLine(row: RowSaid, context: EntryContext): string {
  const remark = row.remark === undefined ? '' : `/${row.remark}`;
  if (row.noReturn) return `${NO_RETURN}${remark}`;
  return `${shortestOf(saidLines(row, context))}${remark}`;
}

function saidLines(row: RowSaid, context: EntryContext): readonly string[] {
  const unseen = breaksCarry(context.schema, row);
  const waysByField = context.schema.fields.flatMap((field) => {
    const cell = row.cells[field.name];
    return cell === undefined ? [] : [waysToSay({ ...context, unseen, cells: row.cells }, field, cell)];
  });
  const lines = combinations(waysByField).map((items) => finish(items, context));
  return lines.includes('') ? fullLines(row, context) : lines;
}

/** A row without anything above it, all of it as unsaid fields are: one field has to be said aloud. */
function fullLines(row: RowSaid, context: EntryContext): readonly string[] {
  return context.schema.fields
    .flatMap((field) => {
      const cell = row.cells[field.name];
      return cell === undefined
        ? []
        : waysToSay({ ...context, cells: row.cells }, field, cell, true).map((way) => finish(way, context));
    })
    .filter((line) => {
      const read = parseLine(line, context);
      return read.kind === 'row' && sameObservation(read.row, row);
    });
}

/** One way of each field, in every combination: nearly always there is one only. */
function combinations(waysByField: readonly (readonly Way[])[]): readonly Way[] {
  return waysByField.reduce<readonly Way[]>(
    (lines, ways) => lines.flatMap((line) => ways.map((way) => [...line, ...way])),
    [[]],
  );
}

function shortestOf(lines: readonly string[]): string {
  return lines.reduce((best, line) => (line.length < best.length ? line : best), lines[0] ?? '');
}

/** Items as one line, with the fewest spaces and what has to be insisted on. Nothing to say is `.` below a row, else nothing. */
function finish(items: readonly Written[], context: EntryContext): string {
  if (items.length === 0 && context.above === undefined) return '';
  const plain = join(items, new Set());
  const read = parseLine(plain.line, context);
  if (read.kind !== 'row' || read.asks.length === 0) return plain.line;
  if (plain.line === '.') return '.=';
  if (read.asks.some(({ about }) => about === 'repeat' || about === 'unlikely' || about === 'first row'))
    return `${plain.line} =`;
  const asked = plain.order.filter((_, index) =>
    read.asks.some((ask) => ask.position === plain.starts[index]),
  );
  const insisted = join(items, new Set(asked)).line;
  return insisted.length <= plain.line.length + 2 ? insisted : `${plain.line} =`;
}

type Joined = {
  readonly line: string;
  readonly order: readonly Written[];
  /** Where each item of `order` starts in the line. */
  readonly starts: readonly number[];
};

/**
 * Short items glued, named ones behind a space each. The `=` of a named item does for a space, so that where one is asked
 * it comes before the short ones.
 */
function join(items: readonly Written[], asked: ReadonlySet<Written>): Joined {
  const short = items.filter((item) => !item.named);
  const named = items
    .filter((item) => item.named)
    .sort((a, b) => Number(asked.has(a)) - Number(asked.has(b)));
  const namedFirst = named.some((item) => asked.has(item));
  const order = namedFirst ? [...named, ...short] : [...short, ...named];
  const starts: number[] = [];
  let line = '';
  for (const [index, item] of order.entries()) {
    const isGlued = index === 0 || (!item.named && (order[index - 1]?.named === false || line.endsWith('=')));
    if (!isGlued) line += ' ';
    starts.push(line.length);
    line += `${item.text}${asked.has(item) ? '=' : ''}`;
  }
  return { line: line === '' ? '.' : line, order, starts };
}
