import type { Bag } from '../../hole/bags.ts';
import { depthFromMm, formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Sampling } from '../sampling.ts';
import type { StreamState } from '../stream/stream.ts';
import { figure } from './charts-text.ts';
import { metresToResplit, type PilePlace, pilePlace, resplitBags } from './resplit.ts';
import { type Assay, countedUnit } from './results-read.ts';

/** One bag of a resplit list: a single metre with its place on the ground and why it is wanted, or a control that its number brings. */
export interface ResplitLine {
  /** Undefined where the numbered bags run out. */
  readonly bag?: Bag;
  readonly fromMm?: number;
  readonly toMm?: number;
  /** How a kept single metre is marked until it has a number: hole and metre. */
  readonly keptAs?: string;
  readonly place?: PilePlace;
  readonly because?: string;
}

/** A resplit list with the bags that it makes. `unnumbered` counts the metres that no number is left for. */
export interface ResplitList {
  readonly lines: readonly ResplitLine[];
  readonly bags: readonly Bag[];
  readonly unnumbered: number;
}

/** The resplit list of a hole from its composites' results, in the order of the new numbers, controls among them; empty where nothing asks. */
export function resplitList(
  sampling: Sampling,
  hole: { readonly name: string; readonly state: StreamState },
  assays: readonly Assay[],
): ResplitList {
  const rule = sampling.resplit;
  if (rule === undefined) return { lines: [], bags: [], unnumbered: 0 };
  const { state, name } = hole;
  const metres = metresToResplit(state.bags, assays, rule);
  if (metres.length === 0) return { lines: [], bags: [], unnumbered: 0 };
  const values = new Map(assays.map((assay) => [assay.number, assay.values[rule.analyte]]));
  const lineOf = (metre: (typeof metres)[number]): ResplitLine => {
    const value = values.get(metre.composite);
    const place = pilePlace(state.startMm, rule.pilesPerRow, metre.fromMm);
    return {
      fromMm: metre.fromMm,
      toMm: metre.toMm,
      keptAs: `${name} ${formatInterval(metre)}`,
      because: `${metre.composite}${value === undefined ? ' (no result, neighbour)' : ` ${figure(value.value)} ${countedUnit(sampling.results, rule.analyte)}`}`,
      ...(place === undefined ? {} : { place }),
    };
  };
  const bags = resplitBags(sampling, state, metres);
  const numbered = bags.map((bag): ResplitLine => {
    const metre = metres.find((each) => each.fromMm === bag.fromMm && each.toMm === bag.toMm);
    return metre === undefined ? { bag } : { bag, ...lineOf(metre) };
  });
  const left = metres.filter(
    (metre) => !bags.some((bag) => bag.kind === 'primary' && bag.fromMm === metre.fromMm),
  );
  return { lines: [...numbered, ...left.map(lineOf)], bags, unnumbered: left.length };
}

/** A resplit list as a table: headings first. `m` columns are metres; a control has no place of its own. */
export function resplitTable({ lines }: ResplitList): readonly (readonly (string | number)[])[] {
  return [
    ['number', 'kind', 'from_m', 'to_m', 'kept_as', 'row', 'place', 'because'],
    ...lines.map(({ bag, fromMm, toMm, keptAs, place, because }) => [
      bag?.number ?? 'NO NUMBER',
      bag?.kind ?? 'primary',
      fromMm === undefined ? '' : formatDepth(depthFromMm(fromMm)),
      toMm === undefined ? '' : formatDepth(depthFromMm(toMm)),
      keptAs ?? '',
      place?.row ?? '',
      place?.place ?? '',
      because ?? '',
    ]),
  ];
}
