import { applyEdits, findNodeAtLocation, type JSONPath, modify, type Node } from 'jsonc-parser';
import { ok, type Result } from '../../finding/finding.ts';
import type { LoadParent } from '../read/chain.ts';
import type { CodeEntry } from '../read/file-entries.ts';
import { parseJsonFile } from '../read/json-source.ts';
import type { TextFile } from '../read/places.ts';
import { type ChangedSchema, FORMATTING, heldToCheck } from './changed-file.ts';

/**
 * Adds codes to a list of a project's logging.json; comments and order are kept. Refused, with nothing changed, where the
 * file would not resolve or the check finds a fault in it that it did not find before.
 */
export function addCodes(
  file: TextFile,
  list: string,
  entries: readonly CodeEntry[],
  loadParent?: LoadParent,
): Result<ChangedSchema> {
  const inserted = insertCodes(file, list, entries);
  return inserted.ok ? heldToCheck(file, inserted.value, loadParent) : inserted;
}

/** Adds one code met on the rig: marked provisional, so that camp is told of it. */
export function addProvisionalCode(
  file: TextFile,
  list: string,
  entry: CodeEntry,
  loadParent?: LoadParent,
): Result<ChangedSchema> {
  return addCodes(file, list, [{ ...entry, look: entry.look ?? '', provisional: true }], loadParent);
}

/** The text of the file with codes at the end of a list, which is made where it is not there. Not checked. */
export function insertCodes(file: TextFile, list: string, entries: readonly CodeEntry[]): Result<string> {
  const path: JSONPath = ['lists', list, 'codes'];
  let text = file.text;
  for (const entry of entries) {
    const parsed = parseJsonFile({ ...file, text });
    if (!parsed.ok) return parsed;
    const codes = findNodeAtLocation(parsed.value.root, path);
    const last = codes?.children?.at(-1);
    text =
      codes === undefined || last === undefined
        ? applyEdits(text, modify(text, path, [entry], FORMATTING))
        : insertedBehind(text, last, codes, entry);
  }
  return ok(text);
}

/** The entry on a line of its own behind the last one and its comments; what is there already is not touched. */
function insertedBehind(text: string, last: Node, codes: Node, entry: CodeEntry): string {
  const lastEnd = last.offset + last.length;
  const closing = codes.offset + codes.length - 1;
  const behind = text.slice(lastEnd, closing).trimEnd();
  const lineStart = text.lastIndexOf('\n', last.offset) + 1;
  const indent = /^\s*/.exec(text.slice(lineStart, last.offset))?.[0] ?? '';
  const line = JSON.stringify(entry, null, 1).replace(/\n\s*/g, ' ');
  return `${text.slice(0, lastEnd)},${behind}\n${indent}${line}${text.slice(lastEnd + behind.length)}`;
}
