import {
  type BagNumber,
  endingInDigits,
  endsWithDigits,
  formatBagNumber,
  type NumberForm,
  parseBagNumber,
} from '../../numbers/bag-number.ts';
import { numberLine } from '../../numbers/number-line.ts';
import { type MismatchKind, type Situation, spoiled, WRITE_OWN } from '../mismatch.ts';

/** Numbers from the top of a bundle that a rod can have used: its metres and their controls. */
const ON_TOP = 9;

/** A bundle of the next or another block, or of numbers behind those labelled: it is the project’s, and no hole’s yet. */
export const anotherBundle: MismatchKind = {
  code: 'another-bundle',
  name: 'a bundle that is labelled for no hole yet',
  happened: 'The last bag is from numbers of a block of this project that are labelled for no hole yet.',
  claims: ['the number is of a block, and labelled for no hole'],
  ground:
    "Take that bundle off the splitter stand. Write this hole's numbers on the calicos filled from it; each of its numbers that was used is spoiled.",
  nearSplitter: true,
  suppose: (situation) => {
    const { digits } = situation.seen;
    if (digits === undefined) return [];
    return notLabelled(situation, digits).map(({ number, onTop }) => ({
      at: number,
      lying: 'anyhow' as const,
      read: { last: number },
      fix: { issue: [...situation.expected, spoiled(number, 'of a bundle that is labelled for no hole')] },
      deed: WRITE_OWN,
      weight: (onTop ? 0.12 : 0.0005) * (readsLikeOwn(situation, digits) ? BY_CHANCE : 1),
    }));
  },
};

/** Numbers this near the one expected are this hole's own, read with a slip or two. */
const NEAR = 3;
/** How much rarer a bundle is whose number only happens to end like one of those: few digits fit bundles everywhere. */
const BY_CHANCE = 0.001;

/** True where the digits read are also those of the number expected, or of one beside it. */
function readsLikeOwn({ line, expected }: Situation, digits: string): boolean {
  const end = line.placeOf(expected.at(-1)?.number ?? '');
  if (end === undefined) return false;
  const near = Array.from({ length: 2 * NEAR + 1 }, (_, index) => line.at(end - NEAR + index));
  return near.some((number) => number !== undefined && endsWithDigits(number, digits));
}

interface Unlabelled {
  readonly number: string;
  /** Where a bundle begins that lies next to those in use. */
  readonly onTop: boolean;
}

/** Numbers of the blocks that end in some digits and that no hole has: those where a bundle begins, and one for all others together. */
export function notLabelled({ sampling, state, others }: Situation, digits: string): readonly Unlabelled[] {
  const { numbers, blocks } = sampling;
  const lines = [state, ...others].map(({ bagRuns }) => numberLine(numbers, bagRuns));
  const isFree = (number: string) => lines.every((line) => line.placeOf(number) === undefined);
  const tops = bundlesNext({ sampling, state, others });
  const near = tops.flatMap((top) =>
    numbersFrom(numbers, top, ON_TOP).filter((number) => endsWithDigits(number, digits) && isFree(number)),
  );
  if (near.length > 0) return [...new Set(near)].map((number) => ({ number, onTop: true }));
  const far = blocks
    .flatMap(({ first, last }) => endingInDigits(numbers, first, last, digits))
    .find((number) => isFree(number));
  return far === undefined ? [] : [{ number: far, onTop: false }];
}

/** The first number of each block, and those behind every run: where bundles begin that no one has labelled yet. */
function bundlesNext({
  sampling,
  state,
  others,
}: Pick<Situation, 'sampling' | 'state' | 'others'>): readonly BagNumber[] {
  const behind = [state, ...others]
    .flatMap(({ bagRuns }) => bagRuns)
    .flatMap((run) => {
      const last = parseBagNumber(sampling.numbers, run.last);
      return last === undefined ? [] : [{ ...last, serial: last.serial + 1 }];
    });
  return [...behind, ...sampling.blocks.map(({ first }) => first)];
}

function numbersFrom(form: NumberForm, { prefix, serial }: BagNumber, count: number): readonly string[] {
  const most = 10 ** form.digits;
  return Array.from({ length: count }, (_, index) => serial + index)
    .filter((each) => each < most)
    .map((each) => formatBagNumber(form, { prefix, serial: each }));
}
