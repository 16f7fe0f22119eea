import { basename, dirname } from 'node:path';
import type { Disk } from '../../files/disk.ts';
import { copyIn } from '../../files/read-copy.ts';
import { readProjectFile } from '../../files/read-file.ts';
import { DOCUMENT_LIMITS } from '../../files/read-json.ts';
import { ok, type Result } from '../../finding/finding.ts';
import { looksLikeBundle } from '../../handover/bundle/open-bundle.ts';
import type { Arrival, Home } from './arrival.ts';
import { fromArchive } from './from-archive.ts';
import { fromMail } from './from-mail.ts';

/**
 * Reads what arrived in a file, on a stick or by mail: a bundle, a saved mail, or a document by itself. It is told by what is in it, a
 * mail by its ending. Nothing is written; refused with every reason.
 */
export async function readArrival(disk: Disk, path: string, home: Home): Promise<Result<Arrival>> {
  const file = basename(path);
  const bytes = await readProjectFile(disk, dirname(path), file, DOCUMENT_LIMITS);
  return bytes.ok ? arrivalIn(bytes.value, file, home) : bytes;
}

/** The same of bytes; `file` is what findings call them. */
export async function arrivalIn(bytes: Uint8Array, file: string, home: Home): Promise<Result<Arrival>> {
  if (/\.(eml|msg)$/i.test(file)) return fromMail(bytes, file, home);
  if (looksLikeBundle(bytes)) return fromArchive(bytes, file, home);
  const copy = copyIn(bytes, file);
  return copy.ok ? ok({ documents: [{ from: file, document: copy.value }], left: [] }) : copy;
}
