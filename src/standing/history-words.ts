import { formatDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import { localDate, localTime, parseStamp } from '../quantity/stamp.ts';
import { isMerge } from '../record/ancestry.ts';
import { chainFault } from '../record/chain.ts';
import type { Document, DoneChange, Entry, Thing } from '../record/document.ts';
import { canonicalJson } from '../record/json.ts';
import { fieldNamed, type LoggingSchema } from '../schema/logging-schema.ts';
import { cellWords } from '../shorthand/words.ts';
import type { Cell } from '../value/cell.ts';
import type { Row } from '../value/row.ts';

/** Fields of a row that say how it was typed, not what was seen. */
const HOW_TYPED = ['carried', 'repeat'];

/** One edit in words: when, who, what, and what stood before and after. */
export interface EntryWords {
  readonly when: string;
  readonly by: string;
  readonly what: string;
  readonly outside: boolean;
  readonly changes: readonly string[];
}

/** An edit of a hole in words; of a merge, who did what on the other copy too. */
export function entryWords(schema: LoggingSchema, hole: Document, entry: Entry): EntryWords {
  const outside = entry.outside === true;
  const theirs = (entry.incoming ?? entry.merged ?? [])
    .filter((each) => !isMerge(each))
    .map((each) => `theirs: ${whenWords(each.at)} ${each.by}: ${each.what}`);
  const changes = entry.changes.flatMap((change) => changeWords(schema, hole, change, outside));
  return {
    when: whenWords(entry.at),
    by: entry.by,
    what: entry.what,
    outside,
    changes: [...theirs, ...changes],
  };
}

/** Date and time by the clock that stamped it; what is no stamp stands as it is. */
function whenWords(at: string): string {
  const stamp = parseStamp(at);
  return stamp === undefined ? at : `${localDate(stamp)} ${localTime(stamp, true)}`;
}

const verified = new WeakMap<Document['history'], string>();

/** Whether the chain of a hole's history holds: every entry has the hash of what it says and of the one before it. */
export function chainWords({ history }: Document): string {
  const known = verified.get(history);
  if (known !== undefined) return known;
  const fault = chainFault(history);
  const words =
    fault === undefined ? 'chain verified' : `CHAIN BROKEN at edit ${fault.index + 1}: ${fault.problem}`;
  verified.set(history, words);
  return words;
}

/** Everything that is in a hole, in words: rows from the top with what they observed, then every other table thing by thing. */
export function stateWords(
  schema: LoggingSchema,
  hole: Document,
): readonly { readonly head: string; readonly lines: readonly string[] }[] {
  const rows = Object.values(hole.tables.rows ?? {})
    .map((row) => row as unknown as Row)
    .sort((a, b) => a.fromMm - b.fromMm)
    .map((row) => `${formatInterval(row)}: ${rowWords(schema, row)}`);
  const others = Object.entries(hole.tables)
    .filter(([table]) => table !== 'rows' && !table.startsWith('legend'))
    .map(([table, things]) => ({
      head: nameWords(table),
      lines: Object.values(things).map((thing) => thingText(thing)),
    }));
  const [header, ...rest] = others.sort((a, b) => Number(b.head === 'hole') - Number(a.head === 'hole'));
  return [...(header === undefined ? [] : [header]), { head: 'rows', lines: rows }, ...rest];
}

function thingText(thing: Thing): string {
  return Object.entries(thing)
    .map(([name, value]) => `${nameWords(name)} ${valueWords(name, value)}`)
    .join(' · ');
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
    if (outside) return [`put in ${thingWords(schema, change.put, change.thing)}`];
    return change.put[0] === 'decisions' ? decisionWords(change.thing) : [];
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

/** Why a person decided so, and who was called: the entry's own words name the kind and the depth. */
function decisionWords({ reason, called }: Thing): readonly string[] {
  return [
    ...(typeof called === 'string' ? [`called ${called}`] : []),
    ...(typeof reason === 'string' ? [reason] : []),
  ];
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

/** A cell of a row in the words of the log sheet; one that is not there was not asked. */
export function cellText(schema: LoggingSchema, name: string, cell: Cell | undefined): string {
  const field = fieldNamed(schema, name);
  if (cell === undefined) return 'not asked';
  return field === undefined ? plainText(cell) : cellWords(schema, field, cell).join(', ');
}

/** What a row observed, in words, with its remark. */
export function rowWords(schema: LoggingSchema, row: Row): string {
  if (row.noReturn) return 'no return';
  const cells = Object.entries(row.cells)
    .filter(([, cell]) => !('absent' in cell))
    .map(([name, cell]) => cellText(schema, name, cell));
  return [...cells, ...(row.remark === undefined ? [] : [`remark: ${row.remark}`])].join(', ');
}

/** `fromMm` reads `from`, `noReturn` reads `no return`. */
export function nameWords(name: string): string {
  return name.replace(/Mm$/, '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** A value of a field of any table; a depth in metres. */
export function valueWords(name: string, value: unknown): string {
  if (value === undefined) return 'nothing';
  return name.endsWith('Mm') && typeof value === 'number' ? `${formatDepth(value)} m` : plainText(value);
}

function plainText(value: unknown): string {
  if (value === true) return 'yes';
  if (Array.isArray(value)) return value.map(plainText).join('; ');
  if (typeof value !== 'object' || value === null) return String(value);
  return Object.entries(value)
    .map(([name, member]) => `${nameWords(name)} ${valueWords(name, member)}`)
    .join(', ');
}
