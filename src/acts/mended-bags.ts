import type { Bag } from '../hole/bags.ts';
import type { Maker } from '../hole/commands/made.ts';
import { holeNouns, holeThings } from '../hole/hole.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import type { RodThing } from '../standing/mismatches.ts';

/** A rod with the bags that it is to hold. */
export interface Laid {
  readonly rod: RodThing;
  readonly bags: readonly Bag[];
}

/** A rod's bags as they are to be: those that were there under the same number are amended, others put, and what no rod has any more removed. */
export function rodBagChanges(
  hole: Document,
  rod: RodThing,
  bags: readonly Bag[],
  laid: readonly Laid[],
  maker: Maker,
): readonly Change[] {
  const all = holeThings(hole, 'bags');
  const wanted = new Set(laid.flatMap((each) => each.bags).map((bag) => bag.number));
  const gone = all.filter(([, bag]) => bag.rod === rod[0] && bag.byHand !== true && !wanted.has(bag.number));
  return [
    ...gone.map(([id]): Change => ({ remove: ['bags', id] })),
    ...bags.map((bag): Change => {
      const there = all.find(([, each]) => each.number === bag.number);
      const thing = { ...bag, rod: rod[0] } as Thing;
      if (there === undefined) return { put: ['bags', maker.newId()], thing };
      const unset = Object.keys(there[1]).filter((field) => !(field in thing));
      return { patch: ['bags', there[0]], set: thing, ...(unset.length === 0 ? {} : { unset }) };
    }),
  ];
}

/** Duplicates that were placed by hand stay those of their metre, whatever number its primary has now; undefined where one has no primary left. */
export function duplicatesFollow(hole: Document, laid: readonly Laid[]): readonly Change[] | undefined {
  const rods = new Set(laid.map(({ rod }) => rod[0]));
  const primaries = laid.flatMap(({ bags }) => bags).filter(({ kind }) => kind === 'primary');
  const before = new Set(
    holeNouns(hole, 'bags').flatMap((bag) => (rods.has(bag.rod ?? '') ? [bag.number] : [])),
  );
  const changes: Change[] = [];
  for (const [id, bag] of holeThings(hole, 'bags')) {
    if (bag.of === undefined || !before.has(bag.of) || (rods.has(bag.rod ?? '') && bag.byHand !== true))
      continue;
    const primary = primaries.find(({ fromMm, toMm }) => fromMm === bag.fromMm && toMm === bag.toMm);
    if (primary === undefined) return undefined;
    if (primary.number !== bag.of) changes.push({ patch: ['bags', id], set: { of: primary.number } });
  }
  return changes;
}

/** The rod with what it holds now: nothing of it waits to be mended. */
export function rodChange([id]: RodThing, bags: readonly Bag[], mismatch: string, depthMm?: number): Change {
  const filled = bags.filter((bag) => bag.kind !== 'spoiled');
  const last = filled.at(-1)?.number;
  return {
    patch: ['rods', id],
    set: {
      mismatch,
      bags: filled.length,
      read: true,
      ...(last === undefined ? {} : { lastBag: last }),
      ...(depthMm === undefined ? {} : { depthMm }),
    },
    unset: ['unmended'],
  };
}
