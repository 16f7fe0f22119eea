import { isTransposed } from '../bag-number.ts';
import type { MismatchKind } from '../mismatch.ts';

/** The last calico was numbered by hand with two digits the wrong way round. */
export const transposedDigits: MismatchKind = {
  code: 'transposed-digits',
  name: 'two digits the wrong way round',
  happened: 'The last bag is the right one, and two digits of its number are written the wrong way round.',
  ground: 'Write the right number on the calico and on its ticket, and cross the wrong one out.',
  nearSplitter: false,
  suppose: ({ expected, seen }) => {
    const last = expected.at(-1)?.number;
    if (last === undefined || seen.digits === undefined) return [];
    if (!isTransposed(last.slice(-seen.digits.length), seen.digits)) return [];
    return [
      {
        at: last,
        trace: { last: seen.digits, count: expected.length },
        fix: { issue: expected },
        weight: 1,
      },
    ];
  },
};
