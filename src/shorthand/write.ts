import { type RowSaid, sameObservation } from '../value/row.ts';
import { type Way, type Written, waysToSay } from './field-items.ts';
import { type EntryContext, parseLine } from './parse.ts';
import { NO_RETURN } from './typing-index.ts';

/**
 * The shortest line that says a row where it stands, with `=` where it would be asked: `parseLine` of it is the row
 * again, for every row that can be observed. A row that can't be logged anew (it holds a retired code) is written as
 * near as can be, and is refused with the reason when it is typed.
 */
export function writeLine(row: RowSaid, context: EntryContext): string {
  const remark = row.remark === undefined ? '' : `/${row.remark}`;
  if (row.noReturn) return `${NO_RETURN}${remark}`;
  return `${shortestOf(saidLines(row, context))}${remark}`;
}

function saidLines(row: RowSaid, context: EntryContext): readonly string[] {
  const waysByField = context.schema.fields.flatMap((field) => {
    const cell = row.cells[field.name];
    return cell === undefined ? [] : [waysToSay(context, field, cell)];
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
        : waysToSay(context, field, cell, true).map((way) => finish(way, context));
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
  const short = items.filter((item) => !item.named).map((item) => item.text);
  const named = items.filter((item) => item.named).map((item) => item.text);
  const glued = short.join('');
  const line =
    items.length > 0
      ? [...(glued === '' ? [] : [glued]), ...named].join(' ')
      : context.above === undefined
        ? ''
        : '.';
  const read = parseLine(line, context);
  if (read.kind !== 'row' || read.asks.length === 0) return line;
  const [ask] = read.asks;
  const asked = named.find(
    (text, index) => ask?.position === startOf(glued, named, index) && text.length === ask.length,
  );
  if (read.asks.length > 1 || asked === undefined || glued === '' || ask?.about === 'repeat')
    return `${line}=`;
  // The `=` of a named item stands where a space would: said before the short ones it costs nothing more.
  return [...named.filter((text) => text !== asked), `${asked}=${glued}`].join(' ');
}

function startOf(glued: string, named: readonly string[], index: number): number {
  return [...(glued === '' ? [] : [glued]), ...named.slice(0, index)].reduce(
    (at, text) => at + text.length + 1,
    0,
  );
}
