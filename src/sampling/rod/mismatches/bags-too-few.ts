import { formatInterval } from '../../../quantity/interval.ts';
import { layWith, type MismatchKind } from '../mismatch.ts';

/** Most samples in a row that are supposed to have been let go by. */
const MOST_MISSED = 3;

/** Five bags in a rod of six, or fewer: metres went by without a bag under the chute. */
export const bagsTooFew: MismatchKind = {
  code: 'bags-too-few',
  name: 'too few bags',
  happened: 'A metre, or more, went by without a bag, and the next bags carry on with the numbers.',
  claims: ['a metre has no bag', 'no number was passed over'],
  ground:
    'Find each pile without a calico. Spear it into a new bag (;bag 46-47 and its number), or leave its metre without a sample.',
  nearSplitter: false,
  asks: 'Which pile has no calico beside it?',
  suppose: (situation) => {
    const { samples, seen } = situation;
    const missed = seen.count === undefined ? MOST_MISSED : situation.expected.length - seen.count;
    return Array.from({ length: Math.min(MOST_MISSED, Math.max(1, missed)) }, (_, less) => less + 1).flatMap(
      (size) =>
        samples.slice(0, samples.length - size + 1).map((top, start) => {
          const gone = samples.slice(start, start + size);
          const issue = layWith(situation, {}, [...samples.slice(0, start), ...samples.slice(start + size)]);
          return {
            at: gone.map(formatInterval).join(', '),
            place: { fromMm: top.fromMm, toMm: (gone.at(-1) ?? top).toMm },
            fix: { issue, unsampled: gone.map((each) => ({ ...each, reason: 'no bag was filled' })) },
            weight: 3 / samples.length / size ** 2,
          };
        }),
    );
  },
};
