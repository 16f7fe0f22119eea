import {
  CUT_UP,
  freeOfKind,
  layWith,
  type MismatchKind,
  MOST_SKIPPED,
  spoiled,
  without,
} from '../mismatch.ts';

/** A numbered bag passed over: every metre has its bag, and a number is left lying. */
export const skipped: MismatchKind = {
  code: 'skipped',
  name: 'a number skipped',
  happened: 'A numbered bag was skipped, and the metres after it are in the next numbers.',
  claims: ['a number was passed over'],
  ground: 'Find the empty calico with the number left out and cut it up: that number is spoiled.',
  nearSplitter: true,
  asks: 'Which number is on the empty calico?',
  suppose: (situation) => {
    const primaries = freeOfKind(situation, (kind) => kind === 'primary');
    return [1, 2, MOST_SKIPPED].flatMap((size) =>
      situation.samples.map((_, index) => {
        const left = primaries.slice(index, index + size);
        const issue = layWith(situation, without(situation, left));
        return {
          at: left.join(', '),
          ...(left[0] === undefined ? {} : { place: left[0] }),
          lying: issue,
          fix: { issue: [...left.map((number) => spoiled(number, 'skipped')), ...issue] },
          deed: CUT_UP,
          weight: 2 / situation.samples.length / size ** 2,
        };
      }),
    );
  },
};
