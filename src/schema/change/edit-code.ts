import { applyEdits, findNodeAtLocation, type JSONPath, modify } from 'jsonc-parser';
import type { Result } from '../../finding/finding.ts';
import type { LoadParent } from '../read/chain.ts';
import type { CodeEntry } from '../read/file-entries.ts';
import { parseJsonFile } from '../read/json-source.ts';
import type { TextFile } from '../read/places.ts';
import { insertCodes } from './add-code.ts';
import { type ChangedSchema, heldToCheck } from './changed-file.ts';

/** What of a code can be changed where it is read: a member that is null takes an inherited one away. */
export type CodeChange = Partial<
  Pick<CodeEntry, 'label' | 'look' | 'pair' | 'key' | 'retiredSince' | 'provisional'>
> & {
  /** Its place in the list; the one of the two that is undefined is taken out. */
  readonly after?: string | undefined;
  readonly before?: string | undefined;
};

/**
 * Changes a code of a list in a project's logging.json, wherever it was written first: in the file's own entry where it has one, else
 * in a new one that says only what changes. Refused, with nothing changed, where the check finds a new fault.
 */
export function changeCode(
  file: TextFile,
  list: string,
  code: string,
  change: CodeChange,
  loadParent?: LoadParent,
): Result<ChangedSchema> {
  const parsed = parseJsonFile(file);
  if (!parsed.ok) return parsed;
  const path: JSONPath = ['lists', list, 'codes'];
  const codes = findNodeAtLocation(parsed.value.root, path)?.children ?? [];
  const at = codes.findIndex((node) => findNodeAtLocation(node, ['code'])?.value === code);
  if (at === -1) {
    const own = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
    const inserted = insertCodes(file, list, [{ code, ...own }]);
    return inserted.ok ? heldToCheck(file, inserted.value, loadParent) : inserted;
  }
  const text = Object.entries(change).reduce(
    (changed, [member, value]) => withMember(changed, [...path, at, member], value),
    file.text,
  );
  return heldToCheck(file, text, loadParent);
}

/** The text with one member of an entry set: a new one on the line where the entry ends, nothing else laid out again. */
export function withMember(text: string, path: JSONPath, value: unknown): string {
  const edits = modify(text, path, value, {});
  return applyEdits(
    text,
    edits.map((edit) => ({ ...edit, content: edit.content.replace(/^,(?=")/, ', ') })),
  );
}
