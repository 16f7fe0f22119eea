import { applyEdits, findNodeAtLocation, modify } from 'jsonc-parser';
import { ok, type Result, refused } from '../../finding/finding.ts';
import { checkSchema } from '../check/check-schema.ts';
import { cautionMissing, importLosesCaution } from '../findings.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import type { LoadParent } from '../read/chain.ts';
import type { CodeEntry } from '../read/file-entries.ts';
import { parseJsonFile } from '../read/json-source.ts';
import type { TextFile } from '../read/places.ts';
import { resolveSchema } from '../read/resolve.ts';
import { insertCodes } from './add-code.ts';
import { FORMATTING, heldToCheck } from './changed-file.ts';
import { lostCautions } from './lost-cautions.ts';
import { proposePairs } from './propose-pairs.ts';

/** A code library taken into a project's logging.json: the text, its schema, and the pairs that were proposed. */
export type ImportedLibrary = {
  readonly text: string;
  readonly schema: LoggingSchema;
  readonly proposed: readonly { readonly code: string; readonly pair: string }[];
  /** Codes that no safe pair is left for: said by their field. */
  readonly withoutPair: readonly string[];
  /** Codes that the list had already: what the library says of them counts from now on. */
  readonly replaced: readonly string[];
  /** Codes of the list that are called like a danger and have no caution, in words. */
  readonly unwarned: readonly string[];
};

/** Where a library goes, and what was decided about it. */
export type ImportInto = {
  readonly list: string;
  /** Takes its codes from the list from then on. */
  readonly field?: string | undefined;
  /** Cautions that get lost were seen, and are to go. */
  readonly dropCautions?: boolean;
};

/**
 * Takes codes imposed from elsewhere into a list, keeping them as they are, each with a pair proposed where the library gives none.
 * Refused, with nothing changed, where the check finds a new fault, and where a danger could no longer be logged as one.
 */
export function importLibrary(
  file: TextFile,
  { list, field, dropCautions = false }: ImportInto,
  entries: readonly CodeEntry[],
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
  const before = resolveSchema(file, loadParent);
  const lost = before.ok && !dropCautions ? lostCautions(before.value.schema, held.value.schema) : [];
  if (lost.length > 0) return refused(...lost.map((problem) => losesCaution(list, problem)));
  // A code that the list had already keeps its pair, though the library gives none.
  const codesNow = held.value.schema.lists[list]?.codes ?? [];
  const withoutPair = codesNow.filter(({ code, pair }) => wanted.has(code) && pair === undefined);
  const listed = new Set(before.ok ? before.value.schema.lists[list]?.codes.map(({ code }) => code) : []);
  const unwarned = checkSchema(held.value.schema)
    .filter(({ code, place }) => code === cautionMissing.code && place.thing?.startsWith(`list ${list},`))
    .map(({ problem }) => problem);
  return ok({
    ...held.value,
    proposed: proposed.map(({ code, pair }) => ({ code, pair })),
    withoutPair: withoutPair.map(({ code }) => code),
    replaced: entries.map(({ code }) => code).filter((code) => listed.has(code)),
    unwarned,
  });
}

function losesCaution(list: string, problem: string) {
  return importLosesCaution.at(
    { thing: `list ${list}` },
    {
      problem,
      remedy:
        'Put a column into the CSV that says void, fibre, silica dust or loss of return, and name it with --caution. If they are meant to go: --drop-cautions.',
    },
  );
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
