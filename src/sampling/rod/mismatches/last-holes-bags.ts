import { endsWithDigits } from '../../numbers/bag-number.ts';
import { numberLine } from '../../numbers/number-line.ts';
import { lastPlace } from '../../stream/stream.ts';
import { type MismatchKind, spoiled, WRITE_OWN } from '../mismatch.ts';

/** Numbers behind another hole's last bag that lie on top of what is left of its bundle: a rod and its controls. */
const ON_TOP = 9;

/** Bags numbered for another hole, mostly the one before. */
export const lastHolesBags: MismatchKind = {
  code: 'last-holes-bags',
  name: "another hole's bags",
  happened: 'The last bag was numbered for another hole of this project.',
  claims: ['the number is of another hole'],
  ground:
    "Take that hole's numbered bags off the splitter stand. Write this hole's numbers on the calicos filled with them; each of the other numbers found is spoiled.",
  nearSplitter: true,
  suppose: ({ sampling, state, seen, others, expected }) => {
    const { digits } = seen;
    if (digits === undefined) return [];
    return others.flatMap((other) => {
      const line = numberLine(sampling.numbers, other.bagRuns);
      const next = lastPlace(sampling, { ...state, bags: other.bags, putOffs: [] }, line) + 1;
      return Array.from({ length: line.length }, (_, place) => place).flatMap((place) => {
        const number = line.at(place);
        if (number === undefined || !endsWithDigits(number, digits)) return [];
        const onTop = place >= next && place < next + ON_TOP;
        return [
          {
            at: `${number}, numbered for ${other.hole}`,
            lying: 'anyhow' as const,
            read: { last: number },
            fix: { issue: [...expected, spoiled(number, `numbered for ${other.hole}`)] },
            deed: WRITE_OWN,
            weight: onTop ? 0.15 : 0.002,
          },
        ];
      });
    });
  },
};
