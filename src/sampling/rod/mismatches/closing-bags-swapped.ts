import type { Bag } from '../../../hole/bags.ts';
import type { MismatchKind } from '../mismatch.ts';
import { holding } from './shift.ts';

/** The last two calicos lie the wrong way round: only on the ground, or because each hung in the place of the other. */
export const closingBagsSwapped: MismatchKind = {
  code: 'closing-bags-swapped',
  name: 'the last two calicos the wrong way round',
  happened: 'All bags of this rod are there, and the last two are in each other’s place.',
  claims: ['the last two lie in each other’s place'],
  ground:
    'Hold both beside their piles. If only the row is wrong, put them right; if each holds what the other should, take that way.',
  nearSplitter: false,
  suppose: ({ endings }) =>
    endings.flatMap((issue) => {
      const [upper, lower] = issue.slice(-2);
      if (upper === undefined || lower === undefined || issue.length < 2) return [];
      const lying = [...issue.slice(0, -2), lower, upper];
      const read = { last: upper.number };
      const at = `${upper.number} and ${lower.number}`;
      const inRow = {
        at: `${at}, in the row only`,
        lying,
        read,
        fix: { issue },
        deed: 'put the last two the right way round',
        weight: 0.7,
      };
      const swapped = exchanged(issue, upper, lower);
      return swapped === undefined
        ? [inRow]
        : [inRow, { at: `${at}, filled so`, lying, read, fix: { issue: swapped }, weight: 0.3 }];
    }),
};

/** The bags with the last two holding each other’s metre; undefined where one of them is no sample of a metre of its own. */
function exchanged(issue: readonly Bag[], upper: Bag, lower: Bag): readonly Bag[] | undefined {
  if (upper.kind !== 'primary' || lower.kind !== 'primary') return undefined;
  const reason = 'the two hung in each other’s place';
  return [...issue.slice(0, -2), { ...holding(upper, lower), reason }, { ...holding(lower, upper), reason }];
}
