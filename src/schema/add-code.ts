import { applyEdits, findNodeAtLocation, type JSONPath, modify } from 'jsonc-parser';
import { ok, type Result, refused } from '../finding/finding.ts';
import type { LoadParent } from './chain.ts';
import { checkSchema } from './check-schema.ts';
import type { CodeEntry } from './file-schema.ts';
import { parseJsonFile } from './json-source.ts';
import type { LoggingSchema } from './logging-schema.ts';
import type { TextFile } from './places.ts';
import { resolveSchema } from './resolve.ts';

/** A changed logging.json and the schema that it gives. */
export type ChangedSchema = { readonly text: string; readonly schema: LoggingSchema };

const FORMATTING = { formattingOptions: { insertSpaces: true, tabSize: 2, eol: '\n' } };

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
  const before = resolveSchema(file, loadParent);
  if (!before.ok) return before;
  const inserted = inserting(file, list, entries);
  if (!inserted.ok) return inserted;
  const changed: TextFile = { ...file, text: inserted.value };
  const after = resolveSchema(changed, loadParent);
  if (!after.ok) return after;
  const known = new Set(checkSchema(before.value.schema).map((finding) => JSON.stringify(finding)));
  const bare = checkSchema(after.value.schema);
  const faults = checkSchema(after.value.schema, after.value.origins).filter(
    (finding, index) => finding.severity === 'fault' && !known.has(JSON.stringify(bare[index])),
  );
  if (faults.length > 0) return refused(...faults);
  return ok({ text: changed.text, schema: after.value.schema });
}

/** Adds one code met on the rig: marked provisional, so that camp is told of it. */
export function addProvisionalCode(
  file: TextFile,
  list: string,
  entry: CodeEntry,
  loadParent?: LoadParent,
): Result<ChangedSchema> {
  return addCodes(file, list, [{ look: '', ...entry, provisional: true }], loadParent);
}

function inserting(file: TextFile, list: string, entries: readonly CodeEntry[]): Result<string> {
  const parsed = parseJsonFile(file);
  if (!parsed.ok) return parsed;
  const path: JSONPath = ['lists', list, 'codes'];
  const there = findNodeAtLocation(parsed.value.root, path) !== undefined;
  const whole = there ? file.text : applyEdits(file.text, modify(file.text, path, [], FORMATTING));
  const text = entries.reduce((each, entry) => {
    const edits = modify(each, [...path, -1], entry, { ...FORMATTING, isArrayInsertion: true });
    return applyEdits(each, edits);
  }, whole);
  return ok(text);
}
