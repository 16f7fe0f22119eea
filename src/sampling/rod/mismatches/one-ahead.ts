import type { Bag } from '../../../hole/bags.ts';
import { freeOfKind, layWith, type MismatchKind, type Situation, spoiled, traceOf } from '../mismatch.ts';
import { amendedBags, holding, openings, primariesBefore, withDuplicates } from './shift.ts';

/** The stream was a number ahead before this rod began: a number of the rod before was passed over and nobody saw it. */
export const oneAhead: MismatchKind = {
  code: 'one-ahead',
  name: 'the stream is one ahead',
  happened: 'The bags were a number ahead before this rod began: the rod before passed one over.',
  ground:
    'Look through the bags of the rod before for the number left out. Cut the empty calico up: that number is spoiled.',
  nearSplitter: false,
  suppose: (situation) => {
    const before = primariesBefore(situation);
    const last = before.at(-1);
    const extra = freeOfKind(situation, (kind) => kind === 'primary')[0];
    if (last === undefined || extra === undefined) return [];
    const added = {
      ...holding({ ...last, number: extra }, last),
      reason: 'the rod before passed a number over',
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
        trace: traceOf(situation.sampling, lying),
        fix: { issue: [added, ...laid], amend },
        weight: 0.6 / before.length,
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
