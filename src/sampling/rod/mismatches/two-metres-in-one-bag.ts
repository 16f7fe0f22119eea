import { formatInterval, type Interval } from '../../../quantity/interval.ts';
import { isCovered } from '../../stream/no-sample.ts';
import { layWith, type MismatchKind } from '../mismatch.ts';

/** A calico left on the chute for two metres. */
export const twoMetresInOneBag: MismatchKind = {
  code: 'two-metres-in-one-bag',
  name: 'two metres in one bag',
  happened: 'A bag was left on for two metres, and the next bags carry on with the numbers.',
  claims: ['a bag holds two metres', 'no number was passed over'],
  ground:
    'Find the heavy calico. Keep it as a sample of both metres, or mark it spoiled and spear the two piles into new bags.',
  nearSplitter: false,
  asks: 'Which two metres are in the heavy calico?',
  suppose: (situation) => {
    const { samples, state } = situation;
    const isEmpty = (each: Interval) => isCovered(each, state.noReturn ?? []);
    return samples.slice(1).flatMap((lower, index) => {
      const upper = samples[index] ?? lower;
      // Nothing came up of one of them: it is in no bag.
      if (isEmpty(upper) || isEmpty(lower)) return [];
      const both = { fromMm: upper.fromMm, toMm: lower.toMm };
      const issue = layWith(situation, {}, [...samples.slice(0, index), both, ...samples.slice(index + 2)]);
      return {
        at: formatInterval(both),
        place: both,
        fix: { issue },
        weight: 2 / samples.length,
      };
    });
  },
};
