import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import { dispatchRefused } from '../findings.ts';
import { bagNumberDistance, parseBagNumber } from '../numbers/bag-number.ts';
import { numbersMeant, severalEnd } from '../numbers/number-named.ts';
import type { Sampling } from '../sampling.ts';
import { holdsSample } from './dispatch.ts';
import type { Sack } from './dispatch-noun.ts';

/** Bags that numbers of a dispatch are looked for among: every one issued, and the numbers of those that wait to be sent. */
export interface Sendable {
  readonly issued: readonly Bag[];
  readonly waiting: readonly string[];
}

/**
 * Numbers said one by one (typed or scanned) and by range, `MB000001-MB000040`, each whole or by its last digits: of the bags that wait, else of
 * those issued. A range takes what was issued in it and is not spoiled; a single number is taken as it is said, whatever it is: making the sacks up
 * looks at it.
 */
export function saidNumbers(
  sampling: Sampling,
  bags: Sendable,
  said: readonly string[],
  dispatch: string,
): Result<readonly string[]> {
  const words = said.flatMap((text) => text.split(/[\s,]+/)).filter((text) => text !== '');
  const numbers: string[] = [];
  for (const word of words) {
    const range = rangeOf(sampling, bags, word, dispatch);
    if (range !== undefined && !range.ok) return range;
    const named = range === undefined ? numberOf(sampling, bags, word, dispatch) : ok(undefined);
    if (!named.ok) return named;
    if (named.value !== undefined) numbers.push(named.value);
    if (range === undefined) continue;
    const within = bags.issued.filter((bag) => holdsSample(bag) && isWithin(sampling, bag, range.value));
    if (within.length === 0)
      return refused(
        dispatchRefused.at({ thing: `dispatch ${dispatch}` }, { excerpt: word, ...NO_SUCH_RANGE }),
      );
    numbers.push(...within.map((bag) => bag.number));
  }
  return ok(numbers);
}

const NO_SUCH_RANGE = {
  problem: 'No bag of this range was issued.',
  remedy: 'Give its first number, a hyphen and its last, whole or by their last digits.',
};

/** One number; what ends no bag is taken as it is said. */
function numberOf(
  { numbers: form }: Sampling,
  { issued, waiting }: Sendable,
  text: string,
  dispatch: string,
): Result<string> {
  const all = issued.map((bag) => bag.number);
  const waits = numbersMeant(form, waiting, text);
  const found = waits.length > 0 ? waits : numbersMeant(form, all, text);
  const [number = text.toUpperCase(), ...others] = found;
  if (others.length === 0) return ok(number);
  return refused(dispatchRefused.at({ thing: `dispatch ${dispatch}` }, severalEnd(text, found)));
}

type Range = readonly [
  first: NonNullable<ReturnType<typeof parseBagNumber>>,
  last: NonNullable<ReturnType<typeof parseBagNumber>>,
];

/** A range taken apart at a hyphen (a prefix may hold one too); undefined where it is none. */
function rangeOf(
  sampling: Sampling,
  bags: Sendable,
  word: string,
  dispatch: string,
): Result<Range> | undefined {
  if (parseBagNumber(sampling.numbers, word.toUpperCase()) !== undefined) return undefined;
  for (const { index } of word.matchAll(/[-–]/g)) {
    const ends = [word.slice(0, index), word.slice(index + 1)];
    if (!ends.every((each) => /\d$/.test(each))) continue;
    const [one, other] = ends.map((each) => numberOf(sampling, bags, each, dispatch));
    if (one?.ok === false) return one;
    if (other?.ok === false) return other;
    const [first, last] = [one, other].map((each) =>
      each === undefined ? undefined : parseBagNumber(sampling.numbers, each.value),
    );
    if (first !== undefined && last !== undefined) return ok([first, last]);
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
