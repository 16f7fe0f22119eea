import { documentFault } from '../files/document-file.ts';
import { type EditLine, type Link, lineFault } from '../files/journal-line.ts';
import { whySealed } from '../hole/acceptance.ts';
import { apply } from '../record/apply.ts';
import { type Document, documentKey, type Edit, emptyDocument } from '../record/document.ts';
import { target } from '../record/draft.ts';
import { identifierFault } from '../record/identifiers.ts';

/** An edit applied, ready for the journal: its line and the documents as they are after it; or why it is not taken. */
export type Prepared =
  | { readonly ok: true; readonly line: EditLine; readonly documents: readonly Document[] }
  | { readonly ok: false; readonly problem: string };

/**
 * Applies an edit to all of its documents, or to none. A part that names a document that is not there makes it. Refused:
 * changes that do not fit, changes of a hole that is signed off, a document named twice or not to be written, an id that can't be a file's name, and whatever
 * would not read back from the journal or the file as it is now.
 */
export function prepare(
  edit: Edit,
  get: (key: string) => Document | undefined,
  closed: ReadonlyMap<string, string>,
): Prepared {
  const documents: Document[] = [];
  const links: Link[] = [];
  const keys = new Set<string>();
  if (edit.parts.length === 0) return { ok: false, problem: 'it changes nothing' };
  for (const { document: name, changes } of edit.parts) {
    const key = documentKey(name);
    const shut = closed.get(key);
    if (shut !== undefined) return { ok: false, problem: `${name.id} can't be written: ${shut}` };
    if (keys.has(key)) return { ok: false, problem: `${name.id} is named twice in one edit` };
    keys.add(key);
    const found = get(key);
    const misnamed = found === undefined ? identifierFault(name.id) : undefined;
    if (misnamed !== undefined) return { ok: false, problem: `"${name.id}" can't be an id: ${misnamed}` };
    const sealed =
      found === undefined
        ? undefined
        : whySealed(
            found,
            changes.map((change) => target(change)[0]),
          );
    if (sealed !== undefined) return { ok: false, problem: `${name.id}: ${sealed}` };
    const applied = apply(found ?? emptyDocument(name), edit, changes);
    if (!applied.ok) return { ok: false, problem: `${name.id}: ${applied.problem}` };
    const fault = documentFault(applied.document, changes.map(target));
    if (fault !== undefined) return { ok: false, problem: `${name.id}: ${fault}` };
    documents.push(applied.document);
    links.push({ onto: applied.entry.follows[0] ?? '', makes: applied.entry.hash });
  }
  const line: EditLine = { seq: 0, safe: 0, links, edit };
  const fault = lineFault(line);
  return fault === undefined ? { ok: true, line, documents } : { ok: false, problem: fault };
}

/** A value as it will read back from a file: members that are undefined are not there. */
export function asWritten<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}
