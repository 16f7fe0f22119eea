import { closeSync, constants, fstatSync, lstatSync, openSync, readSync, type Stats } from 'node:fs';
import { diskRefusal } from './disk.ts';

/** Room that is made at first for a file that says it is empty: some systems do not tell a size. */
const FIRST_PIECE = 4096;

// Windows has neither flag: there no link and no pipe can stand in a folder in the place of a file.
const FLAGS = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);

/**
 * The one way in which bytes of a file are read. Only a regular file is read: a link, a folder, a pipe or a device is refused before it is
 * opened, because opening a pipe waits for whoever writes to it and opening a device can move it. What was opened is checked again, in case it
 * was changed in between, and no more than `most` bytes are taken whatever size it says it has. Read at once and not through Node's thread
 * pool: a file in the system's cache takes microseconds, and the guard keeps out whatever could block.
 */
export function readRegular(path: string, most: number): Uint8Array {
  refuseOther(lstatSync(path));
  const file = openSync(path, FLAGS);
  try {
    const facts = fstatSync(file);
    refuseOther(facts);
    if (facts.size > most) throw diskRefusal('TOOLARGE');
    return readUpTo(file, facts.size, most);
  } finally {
    closeSync(file);
  }
}

function readUpTo(file: number, size: number, most: number): Uint8Array {
  // One byte more than the size, so that a file that grew meanwhile shows.
  let bytes = new Uint8Array(Math.min(most, size > 0 ? size : FIRST_PIECE) + 1);
  for (let filled = 0; ; ) {
    const count = readSync(file, bytes, filled, bytes.length - filled, null);
    if (count === 0) return bytes.subarray(0, filled);
    filled += count;
    if (filled > most) throw diskRefusal('TOOLARGE');
    if (filled < bytes.length) continue;
    const larger = new Uint8Array(Math.min(most, bytes.length * 2) + 1);
    larger.set(bytes);
    bytes = larger;
  }
}

function refuseOther(facts: Stats): void {
  if (facts.isFile()) return;
  throw diskRefusal(facts.isSymbolicLink() ? 'LINK' : facts.isDirectory() ? 'EISDIR' : 'NOTAFILE');
}
