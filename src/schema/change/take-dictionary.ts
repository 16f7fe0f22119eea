import { applyEdits, findNodeAtLocation, modify } from 'jsonc-parser';
import { ok, type Result } from '../../finding/finding.ts';
import type { LoadParent } from '../read/chain.ts';
import { parseJsonFile } from '../read/json-source.ts';
import type { TextFile } from '../read/places.ts';
import { resolveSchema } from '../read/resolve.ts';
import { insertCodes } from './add-code.ts';
import { type ChangedSchema, FORMATTING, heldToCheck } from './changed-file.ts';
import type { Dictionary } from './import-dictionary.ts';
import { APART_AT_ANY_PRICE, type ProposedStroke, proposeStrokes } from './propose-strokes.ts';
import type { ProposeWhat } from './stroke-slots.ts';
import { writeStrokes } from './write-strokes.ts';

/** A logging.json with a dictionary in it, and the pairs and keys that were chosen for what came without. */
export type TakenDictionary = ChangedSchema & { readonly chosen: readonly ProposedStroke[] };

/** A logging.json that holds a dictionary and extends nothing. */
export function fileOfDictionary(name: string, dictionary: Dictionary): TextFile {
  return { file: 'logging.json', text: `${JSON.stringify({ format: 1, name, ...dictionary }, null, 2)}\n` };
}

/**
 * Puts a dictionary into a logging.json: fields and codes behind those that are there, scales by their name; what it inherits is changed, what
 * it has itself is refused as written twice. What has no pair gets one, apart from all others; what was logged with stays. Refused, with
 * nothing changed, where the check finds a new fault.
 */
export function takeDictionary(
  file: TextFile,
  dictionary: Dictionary,
  { loadParent, ...what }: Pick<ProposeWhat, 'frozen' | 'keys'> & { readonly loadParent?: LoadParent },
): Result<TakenDictionary> {
  const inserted = withParts(file, dictionary);
  if (!inserted.ok) return inserted;
  return strokesChosen(file, inserted.value, { loadParent, ...what });
}

/** Pairs and keys for what a logging.json leaves without, written into it. */
export function strokesChosen(
  file: TextFile,
  text: string,
  {
    loadParent,
    ...what
  }: Pick<ProposeWhat, 'frozen' | 'keys'> & { readonly loadParent: LoadParent | undefined },
): Result<TakenDictionary> {
  const resolved = resolveSchema({ ...file, text }, loadParent);
  if (!resolved.ok) return resolved;
  const chosen = proposeStrokes(resolved.value.schema, { ...what, apart: APART_AT_ANY_PRICE });
  const written = writeStrokes({ ...file, text }, chosen, loadParent);
  if (!written.ok) return written;
  const held = heldToCheck(file, written.value.text, loadParent);
  return held.ok ? ok({ ...held.value, chosen }) : held;
}

function withParts(file: TextFile, { fields, lists, scales }: Dictionary): Result<string> {
  let text = file.text;
  const set = (path: (string | number)[], value: unknown, isArrayInsertion = false): void => {
    text = applyEdits(text, modify(text, path, value, { ...FORMATTING, isArrayInsertion }));
  };
  const parsed = parseJsonFile(file);
  if (!parsed.ok) return parsed;
  const there = findNodeAtLocation(parsed.value.root, ['fields'])?.children?.length;
  if (there === undefined && fields.length > 0) set(['fields'], fields);
  else for (const [index, field] of fields.entries()) set(['fields', (there ?? 0) + index], field, true);
  for (const [name, scale] of Object.entries(scales)) set(['scales', name], scale);
  for (const [name, { label, codes = [] }] of Object.entries(lists)) {
    if (label !== undefined && label !== name) set(['lists', name, 'label'], label);
    const inserted = insertCodes({ ...file, text }, name, codes);
    if (!inserted.ok) return inserted;
    text = inserted.value;
  }
  return ok(text);
}
