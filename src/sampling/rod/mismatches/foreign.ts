import { parseBagNumber } from '../../numbers/bag-number.ts';
import type { MismatchKind } from '../mismatch.ts';

/** A number that belongs to no hole of the project. */
export const foreign: MismatchKind = {
  code: 'foreign',
  name: 'a foreign bag',
  happened: 'The number on the last bag belongs to no hole of this project.',
  ground:
    'Read the number again. If it is so, write the right number on the calico and cross the foreign one out.',
  nearSplitter: false,
  suppose: ({ sampling, seen, endings }) => {
    const { digits } = seen;
    if (digits === undefined) return [];
    const whole =
      digits.length >= sampling.numbers.digits && parseBagNumber(sampling.numbers, digits) === undefined;
    return endings.map((issue) => ({
      at: digits,
      trace: { count: issue.length },
      fix: { issue },
      weight: whole ? 5 : 0.002,
    }));
  },
};
