/** What a path is and how to tell it from another: size in bytes, time of change, device and inode (as text: they pass 2^53). */
export interface FileFacts {
  readonly kind: 'file' | 'folder' | 'link' | 'other';
  readonly size: number;
  readonly changedMs: number;
  readonly device: string;
  readonly inode: string;
}

/** A file open for writing from its end on. */
export interface OpenFile {
  /** Writes bytes after those written before; gives the count taken, which can be less than was asked. */
  write(bytes: Uint8Array): Promise<number>;
  /** Waits until every byte written is on the medium. */
  sync(): Promise<void>;
  close(): Promise<void>;
}

/**
 * The disk as offsider uses it. Nothing that exists is ever opened for writing: a file is made, filled, synced and
 * renamed into place, or it is a journal that its maker alone appends to. Every call rejects with an error that has a
 * `code` (`ENOENT`, `ENOSPC`, …).
 */
export interface Disk {
  /** Makes a file that must not exist (EEXIST where it does) and opens it for writing. */
  create(path: string): Promise<OpenFile>;
  /** The bytes of a regular file. Refused (`LINK`, `NOTAFILE`, `TOOLARGE`): anything else, and more than `most` bytes (64 MB unless given). */
  readFile(path: string, most?: number): Promise<Uint8Array>;
  /** Names in a folder, sorted. */
  list(folder: string): Promise<readonly string[]>;
  /** Makes one folder; nothing happens where it is there. */
  makeFolder(path: string): Promise<void>;
  /** Facts of the path itself, a link not followed. */
  facts(path: string): Promise<FileFacts>;
  /** The path with every link followed. */
  realPath(path: string): Promise<string>;
  /** Puts a file under another name, over whatever has it. */
  rename(from: string, to: string): Promise<void>;
  unlink(path: string): Promise<void>;
  /** Waits until the names in a folder are on the medium. */
  syncFolder(path: string): Promise<void>;
  /**
   * Calls back after anything changed in a folder, where the disk can tell (a network share often can't); gives the way to end that. Keeps no
   * program alive. What did change is for the caller to look at.
   */
  watch?(folder: string, changed: () => void): () => void;
}

/** Most bytes that are read of a file where no one gives a smaller number. */
export const MOST_BYTES = 64 * 1024 * 1024;

/** Codes of our own, for what a disk would give and is not taken: no platform has codes of these names. */
const GUARDED = ['LINK', 'NOTAFILE', 'TOOLARGE'] as const;
type OurCode = (typeof GUARDED)[number] | 'EEXIST' | 'EISDIR' | 'ENOENT' | 'MAYNOTREAD';

/** An error of the disk with a code, as the platform makes them. */
export function diskRefusal(code: OurCode): Error {
  return Object.assign(new Error(WORDS[code]), { code });
}

/** The same error; where reading was not allowed, one that says so: the platform's code is the same as for writing. */
export function asReading(error: unknown): unknown {
  const code = errorCode(error);
  return code === 'EACCES' || code === 'EPERM' ? diskRefusal('MAYNOTREAD') : error;
}

/** True for the refusal of what is there and is not read: no file, a link, or one that is too large. */
export function isGuarded(error: unknown): boolean {
  const code = errorCode(error);
  return code === 'EISDIR' || GUARDED.some((each) => each === code);
}

/** The code of a disk's error (`ENOSPC`), or undefined for an error of another kind. */
export function errorCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}

const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EROFS: 'the disk can only be read',
  EACCES: 'this user may not write there',
  EPERM: 'this user may not write there, or another program holds it',
  MAYNOTREAD: 'this user may not read it',
  EBUSY: 'another program holds the file',
  ENOENT: 'the file or its folder is not there',
  ENOTDIR: 'there is a file where a folder should be',
  EEXIST: 'a file of that name is already there',
  EISDIR: 'there is a folder where a file should be',
  EIO: 'the disk reports a fault',
  ENODEV: 'the disk is gone',
  ENXIO: 'the disk is gone',
  EMFILE: 'too many files are open',
  EFBIG: 'the file is too large for this disk',
  ELOOP: 'links lead round in a circle',
  LINK: 'it is a link, not the file itself',
  NOTAFILE: 'it is not a file',
  TOOLARGE: 'it is larger than any file of ours',
};

/** Why the disk refused, in words. */
export function whyRefused(error: unknown): string {
  const code = errorCode(error);
  const words = code === undefined ? undefined : WORDS[code];
  if (words !== undefined) return words;
  return code ?? (error instanceof Error ? error.message : String(error));
}

/** True where an error says that a path is not there. */
export function isMissing(error: unknown): boolean {
  return errorCode(error) === 'ENOENT';
}

/** True where facts taken at two times are of the same file, not written in between. */
export function sameFile(a: FileFacts, b: FileFacts): boolean {
  return a.device === b.device && a.inode === b.inode && a.size === b.size && a.changedMs === b.changedMs;
}

/** Facts of a path; undefined where it is not there. */
export async function factsIfThere(disk: Disk, path: string): Promise<FileFacts | undefined> {
  try {
    return await disk.facts(path);
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

/** A file's bytes; undefined where it is not there. */
export async function bytesIfThere(disk: Disk, path: string, most?: number): Promise<Uint8Array | undefined> {
  try {
    return await disk.readFile(path, most);
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}
