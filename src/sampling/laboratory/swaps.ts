import type { Bag } from '../../hole/bags.ts';
import type { Sampling } from '../sampling.ts';
import type { Assay } from './results-read.ts';

/** A control whose result is off: a standard that fails, a blank over its limit. Neither reads like what it is. */
export interface OffControl {
  readonly number: string;
  readonly analyte: string;
  readonly value: number;
}

/** A value within this many standard deviations of a certified one reads like it. */
const LIKE_SD = 2;

/** Standards that a value reads like, by lot. */
function lotsLike(sampling: Sampling, analyte: string, value: number): readonly string[] {
  return sampling.standards
    .filter((standard) =>
      (standard.certified ?? []).some(
        (each) => each.analyte === analyte && Math.abs(value - each.value) <= LIKE_SD * each.sd,
      ),
    )
    .map((standard) => standard.lot);
}

/**
 * What a control that is off looks like, in a sentence: another standard's sachet, or a swap with the bag before or behind it, which then
 * reads like the control. Undefined where nothing of the kind shows. A suspicion: the calicos and the coarse reject tell.
 */
export function suspectedSwap(
  sampling: Sampling,
  bags: readonly Bag[],
  assays: readonly Assay[],
  off: OffControl,
): string | undefined {
  const control = bags.find((bag) => bag.number === off.number);
  const others = lotsLike(sampling, off.analyte, off.value);
  if (others.length > 0) return `It reads like ${others.join(' or ')}: was that sachet in the bag?`;
  const beside = neighbours(assays, off.number).filter((assay) => {
    const found = assay.values[off.analyte];
    const isControl = bags.some(
      (bag) => bag.number === assay.number && (bag.kind === 'standard' || bag.kind === 'blank'),
    );
    if (found === undefined || isControl || control === undefined) return false;
    return (
      control.kind === 'standard' &&
      lotsLike(sampling, off.analyte, found.value).includes(control.material ?? '')
    );
  });
  if (beside[0] === undefined) return undefined;
  return `${beside[0].number} beside it reads like ${control?.material}: were the two bags swapped?`;
}

/** The results before and behind a number, as reported. */
function neighbours(assays: readonly Assay[], number: string): readonly Assay[] {
  const at = assays.findIndex((assay) => assay.number === number);
  return [assays[at - 1], assays[at + 1]].filter((assay) => assay !== undefined);
}
