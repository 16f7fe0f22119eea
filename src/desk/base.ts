import { documentsOf, type WorkLine } from '../files/journal-line.ts';
import { documentKey } from '../record/document.ts';
import type { PenStart } from './pen.ts';
import type { Shelf } from './shelf.ts';
import { type Base, displacedFrom, type SessionNeeds } from './state.ts';
import { startWriter } from './writer.ts';

/** What a base is made of. */
export interface BaseParts extends Pick<Base, 'folder' | 'lock' | 'replica' | 'facts' | 'spoiled'> {
  readonly needs: SessionNeeds;
  readonly shelf: Shelf;
  readonly closed: ReadonlyMap<string, string>;
  readonly start: PenStart;
  readonly changed: () => void;
}

/** Starts writing in a folder that is locked. */
export function makeBase(parts: BaseParts): Base {
  const { needs, folder, lock, shelf, closed } = parts;
  const writer = startWriter(
    {
      disk: needs.disk,
      folder,
      displaced: (generation) => displacedFrom(needs.disk, folder, lock, generation),
      // One whose first edit is not on the medium yet is no loss if it never gets there.
      documents: () => [
        ...new Set([
          ...shelf.keys().filter((key) => shelf.get(key)?.durable !== undefined),
          ...closed.keys(),
        ]),
      ],
      isCovered: (line) => isCovered(line, shelf, closed),
      after: needs.after,
      changed: parts.changed,
    },
    parts.start,
  );
  return { folder, lock, writer, replica: parts.replica, facts: parts.facts, spoiled: parts.spoiled };
}

/** True where the files of all documents that a line changes hold it. One that can't be written holds nothing for sure. */
function isCovered(line: WorkLine, shelf: Shelf, closed: ReadonlyMap<string, string>): boolean {
  return documentsOf(line).every((name) => {
    const key = documentKey(name);
    const held = shelf.get(key);
    return held !== undefined && !closed.has(key) && held.snapshotSequence >= line.seq;
  });
}
