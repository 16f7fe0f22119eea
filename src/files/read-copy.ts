import { type Result, refused } from '../finding/finding.ts';
import type { Document } from '../record/document.ts';
import { identifierFault } from '../record/identifiers.ts';
import { DOCUMENT_KINDS, readDocumentFile } from './document-file.ts';
import { wrongShape } from './findings.ts';
import { DOCUMENT_LIMITS, readJsonText } from './read-json.ts';

const FOLDERS = Object.values(DOCUMENT_KINDS)
  .map((kind) => kind.folder)
  .join(', ');

/**
 * Reads another copy of a document from the bytes that arrived, by themselves or inside something else; `file` is what findings
 * call them. It goes by the name that it says, not by that of the file it came in. Refused as a file of the project would be.
 */
export function copyIn(bytes: Uint8Array, file: string): Result<Document> {
  const json = readJsonText(bytes, file, DOCUMENT_LIMITS);
  if (!json.ok) return json;
  const { kind, id } = (json.value.value ?? {}) as { readonly kind?: unknown; readonly id?: unknown };
  if (
    typeof kind !== 'string' ||
    typeof id !== 'string' ||
    !Object.hasOwn(DOCUMENT_KINDS, kind) ||
    identifierFault(id) !== undefined
  ) {
    return refused(
      wrongShape.at(
        { file },
        {
          problem: 'it is not a hole, shift, dispatch or results of offsider',
          remedy: `Take in files of the folders ${FOLDERS} of a project. Nothing was changed.`,
        },
      ),
    );
  }
  const stored = readDocumentFile(json.value, { kind, id });
  return stored.ok ? { ok: true, value: stored.value.document } : stored;
}
