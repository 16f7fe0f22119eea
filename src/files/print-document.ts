import { setImmediate as nextTurn } from 'node:timers/promises';
import type { Document } from '../record/document.ts';
import type { Json } from '../record/json.ts';
import { documentKind, formatNeeded, type StoredDocument } from './document-file.ts';

/**
 * A document's file as UTF-8, laid out for a person: one thing a line in its table, one entry of the history a line.
 * The same document always gives the same bytes.
 */
export function documentBytes(stored: StoredDocument): Uint8Array {
  return Buffer.concat([...documentParts(stored)]);
}

/** The same in parts, one after another: laying megabytes side by side at once would keep a key waiting. */
export function* documentParts({ document, position }: StoredDocument): Generator<Uint8Array> {
  const schema = documentKind(document.kind)?.schema ?? '';
  const head = [
    '{',
    `  "$schema": ${JSON.stringify(schema)},`,
    `  "format": ${formatNeeded(document)},`,
    `  "kind": ${JSON.stringify(document.kind)},`,
    `  "id": ${JSON.stringify(document.id)},`,
    `  "journal": ${oneLine({ generation: position.generation, sequence: position.sequence })},`,
    '  "tables": ',
  ];
  const tables = Object.entries(document.tables);
  yield utf8(`${head.join('\n')}${tables.length === 0 ? '{}' : '{\n'}`);
  for (const [index, [name, table]] of tables.entries()) {
    yield utf8(`${index === 0 ? '' : ',\n'}    ${JSON.stringify(name)}: {\n`);
    yield* separated(Object.keys(table), (id) => lineOf(table[id] as object, id));
    yield utf8('\n    }');
  }
  const { history } = document;
  yield utf8(`${tables.length === 0 ? '' : '\n  }'},\n  "history": ${history.length === 0 ? '[]' : '[\n'}`);
  yield* separated(history, (entry) => lineOf(entry));
  yield utf8(`${history.length === 0 ? '' : '\n  ]'}\n}\n`);
}

/** So many things are printed in 3 ms. */
const AT_ONCE = 50;

/**
 * Prints what of a document was not printed before, a little at a time, so that keys are answered in between: a hole of 2,000 m that was
 * just opened takes a third of a second.
 */
export async function printAhead({ tables, history }: Document): Promise<void> {
  let left = AT_ONCE;
  const print = async (value: object, id?: string): Promise<void> => {
    lineOf(value, id);
    left -= 1;
    if (left > 0) return;
    left = AT_ONCE;
    await nextTurn();
  };
  for (const table of Object.values(tables))
    for (const id of Object.keys(table))
      if (!lines.has(table[id] as object)) await print(table[id] as object, id);
  for (const entry of history) if (!lines.has(entry)) await print(entry);
}

const utf8 = (text: string): Uint8Array => Buffer.from(text, 'utf8');
const BETWEEN = utf8(',\n');

function* separated<T>(all: readonly T[], line: (each: T) => Uint8Array): Generator<Uint8Array> {
  for (const [index, each] of all.entries()) {
    if (index > 0) yield BETWEEN;
    yield line(each);
  }
}

/** Lines of things and entries as printed before: none is changed once it is made, and a file is written again after each rod. */
const lines = new WeakMap<object, { readonly id: string | undefined; readonly line: Uint8Array }>();

/** The line of a thing under its id, or of an entry. */
function lineOf(value: object, id?: string): Uint8Array {
  const known = lines.get(value);
  if (known !== undefined && known.id === id) return known.line;
  const start = id === undefined ? '    ' : `      ${JSON.stringify(id)}: `;
  const line = utf8(start + oneLine(value as Json));
  lines.set(value, { id, line });
  return line;
}

/** A value on one line, with room to breathe: `{ "fromMm": 45000, "toMm": 46000 }`. */
function oneLine(value: Json | undefined): string {
  if (value === null || typeof value !== 'object') return JSON.stringify(value ?? null);
  if (Array.isArray(value)) return `[${value.map((item: Json) => oneLine(item)).join(', ')}]`;
  const members = Object.entries(value as { readonly [key: string]: Json | undefined })
    .filter(([, member]) => member !== undefined)
    .map(([key, member]) => `${JSON.stringify(key)}: ${oneLine(member)}`);
  return members.length === 0 ? '{}' : `{ ${members.join(', ')} }`;
}
