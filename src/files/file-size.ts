import type { Finding } from '../finding/finding.ts';
import type { DocumentName } from '../record/document.ts';
import { documentPath } from './document-file.ts';
import { fileNearsLimit, fileNotWritten } from './findings.ts';
import { DOCUMENT_LIMITS } from './read-json.ts';

const MEGABYTE = 1024 * 1024;

/** Two thirds of what is read again: a hole of 2,000 m with every row amended makes 4 MB, so that days are left to go on elsewhere. */
const NEAR_BYTES = (DOCUMENT_LIMITS.bytes / 3) * 2;

/** Said of a file that nears what can be read again; undefined of a smaller one. */
export function nearsLimit(name: DocumentName, bytes: number): Finding | undefined {
  if (bytes < NEAR_BYTES) return undefined;
  return fileNearsLimit.at(placeOf(name), {
    problem: `its file is ${Math.floor(bytes / MEGABYTE)} MB; at ${DOCUMENT_LIMITS.bytes / MEGABYTE} MB it can't be read again`,
    remedy: goOn(name),
  });
}

/** Said of a file of so many bytes that it could not be read again; undefined of a smaller one. */
export function tooLarge(name: DocumentName, bytes: number): Finding | undefined {
  if (bytes <= DOCUMENT_LIMITS.bytes) return undefined;
  return fileNotWritten.at(placeOf(name), {
    problem: `its file would be ${Math.ceil(bytes / MEGABYTE)} MB, and over ${DOCUMENT_LIMITS.bytes / MEGABYTE} MB can't be read again: it is not written. All rows are safe in the journal`,
    remedy: `Don't move or delete the journal folder. ${goOn(name)}`,
  });
}

const placeOf = (name: DocumentName) => ({
  file: documentPath(name),
  ...(name.kind === 'hole' ? { hole: name.id } : {}),
});

/** The history is what fills a file, and it is never cut. */
function goOn({ kind }: DocumentName): string {
  const next =
    kind === 'hole'
      ? 'make another hole that starts at this depth (n on the list of holes) and log on there'
      : `begin another ${kind} and go on there`;
  return `Take in no more copies of it than needed, and change no long ranges. Copy the whole project folder to a stick, then ${next}.`;
}
