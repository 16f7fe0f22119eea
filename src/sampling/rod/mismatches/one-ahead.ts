import type { Bag } from '../../../hole/bags.ts';
import { freeOfKind, layWith, type MismatchKind, type Situation, spoiled } from '../mismatch.ts';
import { amendedBags, holding, openings, primariesBefore, withDuplicates } from './shift.ts';

/** The stream was a number ahead before this rod began: a number of the rod before was passed over and nobody saw it. */
export const oneAhead: MismatchKind = {
  code: 'one-ahead',
  name: 'the stream is one ahead',
  happened:
    'The bags were a number ahead before this rod began: a rod above passed one over, and nobody read its bags.',
  claims: ['the row began a number ahead'],
  ground:
    'Look through the bags of the rods above that nobody read for the number left out. Cut the empty calico up: that number is spoiled.',
  nearSplitter: true,
  asks: 'Which number is on the empty calico?',
  suppose: (situation) => {
    const before = primariesBefore(situation);
    const last = before.at(-1);
    const extra = freeOfKind(situation, (kind) => kind === 'primary')[0];
    if (last === undefined || extra === undefined) return [];
    const added = {
      ...holding({ ...last, number: extra }, last),
      reason: 'a rod above passed a number over',
    };
    return before.flatMap((left, index) => {
      const moved = before.slice(index + 1).map((bag, step) => holding(bag, before[index + step] ?? bag));
      const gone = { number: left.number, bag: spoiled(left.number, 'skipped') };
      const amend = [
        gone,
        ...withDuplicates(situation, moved),
        ...twinsOf(situation, left, moved[0] ?? added),
      ];
      const laid = layWith(situation, { bags: [...amendedBags(situation, amend), added] });
      return openings(laid).map((lying) => ({
        at: left.number,
        place: left.number,
        lying,
        fix: { issue: [added, ...laid], amend },
        weight: 0.1,
      }));
    });
  },
};

/** Duplicates of the number passed over: each was caught with the calico before it, or with the next one where it opens the hole. */
function twinsOf({ state }: Situation, left: Bag, next: Bag) {
  const above = state.bags.find(
    (bag) => bag.kind === 'primary' && bag.rank === left.rank && bag.toMm === left.fromMm,
  );
  const caughtWith = above ?? next;
  return state.bags
    .filter((bag) => bag.of === left.number)
    .map((bag) => ({ number: bag.number, bag: holding({ ...bag, of: caughtWith.number }, caughtWith) }));
}
