import type { Finding } from '../finding/finding.ts';
import type { Hygiene, StreamFact } from '../hole/drilled.ts';
import { type Interval, overlaps } from '../quantity/interval.ts';
import { hygieneNotLooked } from './findings/hygiene-not-looked.ts';
import { hygieneUnclean } from './findings/hygiene-unclean.ts';
import { NEAR_SPLITTER } from './mismatch.ts';

/** A rod by the id of its rod done event, the depth it ended at, and what was seen of its hygiene. */
export interface HygieneRod {
  readonly rod: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly hygiene?: Hygiene;
}

/** What makes a metre's sample less than clean. Flagged, never hidden. */
export type Flag =
  | 'wet'
  | 'contaminated'
  | 'injected water'
  | 'groundwater'
  | 'first of the rod'
  | 'not cleaned';

/** The flags of a sample: from the facts seen over it and the rod that it is in. */
export function flagsOf(
  sample: Interval,
  facts: readonly StreamFact[],
  rods: readonly HygieneRod[],
): readonly Flag[] {
  const over = facts.filter((fact) => overlaps(fact, sample));
  const rod = rods.find((each) => each.fromMm <= sample.fromMm && sample.fromMm < each.toMm);
  const flags: readonly [Flag, boolean][] = [
    ['wet', over.some((fact) => fact.moisture === 'wet')],
    ['contaminated', over.some((fact) => fact.contaminated === true)],
    ['injected water', over.some((fact) => fact.water === 'injected')],
    ['groundwater', over.some((fact) => fact.water === 'groundwater')],
    ['first of the rod', rod?.fromMm === sample.fromMm],
    ['not cleaned', rod?.fromMm === sample.fromMm && uncleanOf(rod.hygiene).length > 0],
  ];
  return flags.filter(([, holds]) => holds).map(([flag]) => flag);
}

/** What was seen to be wrong at a rod, in words. What was not looked at is not in it. */
function uncleanOf(hygiene: Hygiene | undefined): readonly string[] {
  return [
    ...(hygiene?.cycloneClean === false ? ['cyclone not clean'] : []),
    ...(hygiene?.splitterClean === false ? ['splitter not clean'] : []),
    ...(hygiene?.splitterLevel === false ? ['splitter not level'] : []),
    ...(hygiene?.holeBlownClean === false ? ['hole not blown clean'] : []),
  ];
}

/** Rods that nobody looked at, and rods where something was not clean. */
export function checkHygiene(hole: string, rods: readonly HygieneRod[]): readonly Finding[] {
  return rods.flatMap((rod) => {
    const place = { hole, fromMm: rod.fromMm, toMm: rod.toMm, thing: `rod ${rod.rod}` };
    if (rod.hygiene === undefined)
      return [
        hygieneNotLooked.at(place, {
          problem: 'Nobody recorded cyclone, splitter and hole at this rod.',
          remedy: 'Say what was seen, or leave it: it stands as not looked at.',
        }),
      ];
    const unclean = uncleanOf(rod.hygiene);
    if (unclean.length === 0) return [];
    return [
      hygieneUnclean.at(place, {
        excerpt: unclean.join(', '),
        problem: `At this rod: ${unclean.join(', ')}.`,
        remedy: `Flag the first metre of the next rod, and ask for it to be put right. ${NEAR_SPLITTER}`,
      }),
    ];
  });
}
