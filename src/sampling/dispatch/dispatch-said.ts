import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import { dispatchRefused } from '../findings.ts';
import { bagNumberDistance, formatBagNumber, parseBagNumber } from '../numbers/bag-number.ts';
import type { Sampling } from '../sampling.ts';
import { holdsSample } from './dispatch.ts';
import type { Sack } from './dispatch-noun.ts';

/**
 * Numbers said one by one (typed or scanned) and by range, `MB000001-MB000040`. A range takes what was issued in it and is not spoiled; a
 * single number is taken as it is said, whatever it is: making the sacks up looks at it.
 */
export function saidNumbers(
  sampling: Sampling,
  issued: readonly Bag[],
  said: readonly string[],
  dispatch: string,
): Result<readonly string[]> {
  const words = said.flatMap((text) => text.toUpperCase().split(/[\s,]+/)).filter((text) => text !== '');
  const numbers: string[] = [];
  for (const word of words) {
    const range = rangeOf(sampling, word);
    if (range === undefined) {
      const whole = parseBagNumber(sampling.numbers, word);
      numbers.push(whole === undefined ? word : formatBagNumber(sampling.numbers, whole));
      continue;
    }
    const within = issued.filter((bag) => holdsSample(bag) && isWithin(sampling, bag, range));
    if (within.length === 0)
      return refused(
        dispatchRefused.at(
          { thing: `dispatch ${dispatch}` },
          {
            excerpt: word,
            problem: 'No bag of this range was issued.',
            remedy: 'Give its first number, a hyphen and its last, as they stand on the calicos.',
          },
        ),
      );
    numbers.push(...within.map((bag) => bag.number));
  }
  return ok(numbers);
}

type Range = readonly [
  first: NonNullable<ReturnType<typeof parseBagNumber>>,
  last: NonNullable<ReturnType<typeof parseBagNumber>>,
];

/** A range taken apart at a hyphen (a prefix may hold one too); undefined where it is none. */
function rangeOf({ numbers }: Sampling, word: string): Range | undefined {
  for (const { index } of word.matchAll(/[-–]/g)) {
    const first = parseBagNumber(numbers, word.slice(0, index));
    const last = parseBagNumber(numbers, word.slice(index + 1));
    if (first !== undefined && last !== undefined) return [first, last];
  }
  return undefined;
}

function isWithin({ numbers }: Sampling, bag: Bag, [first, last]: Range): boolean {
  const at = parseBagNumber(numbers, bag.number);
  if (at === undefined) return false;
  return (bagNumberDistance(first, at) ?? -1) >= 0 && (bagNumberDistance(at, last) ?? -1) >= 0;
}

/** Sacks with seals in a row from the first, whose last digits count up; a seal without digits is put on the first sack alone. */
export function sealed(sacks: readonly Sack[], first: string | undefined): readonly Sack[] {
  if (first === undefined || first === '') return sacks;
  const [, head = '', digits] = /^(.*?)(\d{1,9})$/.exec(first) ?? [];
  if (digits === undefined)
    return sacks.map((sack, index) => (index === 0 ? { ...sack, seal: first } : sack));
  return sacks.map((sack, index) => ({
    ...sack,
    seal: `${head}${String(Number(digits) + index).padStart(digits.length, '0')}`,
  }));
}
