import { type Depth, parseDepth } from '../quantity/depth.ts';
import { endsWithDigits } from '../sampling/numbers/bag-number.ts';
import type { RodSeen } from '../sampling/rod/mismatch.ts';
import type { NamedMismatch, RodCheck } from '../sampling/rod/rod-check.ts';
import { readInterval } from '../shorthand/command.ts';
import { type RodCare, readCare } from '../shorthand/rod-care.ts';
import { ROD_WORD } from '../shorthand/rod-words.ts';

/** A mismatch chosen to be mended: its code, and which of the places listed, from 1, or the place as someone sees it. */
export interface MendChosen {
  readonly code: string;
  readonly place: number;
  /** The place as it is seen: a metre, or the last digits on a calico. */
  readonly seen?: string;
}

/**
 * What was read at a rod check, as it is typed there or behind `;rod`: last digits of the calico in hand, `x6` bags counted, `@54.5` another
 * depth, `cslh` what was seen of cyclone, splitter and hole; `last162,163`, `first158`, `heavy` or `even`, `controls1` what a look told; `fix:skipped`,
 * `fix:skipped=163` or `fix:bags-too-few=46-47` how it is mended; `fits` where the bags fit and the reading did not; `=` where a number read was asked about.
 */
export type RodRead = RodSeen & {
  readonly depthMm?: Depth;
  readonly care?: RodCare;
  readonly mend?: MendChosen;
  readonly fits?: true;
  readonly insisted?: true;
};

/** Reads what comes after `;rod`, or undefined where a word of it is none of these. */
export function readRod(text: string): RodRead | undefined {
  let read: RodRead = {};
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const part = partOf(word, read);
    if (part === undefined || Object.keys(part).some((each) => Object.hasOwn(read, each))) return undefined;
    read = { ...read, ...part };
  }
  return read;
}

function partOf(word: string, read: RodRead): RodRead | undefined {
  const care = readCare(word);
  if (care !== undefined && read.care === undefined) return { care };
  const group = (pattern: RegExp, place = 1) => pattern.exec(word)?.[place];
  const depthMm = parseDepth(group(ROD_WORD.depth) ?? '');
  if (depthMm !== undefined) return { depthMm };
  const [count, first, double, controls, code] = [
    group(ROD_WORD.count),
    group(ROD_WORD.first),
    group(ROD_WORD.double),
    group(ROD_WORD.controls),
    group(ROD_WORD.mend),
  ];
  const [beforeLast, last] = [group(ROD_WORD.lastTwo), group(ROD_WORD.lastTwo, 2)];
  if (beforeLast !== undefined && last !== undefined) return { lastTwo: [beforeLast, last] };
  if (ROD_WORD.fits.test(word)) return { fits: true };
  if (ROD_WORD.insists.test(word)) return { insisted: true };
  if (count !== undefined) return { count: Number(count) };
  if (first !== undefined) return { first };
  if (double !== undefined) return { double: double === 'heavy' };
  if (controls !== undefined) return { controls: Number(controls) };
  const seen = group(ROD_WORD.mend, 3);
  if (code !== undefined)
    return {
      mend: { code, place: Number(group(ROD_WORD.mend, 2) ?? 1), ...(seen === undefined ? {} : { seen }) },
    };
  return ROD_WORD.digits.test(word) ? { digits: word } : undefined;
}

/** The mismatch and its way that were chosen, where the check offers them. */
export function chosenWay(
  check: RodCheck,
  chosen: MendChosen,
): { readonly named: NamedMismatch; readonly index: number } | undefined {
  const named = check.named.find((each) => each.code === chosen.code);
  if (named === undefined) return undefined;
  const index =
    chosen.seen === undefined
      ? chosen.place - 1
      : named.ways.findIndex((way) => isThere(way.place, chosen.seen ?? ''));
  return named.ways[index] === undefined ? undefined : { named, index };
}

/** The way whose place is the one that someone sees, of the likeliest mismatch that has such a place. */
export function waySeen(
  check: RodCheck,
  seen: string,
): { readonly named: NamedMismatch; readonly index: number } | undefined {
  const found = check.named.map((named) => ({
    named,
    index: named.ways.findIndex((way) => isThere(way.place, seen)),
  }));
  return found.find(({ index }) => index >= 0);
}

/** True where what someone sees, a metre (`46-47`) or the last digits of a number, is the place of a way. */
function isThere(place: NamedMismatch['ways'][number]['place'], seen: string): boolean {
  if (place === undefined) return false;
  const metre = readInterval(seen);
  if (typeof place === 'string') return metre === undefined && endsWithDigits(place, seen);
  return metre !== undefined && place.fromMm === metre.fromMm && place.toMm === metre.toMm;
}

/** How the answer to a look is typed where no one is there to be asked. */
export const LOOK_WORDS: { readonly [look in NonNullable<RodCheck['look']>]: string } = {
  lastTwo: 'last, a comma between the two, like last162,163',
  count: 'x and the number, like x6',
  first: 'first and its last digits, like first158',
  double: 'heavy or even',
  walk: 'all three, like x6 controls1 even',
  controls: 'controls and the number, like controls1',
};
