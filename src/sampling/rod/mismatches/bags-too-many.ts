import { formatInterval } from '../../../quantity/interval.ts';
import { isCovered } from '../../stream/no-sample.ts';
import { freeOfKind, layWith, type MismatchKind, spoiled, without } from '../mismatch.ts';

/** Seven bags in a rod of six: one metre is spread over two calicos. */
export const bagsTooMany: MismatchKind = {
  code: 'bags-too-many',
  name: 'a bag too many',
  happened: 'One metre went into two bags, and the next bags carry on with the numbers.',
  claims: ['a metre is in two bags', 'no number was passed over'],
  ground:
    'Find the two light calicos side by side. Tip the second into the first, and mark the number of the second spoiled.',
  nearSplitter: false,
  asks: 'Which metre has two light calicos?',
  suppose: (situation) => {
    const primaries = freeOfKind(situation, (kind) => kind === 'primary');
    return situation.samples.flatMap((sample, index) => {
      const second = primaries[index + 1];
      if (second === undefined || isCovered(sample, situation.state.noReturn ?? [])) return [];
      const laid = layWith(situation, without(situation, [second]));
      const half = spoiled(second, `second bag of ${formatInterval(sample)}`);
      const placeOf = (number: string) => situation.line.placeOf(number) ?? 0;
      const place = laid.findIndex((bag) => placeOf(bag.number) > placeOf(second));
      const issue = place < 0 ? [...laid, half] : [...laid.slice(0, place), half, ...laid.slice(place)];
      return [
        {
          at: formatInterval(sample),
          place: sample,
          fix: { issue },
          deed: `tip the second bag of ${formatInterval(sample)} into the first`,
          weight: 3 / situation.samples.length,
        },
      ];
    });
  },
};
