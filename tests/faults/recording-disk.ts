import type { Disk, OpenFile } from '../../src/files/disk.ts';
import { bytesSeen, type Medium, namesSeen, newNode, nodeOf, syncFile, syncNames } from './medium.ts';

/** What goes wrong at one operation. */
export type Fault =
  /** The program ends before it. */
  | 'kill'
  /** Half of a write happens, then the program ends. */
  | 'tear'
  /** A write takes half of its bytes and says so. */
  | 'short'
  /** It fails, nothing done. */
  | 'EIO'
  /** Half of a write happens, then it fails; nothing else that needs room works. */
  | 'ENOSPC'
  /** A sync fails and the bytes are gone, though programs still see them and the next sync succeeds. */
  | 'lost sync';

/** One operation as it was asked for: its number from 0, what, and on which path. */
export interface Operation {
  readonly number: number;
  readonly name: keyof Disk | 'write' | 'sync' | 'close';
  readonly path: string;
}

/** A disk in memory that counts every operation, can fail at any, and whose medium can be looked at after each. */
export interface RecordingDisk extends Disk {
  readonly medium: Medium;
  readonly operations: readonly Operation[];
  /** Resolves when a fault has ended the program. */
  readonly ended: Promise<void>;
}

/** The disk's own error, with the code that a platform gives. */
function diskError(code: string): Error {
  return Object.assign(new Error(code), { code });
}

const NEEDS_ROOM = new Set(['create', 'write', 'makeFolder']);

/** A disk over a medium. `fault` says what goes wrong at an operation; `after` looks on when one is done. */
export function recordingDisk(
  medium: Medium,
  fault: (operation: Operation) => Fault | undefined = () => undefined,
  after: (operation: Operation) => void = () => {},
): RecordingDisk {
  const operations: Operation[] = [];
  let dead = false;
  let end: () => void = () => {};
  const ended = new Promise<void>((resolve) => {
    end = resolve;
  });
  const never = <T>(): Promise<T> => new Promise(() => {});
  const die = <T>(): Promise<T> => {
    dead = true;
    end();
    return never();
  };

  /** Does one operation, or lets it go wrong; `half` is what is done of a write that fails midway. */
  async function operate<T>(
    name: Operation['name'],
    path: string,
    run: () => T,
    ways: { readonly half?: () => T; readonly lose?: () => void } = {},
  ): Promise<T> {
    if (dead) return never();
    await null;
    if (dead) return never();
    const operation = { number: operations.length, name, path };
    operations.push(operation);
    const wrong = fault(operation);
    if (wrong === 'kill') return die();
    if (wrong === 'tear') {
      ways.half?.();
      return die();
    }
    if (wrong === 'EIO') throw diskError('EIO');
    if (wrong === 'ENOSPC' && NEEDS_ROOM.has(name)) {
      ways.half?.();
      throw diskError('ENOSPC');
    }
    if (wrong === 'lost sync' && ways.lose !== undefined) {
      ways.lose();
      throw diskError('EIO');
    }
    const result = wrong === 'short' && ways.half !== undefined ? ways.half() : run();
    after(operation);
    return result;
  }

  return { medium, operations, ended, ...operationsOn(medium, operate) };
}

type Operate = <T>(
  name: Operation['name'],
  path: string,
  run: () => T,
  ways?: { readonly half?: () => T; readonly lose?: () => void },
) => Promise<T>;

function operationsOn(medium: Medium, operate: Operate): Disk {
  return {
    create: (path) =>
      operate('create', path, () => openFile(medium, path, make(medium, path, 'file'), operate)),
    readFile: (path) => operate('readFile', path, () => bytesSeen(file(medium, path)).slice()),
    list: (path) => operate('list', path, () => [...namesSeen(folder(medium, path)).keys()].sort()),
    makeFolder: (path) =>
      operate('makeFolder', path, () => {
        if (find(medium, path) === undefined) make(medium, path, 'folder');
      }),
    facts: (path) =>
      operate('facts', path, () => {
        const inode = find(medium, path);
        if (inode === undefined) throw diskError('ENOENT');
        const { kind, version } = nodeOf(medium, inode);
        const size = bytesSeen(nodeOf(medium, inode)).length;
        return { kind, size, changedMs: version, device: 'memory', inode: String(inode) };
      }),
    realPath: (path) => operate('realPath', path, () => path),
    rename: (from, to) =>
      operate('rename', to, () => {
        const [parent, name] = parts(from);
        const [other, newName] = parts(to);
        if (parent !== other) throw diskError('EXDEV');
        file(medium, from);
        nodeOf(medium, folderInode(medium, parent)).changes.push({ move: name, to: newName });
      }),
    unlink: (path) =>
      operate('unlink', path, () => {
        const [parent, name] = parts(path);
        file(medium, path);
        nodeOf(medium, folderInode(medium, parent)).changes.push({ drop: name });
      }),
    syncFolder: (path) => operate('syncFolder', path, () => syncNames(folder(medium, path))),
  };
}

function openFile(medium: Medium, path: string, inode: number, operate: Operate): OpenFile {
  const append = (bytes: Uint8Array): number => {
    const target = nodeOf(medium, inode);
    target.writes.push({ at: bytesSeen(target).length, bytes: bytes.slice(), lost: false });
    target.version += 1;
    return bytes.length;
  };
  return {
    write: (bytes) =>
      operate('write', path, () => append(bytes), {
        half: () => append(bytes.subarray(0, bytes.length >> 1)),
      }),
    sync: () =>
      operate('sync', path, () => syncFile(nodeOf(medium, inode)), {
        lose: () => {
          for (const write of nodeOf(medium, inode).writes) write.lost = true;
        },
      }),
    close: () => operate('close', path, () => undefined),
  };
}

/** Where the program is run with the paths of Windows, what is laid on the medium before comes with its backslashes. */
const plain = (path: string): string => path.replaceAll('\\', '/');

function parts(given: string): readonly [parent: string, name: string] {
  const path = plain(given);
  const slash = path.lastIndexOf('/');
  return [path.slice(0, slash), path.slice(slash + 1)];
}

function find(medium: Medium, path: string): number | undefined {
  let inode: number | undefined = 1;
  for (const name of plain(path)
    .split('/')
    .filter((part) => part !== '')) {
    if (inode === undefined) return undefined;
    inode = namesSeen(nodeOf(medium, inode)).get(name);
  }
  return inode;
}

function folderInode(medium: Medium, path: string): number {
  const inode = find(medium, path);
  if (inode === undefined) throw diskError('ENOENT');
  if (nodeOf(medium, inode).kind !== 'folder') throw diskError('ENOTDIR');
  return inode;
}

function folder(medium: Medium, path: string): ReturnType<typeof nodeOf> {
  return nodeOf(medium, folderInode(medium, path));
}

function file(medium: Medium, path: string): ReturnType<typeof nodeOf> {
  const inode = find(medium, path);
  if (inode === undefined) throw diskError('ENOENT');
  const found = nodeOf(medium, inode);
  if (found.kind !== 'file') throw diskError('EISDIR');
  return found;
}

function make(medium: Medium, path: string, kind: 'file' | 'folder'): number {
  const [parent, name] = parts(path);
  if (find(medium, path) !== undefined) throw diskError('EEXIST');
  const parentNode = nodeOf(medium, folderInode(medium, parent));
  const inode = newNode(medium, kind);
  parentNode.changes.push({ set: name, inode });
  return inode;
}
