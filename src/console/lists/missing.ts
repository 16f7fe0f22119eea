import { documentPath } from '../../files/document-file.ts';
import { missingFile, rolledBack } from '../../files/findings.ts';
import { documentNameOf } from '../../files/list-documents.ts';
import type { DocumentName } from '../../record/document.ts';
import { nearWords } from '../../shorthand/near.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';

/** Documents whose files were found missing, and are still. */
function missingNames(state: State): readonly DocumentName[] {
  return state.found
    .filter(({ code }) => code === missingFile.code || code === rolledBack.code)
    .flatMap((finding) => documentNameOf(finding.place.file ?? '') ?? []);
}

/** True where the file is there, and older than what was saved in it. */
export function isRolledBack(state: State, document: DocumentName): boolean {
  const file = documentPath(document);
  return state.found.some(({ code, place }) => code === rolledBack.code && place.file === file);
}

/** Why there is nothing to decide; undefined where there is. */
export function whyNothingToSettle(state: State): string | undefined {
  return missingNames(state).length === 0 ? 'no file is missing' : state.readOnly;
}

/** Asks about the first file that is missing: it is the only thing found that waits for a decision. */
export function askMissing(state: State): Step {
  const [document] = missingNames(state);
  if (document === undefined) return still(state);
  return still({ ...state, prompt: { kind: 'missing', document, draft: EMPTY_DRAFT }, message: undefined });
}

/** `restore` makes the document again from the journal; anything else that is typed is the reason why it is let go. */
export function settleMissing(state: State, document: DocumentName, text: string): Step {
  const typed = text.trim();
  if (state.readOnly !== undefined)
    return still(saying(state, `Nothing is changed: ${state.readOnly}`, 'alert'));
  const isOlder = isRolledBack(state, document);
  if (isOlder && (typed === '' || typed.toLowerCase() === 'restore' || isNearlyRestore(typed)))
    return still(
      saying(
        state,
        typed === ''
          ? 'Type the reason to go on from this older file. Esc leaves it as it is.'
          : 'The journal holds nothing of what it lacks. Esc, then put the later file back or receive a copy; or type why this one is right.',
        'warn',
      ),
    );
  if (typed === '')
    return still(saying(state, 'Type restore, or the reason to give it up. Esc leaves it missing.', 'warn'));
  if (isNearlyRestore(typed))
    return still(
      saying(state, `"${typed}": type restore to restore it, or say more of why it may be let go.`, 'warn'),
    );
  const after = { ...state, prompt: undefined, message: undefined };
  return typed.toLowerCase() === 'restore'
    ? [after, [{ do: 'restore', document }]]
    : [after, [{ do: 'let go', document, why: typed }]];
}

/** True of one word that was meant for restore: a letter off, cut short, or with more behind it. */
function isNearlyRestore(typed: string): boolean {
  const word = typed.toLowerCase();
  return (
    word !== 'restore' && /^\S+$/.test(word) && (/^re/.test(word) || nearWords(word, ['restore']).length > 0)
  );
}
