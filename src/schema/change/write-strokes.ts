import { applyEdits, findNodeAtLocation, type JSONPath, modify } from 'jsonc-parser';
import { ok, type Result } from '../../finding/finding.ts';
import type { LoadParent } from '../read/chain.ts';
import { parseJsonFile } from '../read/json-source.ts';
import type { TextFile } from '../read/places.ts';
import { insertCodes } from './add-code.ts';
import { type ChangedSchema, FORMATTING, heldToCheck } from './changed-file.ts';
import { withMember } from './edit-code.ts';
import type { ProposedStroke } from './propose-strokes.ts';

/** A pair and a key of one code or field; null takes it away. */
type Strokes = { readonly pair?: string | null; readonly key?: string | null };

/**
 * Puts chosen pairs and keys into a file: into its own entry of a code or field where it has one, else into a new one that says nothing
 * else. Refused, with nothing changed, where the check finds a new fault.
 */
export function writeStrokes(
  file: TextFile,
  chosen: readonly ProposedStroke[],
  loadParent?: LoadParent,
): Result<ChangedSchema> {
  let text = file.text;
  for (const { part, strokes } of together(chosen)) {
    const next =
      'field' in part
        ? ofField({ ...file, text }, part.field, strokes)
        : ofCode({ ...file, text }, part.list, part.code, strokes);
    if (!next.ok) return next;
    text = next.value;
  }
  return heldToCheck(file, text, loadParent);
}

type Part = { readonly field: string } | { readonly list: string; readonly code: string };

/** The pair and the key of each code or field, in the order of their first. */
function together(
  chosen: readonly ProposedStroke[],
): readonly { readonly part: Part; readonly strokes: Strokes }[] {
  const all = new Map<string, { readonly part: Part; strokes: Strokes }>();
  for (const { part, is, strokes } of chosen) {
    const whose: Part | undefined =
      'field' in part
        ? { field: part.field }
        : 'list' in part
          ? { list: part.list, code: part.code ?? '' }
          : undefined;
    if (whose === undefined) continue;
    const name = JSON.stringify(whose);
    all.set(name, { part: whose, strokes: { ...all.get(name)?.strokes, [is]: strokes ?? null } });
  }
  return [...all.values()];
}

function ofCode(file: TextFile, list: string, code: string, strokes: Strokes): Result<string> {
  const at = entryAt(file, ['lists', list, 'codes'], 'code', code);
  if (!at.ok) return at;
  if (at.value === undefined) return insertCodes(file, list, [{ code, ...strokes }]);
  return ok(withMembers(file.text, at.value, strokes));
}

function ofField(file: TextFile, field: string, strokes: Strokes): Result<string> {
  const at = entryAt(file, ['fields'], 'name', field);
  if (!at.ok) return at;
  if (at.value !== undefined) return ok(withMembers(file.text, at.value, strokes));
  const parsed = parseJsonFile(file);
  if (!parsed.ok) return parsed;
  const count = findNodeAtLocation(parsed.value.root, ['fields'])?.children?.length ?? 0;
  const edits = modify(
    file.text,
    ['fields', count],
    { name: field, ...strokes },
    { ...FORMATTING, isArrayInsertion: true },
  );
  return ok(applyEdits(file.text, edits));
}

function entryAt(file: TextFile, path: JSONPath, member: string, name: string): Result<JSONPath | undefined> {
  const parsed = parseJsonFile(file);
  if (!parsed.ok) return parsed;
  const entries = findNodeAtLocation(parsed.value.root, path)?.children ?? [];
  const at = entries.findIndex((node) => findNodeAtLocation(node, [member])?.value === name);
  return ok(at === -1 ? undefined : [...path, at]);
}

function withMembers(text: string, path: JSONPath, strokes: Strokes): string {
  return Object.entries(strokes).reduce(
    (changed, [member, value]) => withMember(changed, [...path, member], value),
    text,
  );
}
