import { documentsOf, type LetGo, type WorkLine } from '../files/journal-line.ts';
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
      isCovered: (line) => isCovered(line, shelf, closed, letGo),
      after: needs.after,
      changed: parts.changed,
    },
    parts.start,
  );
  return { folder, lock, writer, replica: parts.replica, facts: parts.facts, spoiled: parts.spoiled };
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
