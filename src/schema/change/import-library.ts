import { applyEdits, findNodeAtLocation, modify } from 'jsonc-parser';
import { ok, type Result } from '../../finding/finding.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import type { LoadParent } from '../read/chain.ts';
import type { CodeEntry } from '../read/file-entries.ts';
import { parseJsonFile } from '../read/json-source.ts';
import type { TextFile } from '../read/places.ts';
import { resolveSchema } from '../read/resolve.ts';
import { insertCodes } from './add-code.ts';
import { FORMATTING, heldToCheck } from './changed-file.ts';
import { proposePairs } from './propose-pairs.ts';

/** A code library taken into a project's logging.json: the text, its schema, and the pairs that were proposed. */
export type ImportedLibrary = {
  readonly text: string;
  readonly schema: LoggingSchema;
  readonly proposed: readonly { readonly code: string; readonly pair: string }[];
  /** Codes that no safe pair is left for: said by their field. */
  readonly withoutPair: readonly string[];
};

/**
 * Takes codes imposed from elsewhere into a list, keeping them as they are, each with a pair proposed where the library gives none.
 * `field` takes its codes from that list from then on. Refused, with nothing changed, where the check finds a new fault.
 */
export function importLibrary(
  file: TextFile,
  list: string,
  entries: readonly CodeEntry[],
  field: string | undefined,
  loadParent?: LoadParent,
): Result<ImportedLibrary> {
  const pointed = field === undefined ? ok(file.text) : withList(file, field, list);
  if (!pointed.ok) return pointed;
  const bare = insertCodes({ ...file, text: pointed.value }, list, entries);
  if (!bare.ok) return bare;
  const resolved = resolveSchema({ ...file, text: bare.value }, loadParent);
  if (!resolved.ok) return resolved;
  const wanted = new Set(entries.filter(({ pair }) => pair === undefined).map(({ code }) => code));
  const proposed = proposePairs(resolved.value.schema).filter(
    (each) => each.list === list && wanted.has(each.code),
  );
  const pairs = new Map(proposed.map(({ code, pair }) => [code, pair]));
  const typed = entries.map((entry): CodeEntry => {
    const pair = pairs.get(entry.code);
    return pair === undefined ? entry : { ...entry, pair };
  });
  const whole = insertCodes({ ...file, text: pointed.value }, list, typed);
  if (!whole.ok) return whole;
  const held = heldToCheck(file, whole.value, loadParent);
  if (!held.ok) return held;
  const withoutPair = [...wanted].filter((code) => !pairs.has(code));
  return ok({ ...held.value, proposed: proposed.map(({ code, pair }) => ({ code, pair })), withoutPair });
}

/** The text with a field that takes its codes from a list: in the file's own entry of the field, else in a new one. */
function withList(file: TextFile, field: string, list: string): Result<string> {
  const parsed = parseJsonFile(file);
  if (!parsed.ok) return parsed;
  const fields = findNodeAtLocation(parsed.value.root, ['fields'])?.children ?? [];
  const at = fields.findIndex((node) => findNodeAtLocation(node, ['name'])?.value === field);
  const edits =
    at === -1
      ? modify(
          file.text,
          ['fields', fields.length],
          { name: field, list },
          { ...FORMATTING, isArrayInsertion: true },
        )
      : modify(file.text, ['fields', at, 'list'], list, FORMATTING);
  return ok(applyEdits(file.text, edits));
}
