import type { Bag } from '../../../hole/bags.ts';
import type { Situation } from '../mismatch.ts';

/** The primaries of the rod before, from the top down: those that the last bag's rod done issued, else the last one alone. */
export function primariesBefore({ sampling, state }: Situation): readonly Bag[] {
  const primaries = state.bags
    .filter((bag) => bag.kind === 'primary' && (bag.rank ?? sampling.rank) === sampling.rank)
    .sort((a, b) => (a.toMm ?? 0) - (b.toMm ?? 0));
  const rod = primaries.at(-1)?.rod;
  return rod === undefined ? primaries.slice(-1) : primaries.filter((bag) => bag.rod === rod);
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
