import { ok, type Result, refused } from '../../finding/finding.ts';
import { END_BYTES, END_MARK, endRecord } from './layout.ts';
import { damaged, type LookedAt, unsafe } from './looked-at.ts';

/** Where an archive ends: the record itself, how many entries it has, and where their directory begins. */
export interface ZipEnd {
  readonly at: number;
  readonly entries: number;
  readonly directoryAt: number;
}

/** Reads the record that ends an archive: it must be its last bytes, and agree with where it is. */
export function zipEnd({ bytes, file, limits }: LookedAt): Result<ZipEnd> {
  if (bytes.length > limits.archiveBytes) {
    const megabytes = Math.ceil(bytes.length / 1024 / 1024);
    return refused(
      unsafe(file, `it is ${megabytes} MB; at most ${limits.archiveBytes / 1024 / 1024} MB is read`),
    );
  }
  const at = bytes.length - END_BYTES;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (at < 0 || view.getUint32(at, true) !== END_MARK) {
    return refused(
      hasEndBefore(view, at)
        ? unsafe(file, 'there is something after its end')
        : damaged(file, 'it has no end: it was cut off on the way, or it is not an archive'),
    );
  }
  const entries = view.getUint16(at + 8, true);
  const directoryBytes = view.getUint32(at + 12, true);
  const directoryAt = view.getUint32(at + 16, true);
  if (entries === 0xffff || directoryBytes === 0xffffffff || directoryAt === 0xffffffff)
    return refused(unsafe(file, 'it says it is larger than 4 GB'));
  if (entries > limits.entries)
    return refused(unsafe(file, `it has ${entries} entries; at most ${limits.entries} are read`));
  const expected = endRecord(entries, directoryBytes, directoryAt);
  if (!expected.every((byte, index) => bytes[at + index] === byte) || directoryAt + directoryBytes !== at)
    return refused(damaged(file, 'its end does not agree with what comes before it'));
  return ok({ at, entries, directoryAt });
}

/** True where an end record stands in the last 64 KB, which is as far as a comment behind it can reach. */
function hasEndBefore(view: DataView, last: number): boolean {
  for (let at = last; at >= 0 && at > last - 0xffff; at -= 1)
    if (view.getUint32(at, true) === END_MARK) return true;
  return false;
}
