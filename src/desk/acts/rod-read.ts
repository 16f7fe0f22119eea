import { type Depth, parseDepth } from '../../quantity/depth.ts';
import type { RodSeen } from '../../sampling/mismatch.ts';
import { type RodCare, readCare } from '../../shorthand/rod-care.ts';

/** What was read at a rod check, as it is typed there or behind `;rod`: last digits of the calico in hand, `x6` bags counted, `@54.5` another depth, `cslh` what was seen of cyclone, splitter and hole. */
export type RodRead = RodSeen & { readonly depthMm?: Depth; readonly care?: RodCare };

/** Reads what stands behind `;rod`, or undefined where a word of it is none of these. */
export function readRod(text: string): RodRead | undefined {
  let read: RodRead = {};
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const care = readCare(word);
    const depthMm = word.startsWith('@') ? parseDepth(word.slice(1)) : undefined;
    if (depthMm !== undefined) read = { ...read, depthMm };
    else if (care !== undefined && read.care === undefined) read = { ...read, care };
    else if (/^x\d{1,2}$/.test(word)) read = { ...read, count: Number(word.slice(1)) };
    else if (/^[A-Z0-9][A-Z0-9-]*$/.test(word)) read = { ...read, digits: word };
    else return undefined;
  }
  return read;
}
