import type { Bag } from '../../hole/bags.ts';
import { type Interval, sharedMm } from '../../quantity/interval.ts';
import type { Assay, AssayValue } from './results-read.ts';

/** A primary bag's result over its metres, with its rank: single metres stand over composites. */
export interface RankedResult extends Interval {
  readonly number: string;
  readonly rank: 'metre' | 'composite';
  readonly values: { readonly [analyte: string]: AssayValue };
  readonly best: boolean;
}

/**
 * Results of one hole from the top down, those of every rank: both stand. A composite is the best there is until every metre of it has
 * a result of its own. A bag without a rank is of the project's.
 */
export function resultsByMetre(
  bags: readonly Bag[],
  byNumber: ReadonlyMap<string, Assay>,
  usualRank: 'metre' | 'composite',
): readonly RankedResult[] {
  const ranked = bags.flatMap((bag) => {
    const assay = byNumber.get(bag.number);
    const { fromMm, toMm, number } = bag;
    if (bag.kind !== 'primary' || fromMm === undefined || toMm === undefined || assay === undefined)
      return [];
    return [{ number, fromMm, toMm, rank: bag.rank ?? usualRank, values: assay.values }];
  });
  const metres = ranked.filter((each) => each.rank === 'metre');
  const coveredMm = (of: Interval): number => metres.reduce((mm, each) => mm + sharedMm(of, each), 0);
  return ranked
    .map((each) => ({ ...each, best: each.rank === 'metre' || coveredMm(each) < each.toMm - each.fromMm }))
    .sort((a, b) => a.fromMm - b.fromMm || b.toMm - a.toMm);
}
