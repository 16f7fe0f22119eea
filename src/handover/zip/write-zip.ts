import { deflateSync } from 'fflate';
import { crc32 } from '../../record/crc32.ts';
import { centralHeader, dosTimeOf, endRecord, localHeader } from './layout.ts';

/** One file in an archive. */
export interface ZipEntry {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * An archive of files in the order given, each dated by the wall clock of a stamp. The same files and stamp give the same bytes on
 * every machine, which the deflate built into Node does not promise. Names are ASCII, sizes below 4 GB.
 */
export function writeZip(entries: readonly ZipEntry[], at: string): Uint8Array {
  const dosTime = dosTimeOf(at);
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let offset = 0;
  for (const { name, bytes } of entries) {
    const packed = deflateSync(bytes, { level: 9, mem: 8 });
    const header = { name, crc: crc32(bytes), packedBytes: packed.length, bytes: bytes.length, dosTime };
    const local = localHeader(header);
    directory.push(centralHeader(header, offset));
    parts.push(local, packed);
    offset += local.length + packed.length;
  }
  const directoryBytes = directory.reduce((sum, each) => sum + each.length, 0);
  return joined([...parts, ...directory, endRecord(entries.length, directoryBytes, offset)]);
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, each) => sum + each.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
