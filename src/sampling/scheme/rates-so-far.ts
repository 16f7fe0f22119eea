import type { Finding } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import { rateBehind } from '../findings.ts';
import type { Sampling } from '../sampling.ts';
import { CONTROL_KINDS, type ControlKind } from '../settings.ts';
import { ratesOf } from './rates.ts';

/** Controls of one kind: what is wanted, what the slots give, what was put out, each in a hundred primary samples. */
export interface KindRate {
  readonly kind: ControlKind;
  readonly wantedPercent?: number;
  readonly slotsPercent: number;
  /** Controls put out so far beside `primaries` primary samples; forced ones, placed by hand with a reason, are among them. */
  readonly count: number;
  readonly forced: number;
  readonly primaries: number;
  /** Undefined before the first primary. */
  readonly achievedPercent?: number;
}

/** What publications say, for whoever sets the rates. */
export const PUBLISHED_RATES: readonly string[] = [
  'Field duplicates 5 to 10 %, standards with blanks 3 to 5 % of a batch: Abzalov 2008, Exploration and Mining Geology 17, 131–144.',
  'All controls together near 20 %: Simón, Control Sample Insertion Rate: Is There an Industry Standard?',
];

/** Rates of each kind over bags: wanted, given by the slots, and put out so far. Spoiled bags count for nothing. */
export function ratesSoFar(sampling: Sampling, bags: readonly Bag[]): readonly KindRate[] {
  const slots = ratesOf(sampling);
  const { standardPercent, blankPercent, duplicatePercent } = sampling.wanted;
  const wanted = { standard: standardPercent, blank: blankPercent, 'field duplicate': duplicatePercent };
  const primaries = bags.filter((bag) => bag.kind === 'primary').length;
  return CONTROL_KINDS.map((kind) => {
    const put = bags.filter((bag) => bag.kind === kind);
    const wantedPercent = wanted[kind];
    return {
      kind,
      ...(wantedPercent === undefined ? {} : { wantedPercent }),
      slotsPercent: slots[kind],
      count: put.length,
      forced: put.filter((bag) => bag.reason !== undefined).length,
      primaries,
      ...(primaries === 0 ? {} : { achievedPercent: (100 * put.length) / primaries }),
    };
  });
}

/** Controls that may be behind before it is remarked on: one is on its way with every round of the slots, one may be put off. */
const BEHIND = 2;

/** Kinds of which fewer were put out than is wanted, by more than {@link BEHIND}. */
export function checkRatesSoFar(sampling: Sampling, bags: readonly Bag[]): readonly Finding[] {
  return ratesSoFar(sampling, bags).flatMap(({ kind, wantedPercent, count, primaries }) => {
    const wanted = Math.floor(((wantedPercent ?? 0) * primaries) / 100);
    if (wanted - count <= BEHIND) return [];
    return [
      rateBehind.at(
        { thing: `${kind}s` },
        {
          problem: `${count} ${kind}s beside ${primaries} samples; at the rate wanted it would be ${wanted}.`,
          remedy: 'Place those that were put off, and look why the others were left out.',
        },
      ),
    ];
  });
}

/** Rates as rows of a table, headings first: percent of primary samples. */
export function rateRows(rates: readonly KindRate[]): readonly (readonly string[])[] {
  const percent = (value: number | undefined): string => (value === undefined ? '–' : value.toFixed(1));
  return [
    ['in 100 samples', 'wanted', 'slots give', 'put out', 'so far'],
    ...rates.map(({ kind, wantedPercent, slotsPercent, achievedPercent, count, forced, primaries }) => [
      `${kind}s`,
      percent(wantedPercent),
      percent(slotsPercent),
      percent(achievedPercent),
      `${count} beside ${primaries}${forced === 0 ? '' : `, ${forced} by hand`}`,
    ]),
  ];
}
