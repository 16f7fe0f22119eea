import { endsWithDigits } from '../../numbers/bag-number.ts';
import { type MismatchKind, writeOnLast } from '../mismatch.ts';

/** A number that was put out of use is on a filled bag. */
export const spoiledUsed: MismatchKind = {
  code: 'spoiled-used',
  name: 'a spoiled number',
  happened: 'The last bag carries a number that was put out of use.',
  claims: ['the number was put out of use'],
  ground:
    'Write the right number on the calico and cross the spoiled one out. A spoiled number is never used again.',
  nearSplitter: false,
  suppose: ({ state, others, seen, endings }) => {
    const { digits } = seen;
    if (digits === undefined) return [];
    return [state, ...others]
      .flatMap((each) => each.bags)
      .filter((bag) => bag.kind === 'spoiled' && endsWithDigits(bag.number, digits))
      .flatMap((bag) =>
        endings.map((issue) => ({
          at: bag.number,
          read: { last: bag.number },
          fix: { issue },
          ...writeOnLast(issue),
          weight: 0.1,
        })),
      );
  },
};
