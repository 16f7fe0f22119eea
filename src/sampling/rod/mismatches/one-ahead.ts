import type { Bag } from '../../../hole/bags.ts';
import {
  CUT_UP,
  freeOfKind,
  layWith,
  type MismatchKind,
  MOST_SKIPPED,
  type Situation,
  type Supposition,
  spoiled,
} from '../mismatch.ts';
import { amendedBags, holding, openings, primariesBefore, withDuplicates } from './shift.ts';

/** The stream was ahead before this rod began: numbers of a rod above were passed over and no one saw it. */
export const oneAhead: MismatchKind = {
  code: 'one-ahead',
  name: 'the stream is ahead',
  happened:
    'The bags were ahead before this rod began: a rod above passed over one number or more, and no one read its bags.',
  claims: ['the row began a number ahead'],
  ground:
    'Look through the bags of the unread rods above for the number left out. Cut the empty calico up: that number is spoiled.',
  nearSplitter: true,
  asks: 'Which number is on the empty calico?',
  suppose: (situation) => {
    const before = primariesBefore(situation);
    const sizes = Array.from({ length: MOST_SKIPPED }, (_, index) => index + 1);
    return sizes.flatMap((size) => passedOver(situation, before, size));
  },
};

/** So many numbers in a row passed over from any bag of the rods above on; the last of them may be this rod's. */
function passedOver(situation: Situation, before: readonly Bag[], size: number): readonly Supposition[] {
  const next = freeOfKind(situation, (kind) => kind === 'primary', size);
  const lowest = before.at(-1);
  if (lowest === undefined || next.length < size) return [];
  const line: readonly Bag[] = [...before, ...next.map((number) => ({ ...lowest, number }))];
  const fixes = before.map((_, from) => shifted(situation, before, line, from, size));
  // Wherever it was, the same numbers are gone and the same metres bagged: this rod's bags are the same.
  const laid = layWith(situation, fixedBefore(situation, fixes[0]));
  return fixes.flatMap(({ at, place, amend, issue }) =>
    openings(laid).map((lying) => ({
      ...{ at, place, lying },
      fix: { issue: [...issue, ...laid], amend },
      deed: CUT_UP,
      weight: 0.1 / size ** 2,
    })),
  );
}

type Shifted = ReturnType<typeof shifted>;

/** The bags above as they really are: numbers left out from one on, every metre from there in a later number. */
function shifted(
  situation: Situation,
  before: readonly Bag[],
  line: readonly Bag[],
  from: number,
  size: number,
) {
  const isOld = ({ number }: Bag) => before.some((bag) => bag.number === number);
  const left = line.slice(from, from + size);
  const moved = before.slice(from).map((bag, step) => holding(line[from + size + step] ?? bag, bag));
  const gone = left.map(({ number }) => spoiled(number, 'skipped'));
  const added = moved
    .filter((bag) => !isOld(bag))
    .map((bag) => ({ ...bag, reason: 'a rod above passed a number over' }));
  return {
    at: left.map(({ number }) => number).join(', '),
    place: left[0]?.number ?? '',
    amend: [
      ...gone.filter(isOld).map((bag) => ({ number: bag.number, bag })),
      ...withDuplicates(situation, moved.filter(isOld)),
      ...twinsOf(situation, left, before[from], moved[0]),
    ],
    issue: [...gone.filter((bag) => !isOld(bag)), ...added],
  };
}

function fixedBefore(situation: Situation, fix: Shifted | undefined) {
  return { bags: [...amendedBags(situation, fix?.amend ?? []), ...(fix?.issue ?? [])] };
}

/** Duplicates of the numbers passed over: each was caught with the calico before them, or with the next one where they open the hole. */
function twinsOf({ state }: Situation, left: readonly Bag[], first: Bag | undefined, next: Bag | undefined) {
  const above = state.bags.find(
    (bag) => bag.kind === 'primary' && bag.rank === first?.rank && bag.toMm === first?.fromMm,
  );
  const caughtWith = above ?? next;
  if (caughtWith === undefined) return [];
  return state.bags
    .filter((bag) => left.some(({ number }) => bag.of === number))
    .map((bag) => ({ number: bag.number, bag: holding({ ...bag, of: caughtWith.number }, caughtWith) }));
}
