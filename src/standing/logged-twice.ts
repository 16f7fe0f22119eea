import { rowsDown } from '../hole/hole.ts';
import { type Interval, overlaps } from '../quantity/interval.ts';
import { isMerge } from '../record/ancestry.ts';
import type { Document, Id } from '../record/document.ts';
import type { Row } from '../value/row.ts';

/** Two rows of a hole that cover the same metres, as when both copies of a merge logged them. Theirs is the one that a merge brought. */
export interface LoggedTwice {
  /** Names the pair for as long as both stand. */
  readonly id: Id;
  readonly ours: readonly [Id, Row];
  readonly theirs: readonly [Id, Row];
  readonly shared: Interval;
}

/** Every pair of rows that cover the same metres, from the top down: no merge can tell which is right, and no entry makes them. */
export function rowsLoggedTwice(hole: Document): readonly LoggedTwice[] {
  const down = rowsDown(hole);
  const pairs: (readonly [readonly [Id, Row], readonly [Id, Row]])[] = [];
  for (const [index, upper] of down.entries())
    for (let next = index + 1; next < down.length; next += 1) {
      const lower = down[next] as readonly [Id, Row];
      if (lower[1].fromMm >= upper[1].toMm) break;
      if (overlaps(upper[1], lower[1])) pairs.push([upper, lower]);
    }
  if (pairs.length === 0) return [];
  const brought = broughtByMerges(hole, 'rows');
  return pairs.map(([upper, lower]) => {
    const turned = brought.has(upper[0]) && !brought.has(lower[0]);
    const [ours, theirs] = turned ? [lower, upper] : [upper, lower];
    const [fromMm, toMm] = [lower[1].fromMm, Math.min(upper[1].toMm, lower[1].toMm)];
    return { id: `twice ${ours[0]} ${theirs[0]}`, ours, theirs, shared: { fromMm, toMm } as Interval };
  });
}

/** Ids of things of a table that this history got by merging another copy. */
export function broughtByMerges(hole: Document, table: 'rows' | 'rods'): ReadonlySet<Id> {
  const puts = hole.history
    .filter(isMerge)
    .flatMap((entry) => entry.changes)
    .flatMap((change) => ('put' in change && change.put[0] === table ? [change.put[1]] : []));
  return new Set(puts);
}
