import { documentPath } from '../files/document-file.ts';
import { missingFile, rolledBack } from '../files/findings.ts';
import { linesByDocument } from '../files/fold.ts';
import type { WorkLine } from '../files/journal-line.ts';
import { type DocumentName, documentKey } from '../record/document.ts';
import type { State } from './state.ts';

/** What the journal still holds of a document whose file is gone. */
export function linesOfMissing(state: State, name: DocumentName): readonly WorkLine[] {
  return linesByDocument(state.base.writer.unfiled()).get(documentKey(name)) ?? [];
}

/** From here on the document is one like the others, or none at all: what was found of it is settled. */
export function noLongerMissing(state: State, name: DocumentName): void {
  state.closed.delete(documentKey(name));
  const file = documentPath(name);
  state.findings = state.findings.filter(
    ({ code, place }) => (code !== missingFile.code && code !== rolledBack.code) || place.file !== file,
  );
}
