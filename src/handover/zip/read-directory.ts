import { ok, type Result, refused } from '../../finding/finding.ts';
import {
  CENTRAL_BYTES,
  CENTRAL_MARK,
  centralHeader,
  LOCAL_BYTES,
  localHeader,
  type ZipHeader,
} from './layout.ts';
import type { ZipLimits } from './limits.ts';
import { damaged, type LookedAt, unsafe } from './looked-at.ts';
import { type ZipEnd, zipEnd } from './read-end.ts';

/** A packed entry: its header, and its packed bytes. */
export interface PackedEntry {
  readonly header: ZipHeader;
  readonly packed: Uint8Array;
}

/**
 * The entries of an archive, still packed. Only what writeZip writes is read: entries end to end from the first byte, each header made
 * again and compared byte by byte, the directory behind them, nothing after it. So no entry overlaps another, hides between them or is
 * said twice with different sizes, and nothing is inflated before all of this holds and the sizes said are within the limits.
 */
export function readDirectory(zip: LookedAt): Result<readonly PackedEntry[]> {
  const end = zipEnd(zip);
  if (!end.ok) return end;
  const entries: PackedEntry[] = [];
  const names = new Set<string>();
  let [central, local, total] = [end.value.directoryAt, 0, 0];
  for (let number = 1; number <= end.value.entries; number += 1) {
    const read = readEntry(zip, end.value, central, local);
    if (!read.ok) return read;
    const { header } = read.value;
    const folded = header.name.toLowerCase();
    if (names.has(folded)) return refused(unsafe(zip.file, 'two entries have this name', header.name));
    names.add(folded);
    total += header.bytes;
    const tooMuch = sizeFault(header, total, zip.limits);
    if (tooMuch !== undefined) return refused(unsafe(zip.file, tooMuch, header.name));
    entries.push(read.value);
    central += CENTRAL_BYTES + header.name.length;
    local += LOCAL_BYTES + header.name.length + header.packedBytes;
  }
  if (local !== end.value.directoryAt || central !== end.value.at)
    return refused(damaged(zip.file, 'it holds bytes that belong to no entry'));
  return ok(entries);
}

function readEntry(zip: LookedAt, end: ZipEnd, central: number, local: number): Result<PackedEntry> {
  const { bytes, file } = zip;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (central + CENTRAL_BYTES > end.at || view.getUint32(central, true) !== CENTRAL_MARK)
    return refused(damaged(file, 'its directory is broken off'));
  const nameBytes = bytes.subarray(
    central + CENTRAL_BYTES,
    central + CENTRAL_BYTES + view.getUint16(central + 28, true),
  );
  const name = String.fromCharCode(...nameBytes.subarray(0, 200));
  const foreign = foreignMark(view, central) ?? zip.nameFault(name);
  if (foreign !== undefined) return refused(unsafe(file, foreign, shownName(name)));
  const header: ZipHeader = {
    name,
    dosTime: view.getUint32(central + 12, true),
    crc: view.getUint32(central + 16, true),
    packedBytes: view.getUint32(central + 20, true),
    bytes: view.getUint32(central + 24, true),
  };
  if (!standsAt(bytes, central, centralHeader(header, local)))
    return refused(damaged(file, 'its record in the directory is not as offsider writes it', name));
  const packedAt = local + LOCAL_BYTES + name.length;
  if (!standsAt(bytes, local, localHeader(header)))
    return refused(damaged(file, 'its own record does not agree with the directory', name));
  if (packedAt + header.packedBytes > end.directoryAt)
    return refused(damaged(file, 'it reaches into the directory', name));
  return ok({ header, packed: bytes.subarray(packedAt, packedAt + header.packedBytes) });
}

/** What in a directory record is a matter of another program's, in words. */
function foreignMark(view: DataView, at: number): string | undefined {
  const flags = view.getUint16(at + 8, true);
  if ((flags & 0x2041) !== 0) return 'it is locked with a password';
  const attributes = view.getUint32(at + 38, true);
  if (((attributes >>> 28) & 0xf) === 0xa) return 'it is a link to another place';
  if (view.getUint16(at + 10, true) !== 8) return 'it is packed in a way that offsider does not use';
  const sizes = [view.getUint32(at + 20, true), view.getUint32(at + 24, true), view.getUint32(at + 42, true)];
  if (sizes.includes(0xffffffff)) return 'it says it is larger than 4 GB';
  if (
    flags !== 0 ||
    attributes !== 0 ||
    view.getUint16(at + 30, true) !== 0 ||
    view.getUint16(at + 32, true) !== 0
  )
    return 'it was packed by another program';
  return undefined;
}

function sizeFault({ bytes, packedBytes }: ZipHeader, total: number, limits: ZipLimits): string | undefined {
  const inMegabytes = (count: number): number => Math.ceil(count / 1024 / 1024);
  if (bytes > limits.entryBytes)
    return `it would inflate to ${inMegabytes(bytes)} MB; at most ${inMegabytes(limits.entryBytes)} MB is read`;
  if (total > limits.totalBytes)
    return `with it the archive would inflate to ${inMegabytes(total)} MB; at most ${inMegabytes(limits.totalBytes)} MB is read`;
  if (bytes > limits.smallBytes && bytes > packedBytes * limits.ratio)
    return `it would inflate to more than ${limits.ratio} times its size`;
  return undefined;
}

function standsAt(bytes: Uint8Array, at: number, wanted: Uint8Array): boolean {
  return at + wanted.length <= bytes.length && wanted.every((byte, index) => bytes[at + index] === byte);
}

/** A name as a finding quotes it: its first forty characters, each that is not printable ASCII as a question mark. */
function shownName(name: string): string {
  return `entry ${JSON.stringify(name.slice(0, 40).replaceAll(/[^\x20-\x7e]/g, '?'))}`;
}
