import { type Depth, parseDepth } from '../quantity/depth.ts';
import type { RodSeen } from '../sampling/rod/mismatch.ts';
import type { NamedMismatch, RodCheck } from '../sampling/rod/rod-check.ts';
import { type RodCare, readCare } from '../shorthand/rod-care.ts';
import { ROD_WORD } from '../shorthand/rod-words.ts';

/** A mismatch chosen to be mended: its code, and which of the places listed, from 1. */
export interface MendChosen {
  readonly code: string;
  readonly place: number;
}

/**
 * What was read at a rod check, as it is typed there or behind `;rod`: last digits of the calico in hand, `x6` bags counted, `@54.5` another
 * depth, `cslh` what was seen of cyclone, splitter and hole; `first158`, `heavy` or `even`, `controls1` what a look told; `mend:skipped`.
 */
export type RodRead = RodSeen & {
  readonly depthMm?: Depth;
  readonly care?: RodCare;
  readonly mend?: MendChosen;
};

/** Reads what stands behind `;rod`, or undefined where a word of it is none of these. */
export function readRod(text: string): RodRead | undefined {
  let read: RodRead = {};
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const part = partOf(word, read);
    if (part === undefined) return undefined;
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
  if (count !== undefined) return { count: Number(count) };
  if (first !== undefined) return { first };
  if (double !== undefined) return { double: double === 'heavy' };
  if (controls !== undefined) return { controls: Number(controls) };
  if (code !== undefined) return { mend: { code, place: Number(group(ROD_WORD.mend, 2) ?? 1) } };
  return ROD_WORD.digits.test(word) ? { digits: word } : undefined;
}

/** The mismatch and its way that were chosen, where the check offers them. */
export function chosenWay(
  check: RodCheck,
  chosen: MendChosen,
): { readonly named: NamedMismatch; readonly index: number } | undefined {
  const named = check.named.find((each) => each.code === chosen.code);
  const index = chosen.place - 1;
  return named?.ways[index] === undefined ? undefined : { named, index };
}

/** How the answer to a look is typed where nobody is there to be asked. */
export const LOOK_WORDS: { readonly [look in NonNullable<RodCheck['look']>]: string } = {
  first: 'first and its last digits, like first158',
  double: 'heavy or even',
  controls: 'controls and the number, like controls1',
};
