import { hindrance, inverse } from '../record/apply.ts';
import { type Document, type DocumentName, documentKey, type Edit, type Id } from '../record/document.ts';

/** The edits of this sitting that can be taken back and done again, latest last. */
export interface Sitting {
  readonly done: readonly Edit[];
  readonly undone: readonly Edit[];
}

export const NEW_SITTING: Sitting = { done: [], undone: [] };

/** The parts of an edit that takes another one back; or why it can't be, in words. */
export type Reversal =
  | { readonly ok: true; readonly of: Edit; readonly parts: Edit['parts'] }
  | { readonly ok: false; readonly problem: string };

/** The sitting after an edit: what touches a document that an undone edit touched leaves nothing to do again there. */
export function afterEdit(sitting: Sitting, edit: Edit): Sitting {
  if (edit.undoes !== undefined) {
    const done = sitting.done.filter((earlier) => earlier.edit !== edit.undoes);
    return { done, undone: [...sitting.undone, edit] };
  }
  if (edit.redoes !== undefined) {
    const undone = sitting.undone.filter((earlier) => earlier.undoes !== edit.redoes);
    return { done: [...sitting.done, edit], undone };
  }
  const undone = sitting.undone.filter(
    (earlier) => !edit.parts.some((part) => touches(earlier, part.document)),
  );
  return { done: [...sitting.done, edit], undone };
}

function touches(edit: Edit, name: DocumentName): boolean {
  return edit.parts.some((part) => documentKey(part.document) === documentKey(name));
}

type Get = (name: DocumentName) => Document | undefined;

/**
 * How to take back this sitting's latest edit, of whatever document. What was edited outside is no one's deed here: it is taken back only
 * while its document is in hand.
 */
export function reversalOfLast(sitting: Sitting, inHand: DocumentName | undefined, get: Get): Reversal {
  const last = sitting.done.findLast(
    (edit) => !isOutside(edit, get) || (inHand !== undefined && touches(edit, inHand)),
  );
  return last === undefined
    ? { ok: false, problem: 'nothing of this sitting is left to undo' }
    : reversal(last, get);
}

function isOutside(edit: Edit, get: Get): boolean {
  return edit.parts.some((part) => entryOf(get(part.document), edit.edit)?.outside === true);
}

/** How to do the latest undone edit again, of whatever document. */
export function repetitionOfLast(sitting: Sitting, get: Get): Reversal {
  const last = sitting.undone.at(-1);
  return last === undefined
    ? { ok: false, problem: 'nothing was undone since the last edit' }
    : reversal(last, get);
}

function reversal(edit: Edit, get: Get): Reversal {
  const parts: { document: DocumentName; changes: Edit['parts'][number]['changes'] }[] = [];
  for (const { document: name } of edit.parts) {
    const document = get(name);
    const entry = entryOf(document, edit.edit);
    if (document === undefined || entry === undefined)
      return { ok: false, problem: `"${edit.what}" is no longer in ${name.id}` };
    const reason = hindrance(document, entry);
    if (reason !== undefined) return { ok: false, problem: `"${edit.what}" can't be taken back: ${reason}` };
    parts.push({ document: name, changes: inverse(entry.changes) });
  }
  return { ok: true, of: edit, parts };
}

function entryOf(document: Document | undefined, edit: Id): Document['history'][number] | undefined {
  return document?.history.findLast((entry) => entry.edit === edit);
}
