/** A change of names in a folder that is not on the medium yet. A rename is one change: both names or neither. */
type NameChange =
  | { readonly set: string; readonly inode: number }
  | { readonly drop: string }
  | { readonly move: string; readonly to: string };

interface Node {
  readonly kind: 'file' | 'folder';
  /** What a power cut can't take. */
  bytes: Uint8Array;
  names: Map<string, number>;
  /** What it can: appended bytes and changes of names, in order. */
  writes: { readonly at: number; readonly bytes: Uint8Array; lost: boolean }[];
  changes: NameChange[];
  /** Counts changes, as a time of change does. */
  version: number;
}

/** A disk's platter and the cache before it: everything by inode; inode 1 is the top folder. */
export interface Medium {
  readonly nodes: Map<number, Node>;
  next: number;
}

/** Says for each unsynced piece, in order, whether a power cut leaves it, drops it, or (bytes only) leaves its first part. */
export type Choice = (piece: number, pieces: number) => 'keep' | 'drop' | number;

const node = (kind: Node['kind']): Node => ({
  kind,
  bytes: new Uint8Array(),
  names: new Map(),
  writes: [],
  changes: [],
  version: 0,
});

/** A medium with nothing on it. */
export function newMedium(): Medium {
  return { nodes: new Map([[1, node('folder')]]), next: 2 };
}

/** Adds an inode. */
export function newNode(medium: Medium, kind: Node['kind']): number {
  const inode = medium.next;
  medium.next += 1;
  medium.nodes.set(inode, node(kind));
  return inode;
}

/** The inode's node; every inode that a name leads to is there. */
export function nodeOf(medium: Medium, inode: number): Node {
  const found = medium.nodes.get(inode);
  if (found === undefined) throw new Error(`no inode ${inode}`);
  return found;
}

/** A file's bytes as programs see them. */
export function bytesSeen(file: Node): Uint8Array {
  return laidOver(file.bytes, file.writes);
}

/** A folder's names as programs see them. */
export function namesSeen(folder: Node): ReadonlyMap<string, number> {
  return changed(folder.names, folder.changes);
}

function laidOver(
  bytes: Uint8Array,
  writes: readonly { readonly at: number; readonly bytes: Uint8Array }[],
): Uint8Array {
  const length = Math.max(bytes.length, ...writes.map((write) => write.at + write.bytes.length));
  if (length === bytes.length && writes.length === 0) return bytes;
  const result = new Uint8Array(length);
  result.set(bytes);
  for (const write of writes) result.set(write.bytes, write.at);
  return result;
}

function changed(names: ReadonlyMap<string, number>, changes: readonly NameChange[]): Map<string, number> {
  const result = new Map(names);
  for (const change of changes) {
    if ('set' in change) result.set(change.set, change.inode);
    else if ('drop' in change) result.delete(change.drop);
    else {
      const inode = result.get(change.move);
      // The name it moves from can be one whose making the power cut took: then there is nothing to move.
      if (inode === undefined) continue;
      result.delete(change.move);
      result.set(change.to, inode);
    }
  }
  return result;
}

/** Puts a file's cached bytes on the platter. Those of a write that was lost stay seen and never get there. */
export function syncFile(file: Node): void {
  const arrived = file.writes.filter((write) => !write.lost);
  file.bytes = laidOver(file.bytes, arrived);
  file.writes = file.writes.filter((write) => write.lost);
}

/** Puts a folder's names on the platter. */
export function syncNames(folder: Node): void {
  folder.names = changed(folder.names, folder.changes);
  folder.changes = [];
}

/** How many pieces a power cut could take now. */
export function piecesAtRisk(medium: Medium): number {
  return [...medium.nodes.values()].reduce((sum, each) => sum + each.writes.length + each.changes.length, 0);
}

/** What is on the platter after a power cut that treats each unsynced piece as chosen. */
export function afterPowerCut(medium: Medium, choose: Choice): Medium {
  const pieces = piecesAtRisk(medium);
  let piece = 0;
  const nodes = new Map<number, Node>();
  for (const [inode, each] of medium.nodes) {
    const writes = each.writes.flatMap((write) => {
      const fate = choose(piece, pieces);
      piece += 1;
      if (fate === 'drop' || write.lost) return [];
      return fate === 'keep'
        ? [write]
        : [{ ...write, bytes: write.bytes.subarray(0, Math.floor(write.bytes.length * fate)) }];
    });
    const changes = each.changes.filter(() => {
      const fate = choose(piece, pieces);
      piece += 1;
      return fate !== 'drop';
    });
    nodes.set(inode, {
      ...node(each.kind),
      bytes: laidOver(each.bytes, writes),
      names: changed(each.names, changes),
      version: each.version,
    });
  }
  return { nodes, next: medium.next };
}

/** What another program finds after this one was killed: everything written, synced or not. */
export function afterKill(medium: Medium): Medium {
  const nodes = new Map<number, Node>();
  for (const [inode, each] of medium.nodes) {
    nodes.set(inode, {
      ...each,
      names: new Map(each.names),
      writes: each.writes.map((write) => ({ ...write })),
      changes: [...each.changes],
    });
  }
  return { nodes, next: medium.next };
}
