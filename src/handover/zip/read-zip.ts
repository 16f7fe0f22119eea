import { ok, type Result, refused } from '../../finding/finding.ts';
import { crc32 } from '../../record/crc32.ts';
import { damaged, type LookedAt } from './looked-at.ts';
import { readDirectory } from './read-directory.ts';
import type { ZipEntry } from './write-zip.ts';

/** What an archive holds: its files, each with the date that its header says. */
export type UnpackedEntry = ZipEntry & { readonly dosTime: number };

/**
 * The files of an archive that writeZip wrote, all of them or none. Nothing is inflated past the size that its header says, and no
 * header is believed that says more than the limits allow. Refused with the entry and the reason.
 */
export function readZip(zip: LookedAt): Result<readonly UnpackedEntry[]> {
  const directory = readDirectory(zip);
  if (!directory.ok) return directory;
  const entries: UnpackedEntry[] = [];
  for (const { header, packed } of directory.value) {
    const bytes = zip.inflate(packed, header.bytes);
    if (bytes === undefined || crc32(bytes) !== header.crc)
      return refused(
        damaged(zip.file, 'it was damaged on the way: its bytes are not what they were', header.name),
      );
    entries.push({ name: header.name, bytes, dosTime: header.dosTime });
  }
  return ok(entries);
}
