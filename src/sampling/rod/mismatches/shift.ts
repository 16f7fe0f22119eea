import type { Bag } from '../../../hole/bags.ts';
import type { Situation } from '../mismatch.ts';

/** Rods above this one that are thought of where no one read them: further up no one finds a calico any more. */
const MOST_RODS = 4;

/**
 * The primaries that a slip seen only now can have happened at, from the top down: of the rods above that no one read, back to one that was
 * read and agreed. Where no record of reading is kept, those of the rod before; where no rod is, the last one alone.
 */
export function primariesBefore({ sampling, state }: Situation): readonly Bag[] {
  const primaries = state.bags
    .filter(
      (bag) => bag.kind === 'primary' && bag.byHand !== true && (bag.rank ?? sampling.rank) === sampling.rank,
    )
    .sort((a, b) => (a.toMm ?? 0) - (b.toMm ?? 0));
  const rods = [...new Set(primaries.map((bag) => bag.rod))];
  if (rods.at(-1) === undefined) return primaries.slice(-1);
  const { readMm } = state;
  const near = new Set(rods.slice(readMm === undefined ? -1 : -MOST_RODS));
  return primaries.filter((bag) => near.has(bag.rod) && (bag.toMm ?? 0) > (readMm ?? -1));
}

/** A bag with the metre of another one in it. */
export function holding(
  bag: Bag,
  other: { readonly fromMm?: Bag['fromMm']; readonly toMm?: Bag['toMm'] },
): Bag {
  const { fromMm: _from, toMm: _to, ...rest } = bag;
  if (other.fromMm === undefined || other.toMm === undefined) return rest;
  return { ...rest, fromMm: other.fromMm, toMm: other.toMm };
}

/** Bags that repeat an amended primary hold its new metre too. */
export function withDuplicates(
  situation: Situation,
  amended: readonly Bag[],
): readonly { number: string; bag: Bag }[] {
  const byNumber = new Map(amended.map((bag) => [bag.number, bag]));
  const twins = situation.state.bags.flatMap((bag) => {
    const primary = bag.of === undefined ? undefined : byNumber.get(bag.of);
    return primary === undefined ? [] : [holding(bag, primary)];
  });
  return [...amended, ...twins].map((bag) => ({ number: bag.number, bag }));
}

/** The record with some of its bags amended. */
export function amendedBags(
  { state }: Situation,
  amend: readonly { readonly number: string; readonly bag: Bag }[],
): readonly Bag[] {
  const byNumber = new Map(amend.map((each) => [each.number, each.bag]));
  return state.bags.map((bag) => byNumber.get(bag.number) ?? bag);
}

/** Bags of a rod as they may lie: controls that open it belong to it or to the end of the rod before. */
export function openings(bags: readonly Bag[]): readonly (readonly Bag[])[] {
  const plain = bags.findIndex((bag) => bag.kind === 'primary');
  return Array.from({ length: Math.max(plain, 0) + 1 }, (_, cut) => bags.slice(cut));
}
