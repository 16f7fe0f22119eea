import type { Json } from '../record/json.ts';
import { documentKind, formatNeeded, type StoredDocument } from './document-file.ts';

/**
 * A document's file as text, laid out for a person: one thing a line in its table, one entry of the history a line.
 * The same document always gives the same bytes.
 */
export function printDocument(stored: StoredDocument): string {
  const { document, position } = stored;
  const schema = documentKind(document.kind)?.schema ?? '';
  const tables = Object.entries(document.tables).map(
    ([name, table]) =>
      `    ${JSON.stringify(name)}: {\n${Object.entries(table)
        .map(([id, thing]) => `      ${JSON.stringify(id)}: ${remembered(thing)}`)
        .join(',\n')}\n    }`,
  );
  const history = document.history.map((entry) => `    ${remembered(entry)}`);
  return [
    '{',
    `  "$schema": ${JSON.stringify(schema)},`,
    `  "format": ${formatNeeded(document)},`,
    `  "kind": ${JSON.stringify(document.kind)},`,
    `  "id": ${JSON.stringify(document.id)},`,
    `  "journal": ${oneLine({ generation: position.generation, sequence: position.sequence })},`,
    `  "tables": ${block('{', tables, '}')},`,
    `  "history": ${block('[', history, ']')}`,
    '}\n',
  ].join('\n');
}

function block(open: string, lines: readonly string[], close: string): string {
  return lines.length === 0 ? open + close : `${open}\n${lines.join(',\n')}\n  ${close}`;
}

/** Things and entries as printed before: none is changed once it is made, and a file is written again after each few rows. */
const printed = new WeakMap<object, string>();

function remembered(value: object): string {
  const known = printed.get(value);
  if (known !== undefined) return known;
  const text = oneLine(value as Json);
  printed.set(value, text);
  return text;
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
