import { rowsDown } from '../hole/hole.ts';
import { type Interval, overlaps } from '../quantity/interval.ts';
import { instantMs, parseStamp } from '../quantity/stamp.ts';
import type { Document, Entry, Id } from '../record/document.ts';
import { writersOf } from '../record/written.ts';
import type { Row } from '../value/row.ts';

/**
 * Two rows of a hole that cover the same metres, as when both copies of a merge logged them. The first is the one that was written first: a
 * copy that was taken in whole can't say which of the two was logged on this laptop, so every copy calls them the same.
 */
export interface LoggedTwice {
  /** Names the pair for as long as both are there. */
  readonly id: Id;
  readonly first: readonly [Id, Row];
  readonly second: readonly [Id, Row];
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
  const order = orderMade(hole, pairs.flat());
  return pairs.map((pair) => {
    const [first, second] = [...pair].sort(order) as [readonly [Id, Row], readonly [Id, Row]];
    const [a, b] = pair;
    const shared = { fromMm: b[1].fromMm, toMm: Math.min(a[1].toMm, b[1].toMm) } as Interval;
    return { id: `twice ${first[0]} ${second[0]}`, first, second, shared };
  });
}

/** Orders rows by when they were last written, then by id: the same in every copy that holds the same entries. */
function orderMade(
  hole: Document,
  things: readonly (readonly [Id, unknown])[],
): (a: readonly [Id, unknown], b: readonly [Id, unknown]) => number {
  const ids = [...new Set(things.map(([id]) => id))];
  const writers = writersOf(
    hole,
    ids.map((id) => ({ table: 'rows', id, value: {} })),
  );
  const written = new Map(ids.map((id, index) => [id, instantOf(writers[index])]));
  return ([a], [b]) => (written.get(a) ?? 0) - (written.get(b) ?? 0) || (a < b ? -1 : 1);
}

function instantOf(entry: Entry | undefined): number {
  const at = parseStamp(entry?.at ?? '');
  return at === undefined ? 0 : instantMs(at);
}
