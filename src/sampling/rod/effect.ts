import type { Bag } from '../../hole/bags.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { bagNumberDistance, parseBagNumber } from '../numbers/bag-number.ts';
import type { NumberLine } from '../numbers/number-line.ts';
import type { Sampling } from '../sampling.ts';
import type { Fix } from './mismatch.ts';

/** Fewest digits that the last number of a run is written with: what people read off a calico. */
const DIGITS_READ = 3;

/** The record before a rod is issued, the bags that were expected of it, and the numbers labelled. */
interface Before {
  readonly bags: readonly Bag[];
  readonly expected: readonly Bag[];
  readonly line: NumberLine;
}

/**
 * What a fix makes of the numbers, beside the bags that were expected: `KD000200 holds 17–18; the standard goes to KD000201`. Nothing that it
 * changes is left out, so that two fixes with the same words are the same fix. Empty where the record stays as expected.
 */
export function effectWords(sampling: Sampling, before: Before, fix: Fix): string {
  const after = [...(fix.amend ?? []).map(({ bag }) => bag), ...fix.issue];
  const were = new Map([...before.bags, ...before.expected].map((bag) => [bag.number, held(bag)]));
  const changed = after.filter((bag) => were.get(bag.number) !== held(bag));
  return [
    ...(fix.depthMm === undefined ? [] : [`the rod ends at ${formatDepth(fix.depthMm)} m`]),
    ...(fix.unsampled ?? []).map((metre) => `${formatInterval(metre)} has no sample`),
    ...runsOf(sampling, changed).map(runWords),
    ...(fix.putOff ?? []).map(({ kind, number }) => `the ${kind} ${number} waits`),
    ...choiceWords(fix),
    ...leftWords(sampling, before, fix),
  ].join('; ');
}

/** What is chosen for numbers that this rod does not use. */
function choiceWords({ issue, choices = [] }: Fix): readonly string[] {
  return choices
    .filter(({ number }) => issue.every((bag) => bag.number !== number))
    .map(({ number, kind }) =>
      kind === 'primary' ? `${number} is for a metre` : `the ${kind} goes to ${number}`,
    );
}

/** Numbers expected that the fix leaves out: passed over for good, or the next to be used. */
function leftWords(sampling: Sampling, { bags, expected, line }: Before, fix: Fix): readonly string[] {
  const named = [...(fix.amend ?? []), ...fix.issue, ...(fix.putOff ?? []), ...(fix.choices ?? [])];
  const left = expected.filter((bag) => named.every(({ number }) => number !== bag.number));
  const placeOf = ({ number }: Bag) => line.placeOf(number) ?? -1;
  // Spoiled bags and those placed by hand don't move the stream: what lies before them can still be given.
  const end = Math.max(-1, ...[...bags, ...fix.issue].filter(movesStream).map(placeOf));
  const passed = left.filter((bag) => placeOf(bag) < end);
  const coming = left.filter((bag) => placeOf(bag) >= end);
  const runs = (which: readonly Bag[]) => runsOf(sampling, which, () => true);
  return [
    ...runs(passed).map((run) => `${numbersOf(run)} ${run.length > 1 ? 'are' : 'is'} not used`),
    ...runs(coming).map((run) => `${numbersOf(run)} ${run.length > 1 ? 'stay' : 'stays'} for the next rod`),
  ];
}

const movesStream = ({ kind, byHand }: Bag): boolean => kind !== 'spoiled' && byHand !== true;

/** What a bag is, as far as its number goes: two bags alike in this are the same to the laboratory. */
function held({ kind, fromMm, toMm, of }: Bag): string {
  return JSON.stringify([kind, fromMm, toMm, of]);
}

function inOrder({ numbers }: Sampling, bags: readonly Bag[]): readonly Bag[] {
  const keyed = bags.map((bag) => ({ bag, at: parseBagNumber(numbers, bag.number) }));
  return keyed
    .sort((a, b) =>
      a.at === undefined || b.at === undefined || a.at.prefix !== b.at.prefix
        ? a.bag.number.localeCompare(b.bag.number)
        : a.at.serial - b.at.serial,
    )
    .map(({ bag }) => bag);
}

/** Bags in the order of their numbers, joined where number follows number and, unless `alike` says otherwise, metre follows metre. */
function runsOf(
  sampling: Sampling,
  bags: readonly Bag[],
  alike: (above: Bag, bag: Bag) => boolean = (above, bag) => followsOn(sampling, above, bag),
): readonly (readonly Bag[])[] {
  const runs: Bag[][] = [];
  for (const bag of inOrder(sampling, bags)) {
    const above = runs.at(-1)?.at(-1);
    if (above !== undefined && isNext(sampling, above, bag) && alike(above, bag)) runs.at(-1)?.push(bag);
    else runs.push([bag]);
  }
  return runs;
}

function isNext({ numbers }: Sampling, above: Bag, bag: Bag): boolean {
  const [one, other] = [above, bag].map(({ number }) => parseBagNumber(numbers, number));
  return one !== undefined && other !== undefined && bagNumberDistance(one, other) === 1;
}

function followsOn({ lengthMm }: Sampling, above: Bag, bag: Bag): boolean {
  const isWhole = ({ kind, fromMm, toMm }: Bag) =>
    kind === 'primary' && fromMm !== undefined && toMm !== undefined && toMm - fromMm === lengthMm;
  return (isWhole(above) && isWhole(bag) && above.toMm === bag.fromMm) || bothSpoiled(above, bag);
}

const bothSpoiled = (above: Bag, bag: Bag): boolean =>
  [above, bag].every(({ kind, fromMm }) => kind === 'spoiled' && fromMm === undefined);

/** `KD000200`, or of a run `KD000200–203`. */
function numbersOf(run: readonly Bag[]): string {
  const [first = '', last = ''] = [run[0]?.number, run.at(-1)?.number];
  if (first === last) return first;
  const same = [...first].findIndex((letter, index) => letter !== last[index]);
  return `${first}–${last.slice(Math.max(0, Math.min(same, last.length - DIGITS_READ)))}`;
}

function runWords(run: readonly Bag[]): string {
  const [top] = run;
  const { kind, fromMm } = top ?? {};
  const toMm = run.at(-1)?.toMm;
  const numbers = numbersOf(run);
  const metres = fromMm === undefined || toMm === undefined ? '' : formatInterval({ fromMm, toMm });
  if (kind === 'primary') return `${numbers} ${run.length > 1 ? 'hold' : 'holds'} ${metres}`;
  if (kind === 'field duplicate') return `${numbers} repeats ${metres}`;
  return `${numbers} is ${kind}${metres === '' ? '' : `, of ${metres}`}`;
}

/** What a way of fixing a mismatch makes of the numbers and asks of hands. Two ways with the same words do the same. */
export function wayWords({ effect, deed }: { readonly effect: string; readonly deed?: string }): string {
  return [effect === '' ? 'no number changes' : effect, deed].filter((part) => part !== undefined).join('; ');
}

/** The same, once it is recorded: what was changed, or that nothing was. */
export function fixedWords(
  name: string,
  { effect, deed }: { readonly effect: string; readonly deed?: string },
): string {
  if (effect !== '')
    return `fixed as ${name}: ${wayWords({ effect, ...(deed === undefined ? {} : { deed }) })}`;
  return `nothing changed (${name})${deed === undefined ? '' : `: ${deed}`}`;
}
