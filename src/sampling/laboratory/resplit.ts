import type { Bag } from '../../hole/bags.ts';
import { depthFromMm } from '../../quantity/depth.ts';
import { type Interval, overlaps } from '../../quantity/interval.ts';
import type { Sampling } from '../sampling.ts';
import { bagOf } from '../stream/issue.ts';
import { type StreamState, stream } from '../stream/stream.ts';
import type { Assay } from './results-read.ts';

/** What asks for single metres: a composite at or over a limit, with its neighbours. */
export type ResplitRule = Pick<NonNullable<Sampling['resplit']>, 'analyte' | 'atLeast' | 'neighbours'>;

/** A single metre that is wanted, with the composite that holds it. */
export interface WantedMetre extends Interval {
  readonly composite: string;
}

/** Piles lie in rows from the top of the hole on; both are counted from 1. */
export interface PilePlace {
  readonly row: number;
  readonly place: number;
}

/** Where the pile of a metre lies. `perRow` is usually 20 or 30; a depth above the start has no pile: undefined. */
export function pilePlace(startMm: number, perRow: number, metreMm: number): PilePlace | undefined {
  if (metreMm < startMm) return undefined;
  const index = Math.floor((metreMm - startMm) / 1000);
  return { row: Math.floor(index / perRow) + 1, place: (index % perRow) + 1 };
}

/**
 * Single metres that the results of composites ask for, from the top down, each once. Composites without a result ask for none, and
 * metres that have a bag of their own are left out.
 */
export function metresToResplit(
  bags: readonly Bag[],
  assays: readonly Assay[],
  rule: ResplitRule,
): readonly WantedMetre[] {
  const values = new Map(assays.map((assay) => [assay.number, assay.values[rule.analyte]?.value]));
  const primaries = bags.flatMap((bag) => {
    const { fromMm, toMm } = bag;
    return bag.kind !== 'primary' || fromMm === undefined || toMm === undefined
      ? []
      : [{ number: bag.number, rank: bag.rank, fromMm, toMm }];
  });
  const composites = primaries
    .filter((each) => each.rank === 'composite')
    .sort((a, b) => a.fromMm - b.fromMm);
  const singles = primaries.filter((each) => each.rank === 'metre');
  const wanted = composites.filter((_, index) =>
    composites
      .slice(Math.max(0, index - rule.neighbours), index + rule.neighbours + 1)
      .some((near) => (values.get(near.number) ?? Number.NEGATIVE_INFINITY) >= rule.atLeast),
  );
  return wanted
    .flatMap(({ number, fromMm, toMm }) =>
      singleMetres(fromMm, toMm).map((metre) => ({ ...metre, composite: number })),
    )
    .filter((metre) => !singles.some((each) => overlaps(each, metre)));
}

function singleMetres(fromMm: number, toMm: number): readonly Interval[] {
  const metres: Interval[] = [];
  for (let top = fromMm; top < toMm; top += 1000)
    metres.push({ fromMm: depthFromMm(top), toMm: depthFromMm(Math.min(toMm, top + 1000)) });
  return metres;
}

/**
 * The bags of metres that are split again: new numbers from `state.bagRuns`, with the controls that those numbers bring. They
 * stand beside the composites, of the rank `metre`; duplicates are speared, for the chute is long past.
 */
export function resplitBags(
  sampling: Sampling,
  state: StreamState,
  metres: readonly Interval[],
): readonly Bag[] {
  const single: Sampling = { ...sampling, rank: 'metre', lengthMm: 1000, duplicates: 'spear' };
  const behind: StreamState = { ...state, bags: state.bags.map(asNumberOnly) };
  return [...stream(single, behind, metres)].map((upcoming) => bagOf(single, upcoming));
}

/** A composite as a number that is used: single metres come behind every number issued, never into one that was passed over. */
function asNumberOnly(bag: Bag): Bag {
  if (bag.rank !== 'composite') return bag;
  const { fromMm: _from, toMm: _to, rank: _rank, ...number } = bag;
  return number;
}
