import { documentsOf, headOf, holdsHead, type LetGo, type WorkLine } from '../files/journal-line.ts';
import { documentKey } from '../record/document.ts';
import { sameJson } from '../record/json.ts';
import type { PenStart } from './pen.ts';
import type { Shelf } from './shelf.ts';
import { type Base, displacedFrom, type SessionNeeds } from './state.ts';
import { startWriter } from './writer.ts';

/** What a base is made of. */
export interface BaseParts extends Pick<Base, 'folder' | 'lock' | 'replica' | 'facts' | 'spoiled'> {
  readonly needs: SessionNeeds;
  readonly shelf: Shelf;
  readonly closed: ReadonlyMap<string, string>;
  /** Documents that were let go; grows. */
  readonly letGo: readonly LetGo[];
  /** Ends of histories that files lack, by key. One that is held again, as when the later copy came, is taken out. */
  readonly lacking: Map<string, string>;
  readonly start: PenStart;
  readonly changed: () => void;
}

/** Starts writing in a folder that is locked. */
export function makeBase(parts: BaseParts): Base {
  const { needs, folder, lock, shelf, closed, letGo } = parts;
  const writer = startWriter(
    {
      disk: needs.disk,
      folder,
      displaced: (generation) => displacedFrom(needs.disk, folder, lock, generation),
      // One whose first edit is not on the medium yet is not a loss if it never gets there.
      documents: () => [
        ...new Set([
          ...shelf.keys().filter((key) => shelf.get(key)?.durable !== undefined),
          ...closed.keys(),
        ]),
      ],
      letGo: () => letGo,
      heads: () => headsOf(shelf, parts.lacking),
      isCovered: (line) => isCovered(line, shelf, closed, letGo),
      after: needs.after,
      changed: parts.changed,
    },
    parts.start,
  );
  return { folder, lock, writer, replica: parts.replica, facts: parts.facts, spoiled: parts.spoiled };
}

/** The end of every history, as it is on the medium; of one that lacks its end still that one, so that it is said until the rows come back. */
function headsOf(shelf: Shelf, lacking: Map<string, string>): Readonly<Record<string, string>> {
  const heads: Record<string, string> = {};
  for (const key of shelf.keys()) {
    const history = shelf.get(key)?.durable?.history ?? [];
    const awaited = lacking.get(key);
    if (awaited !== undefined && holdsHead(history, awaited)) lacking.delete(key);
    const head = lacking.get(key) ?? headOf(history);
    if (head !== undefined) heads[key] = head;
  }
  return heads;
}

/**
 * True where the files of all documents that a line changes hold it. One that can't be written holds nothing for sure; what there
 * was of one that was let go is kept aside, and who let it go is at the head of each generation.
 */
function isCovered(
  line: WorkLine,
  shelf: Shelf,
  closed: ReadonlyMap<string, string>,
  letGo: readonly LetGo[],
): boolean {
  if ('letGo' in line) return letGo.some((each) => each === line.letGo || sameJson(each, line.letGo));
  return documentsOf(line).every((name) => {
    const key = documentKey(name);
    const held = shelf.get(key);
    if (closed.has(key)) return false;
    if (held !== undefined) return held.snapshotSequence >= line.seq;
    return letGo.some((each) => documentKey(each.document) === key);
  });
}
