import { isTransposed } from '../../numbers/bag-number.ts';
import { type MismatchKind, writeOnLast } from '../mismatch.ts';

/** The last calico was numbered by hand with two digits the wrong way round. */
export const transposedDigits: MismatchKind = {
  code: 'transposed-digits',
  name: 'two digits the wrong way round',
  happened: 'The last bag is the right one, and two digits of its number are written the wrong way round.',
  claims: ['two digits of the last number are the wrong way round'],
  ground: 'Write the right number on the calico and on its ticket, and cross the wrong one out.',
  nearSplitter: false,
  suppose: ({ endings, seen }) => {
    const { digits } = seen;
    if (digits === undefined) return [];
    return endings
      .map((issue) => ({ issue, last: issue.at(-1)?.number ?? '' }))
      .filter(({ last }) => mayBeTransposed(last, digits))
      .map(({ issue, last }) => ({
        at: last,
        read: { last: digits },
        fix: { issue },
        ...writeOnLast(issue),
        weight: 0.5,
      }));
  },
};

/** True where the digits are the end of a number with two neighbours the wrong way round; of the two the front one may not have been read. */
function mayBeTransposed(number: string, digits: string): boolean {
  const end = number.slice(-digits.length);
  const front = number.at(-digits.length - 1) ?? '';
  return isTransposed(end, digits) || isTransposed(front + end, end.charAt(0) + digits);
}
