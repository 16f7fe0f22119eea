import { formatDepth } from '../../../quantity/depth.ts';
import { formatInterval } from '../../../quantity/interval.ts';
import { localDate, localTime, parseStamp } from '../../../quantity/stamp.ts';
import type { Document, DoneChange, Entry, Thing } from '../../../record/document.ts';
import { canonicalJson } from '../../../record/json.ts';
import { fieldNamed, type LoggingSchema } from '../../../schema/logging-schema.ts';
import { cellWords } from '../../../shorthand/words.ts';
import type { Cell } from '../../../value/cell.ts';
import type { Row } from '../../../value/row.ts';
import { type Line, spans, wrap } from '../../widgets/line.ts';
import { type Listed, oneSection } from './listed.ts';

/** Fields of a row that say how it was typed, not what was seen. */
const HOW_TYPED = ['carried', 'repeat'];

/** What was done on a hole, latest first: when, who, what, and for everything changed or taken out what stood before. */
export function historyList(schema: LoggingSchema, hole: Document, width: number): Listed {
  const items = [...hole.history].reverse().map((entry) => entryLines(schema, hole, entry, width));
  return oneSection(`history, latest first · ${hole.history.length} edits`, items);
}

/** One edit: when, who, what, and what stood before and after. */
export function entryLines(
  schema: LoggingSchema,
  hole: Document,
  entry: Entry,
  width: number,
): readonly Line[] {
  const at = parseStamp(entry.at);
  const when = at === undefined ? entry.at : `${localDate(at)} ${localTime(at, true)}`;
  const head = spans([`${when}  ${entry.by}  `, 'faint'], entry.what, [
    entry.outside ? '  EDITED OUTSIDE' : '',
    'alert',
  ]);
  const changes = entry.changes
    .flatMap((change) => changeWords(schema, hole, change, entry.outside === true))
    .flatMap((words) => wrap(words, width - 4, 'faint'))
    .map((each): Line => [{ text: '    ' }, ...each]);
  return [head, ...changes];
}

/**
 * What stood before and after a change, a thing each. What is new, and what is taken out beside rows, is said only of an edit made
 * outside: an entry of ours says it itself.
 */
function changeWords(
  schema: LoggingSchema,
  hole: Document,
  change: DoneChange,
  outside: boolean,
): readonly string[] {
  if ('put' in change) {
    return outside ? [`put in ${thingWords(schema, change.put, change.thing)}`] : [];
  }
  if ('remove' in change) {
    if (change.remove[0] !== 'rows' && !outside) return [];
    return [`taken out ${thingWords(schema, change.remove, change.before)}`];
  }
  const [table, id] = change.patch;
  const after: Thing = change.set ?? {};
  const names = [...new Set([...Object.keys(after), ...(change.unset ?? [])])];
  const differences = names
    .filter((name) => !HOW_TYPED.includes(name))
    .flatMap((name) =>
      name === 'cells'
        ? cellDifferences(schema, change.before[name], after[name])
        : [`${nameWords(name)}: ${valueWords(name, change.before[name])} → ${valueWords(name, after[name])}`],
    );
  const row = table === 'rows' ? (hole.tables.rows?.[id] as unknown as Row | undefined) : undefined;
  const where = row === undefined ? '' : `${formatInterval(row)} `;
  return differences.map((each) => `${where}${each}`);
}

/** A row with its interval and what it observed; anything else by its table and id. */
function thingWords(
  schema: LoggingSchema,
  [table, id]: readonly [table: string, id: string],
  thing: Thing,
): string {
  if (table !== 'rows') return `${nameWords(table)} ${id}`;
  const row = thing as unknown as Row;
  return `${formatInterval(row)}: ${rowWords(schema, row)}`;
}

/** Cells that differ, in the words of the log sheet: `pyrite 2 % → pyrite 5 %`. */
function cellDifferences(schema: LoggingSchema, before: unknown, after: unknown): readonly string[] {
  const was = (before ?? {}) as Readonly<Record<string, Cell>>;
  const is = (after ?? {}) as Readonly<Record<string, Cell>>;
  return [...new Set([...Object.keys(was), ...Object.keys(is)])]
    .filter((name) => canonicalJson(was[name] ?? null) !== canonicalJson(is[name] ?? null))
    .map((name) => {
      const label = fieldNamed(schema, name)?.label ?? name;
      return `${label}: ${cellText(schema, name, was[name])} → ${cellText(schema, name, is[name])}`;
    });
}

function cellText(schema: LoggingSchema, name: string, cell: Cell | undefined): string {
  const field = fieldNamed(schema, name);
  if (cell === undefined) return 'not asked';
  return field === undefined ? plainText(cell) : cellWords(schema, field, cell).join(', ');
}

/** What a row observed, in words, with its remark. */
function rowWords(schema: LoggingSchema, row: Row): string {
  if (row.noReturn) return 'no return';
  const cells = Object.entries(row.cells)
    .filter(([, cell]) => !('absent' in cell))
    .map(([name, cell]) => cellText(schema, name, cell));
  return [...cells, ...(row.remark === undefined ? [] : [`remark: ${row.remark}`])].join(', ');
}

/** `fromMm` reads `from`, `noReturn` reads `no return`. */
function nameWords(name: string): string {
  return name.replace(/Mm$/, '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function valueWords(name: string, value: unknown): string {
  if (value === undefined) return 'nothing';
  return name.endsWith('Mm') && typeof value === 'number' ? `${formatDepth(value)} m` : plainText(value);
}

function plainText(value: unknown): string {
  if (value === true) return 'yes';
  if (Array.isArray(value)) return value.map(plainText).join('; ');
  return typeof value === 'string' ? value : JSON.stringify(value).replaceAll('"', '');
}
