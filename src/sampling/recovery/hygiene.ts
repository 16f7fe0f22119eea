import type { Finding } from '../../finding/finding.ts';
import type { Hygiene, StreamFact } from '../../hole/drilled.ts';
import { type Interval, overlaps, within } from '../../quantity/interval.ts';
import { hygieneNotLooked, hygieneUnclean, metresContaminated } from '../findings.ts';
import { runsOf } from '../numbers/metre-runs.ts';
import { NEAR_SPLITTER } from '../rod/mismatch.ts';

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
    ['wet', isWet(sample, over)],
    ['contaminated', over.some((fact) => fact.contaminated === true)],
    ['injected water', over.some((fact) => fact.water === 'injected')],
    ['groundwater', over.some((fact) => fact.water === 'groundwater')],
    ['first of the rod', rod?.fromMm === sample.fromMm],
    ['not cleaned', rod?.fromMm === sample.fromMm && uncleanOf(rod.hygiene).length > 0],
  ];
  return flags.filter(([, holds]) => holds).map(([flag]) => flag);
}

/** True where the latest word on a sample, or on a part of it, is wet: a later word on all of it takes the place of the ones before. */
function isWet(sample: Interval, over: readonly StreamFact[]): boolean {
  const seen = over.filter((fact) => fact.moisture !== undefined);
  const whole = seen.findLastIndex((fact) => within(sample, fact));
  return seen.slice(Math.max(0, whole)).some((fact) => fact.moisture === 'wet');
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

/**
 * Rods where something was not clean, and, where the project looks once in so many rods (`everyRods`), the rods of a hole that no one
 * looked at for longer, all in one.
 */
export function checkHygiene(
  hole: string,
  rods: readonly HygieneRod[],
  everyRods: number | undefined,
): readonly Finding[] {
  return [
    ...rods.flatMap((rod) => checkRod(hole, rod)),
    ...(everyRods === undefined ? [] : checkLooked(hole, rods, everyRods)),
  ];
}

function checkRod(hole: string, { rod, fromMm, toMm, hygiene }: HygieneRod): readonly Finding[] {
  const unclean = uncleanOf(hygiene);
  if (unclean.length === 0) return [];
  return [
    hygieneUnclean.at(
      { hole, fromMm, toMm, thing: `rod ${rod}` },
      {
        excerpt: unclean.join(', '),
        problem: `At this rod: ${unclean.join(', ')}.`,
        remedy: `Flag the first metre of the next rod. Ask the driller to have it put right. ${NEAR_SPLITTER}`,
      },
    ),
  ];
}

function checkLooked(hole: string, rods: readonly HygieneRod[], everyRods: number): readonly Finding[] {
  const late = rods.filter((_, index) => {
    const round = rods.slice(Math.max(0, index - everyRods + 1), index + 1);
    return round.length === everyRods && round.every((rod) => rod.hygiene === undefined);
  });
  if (late.length === 0) return [];
  return [
    hygieneNotLooked.at(
      { hole },
      {
        excerpt: late.map((rod) => rod.rod).join(', '),
        problem: `${late.length} of ${rods.length} rods ${late.length === 1 ? 'has' : 'have'} no record of cyclone, splitter and hole; ${everyRods === 1 ? 'every rod' : `one in ${everyRods} rods`} is to have one.`,
        remedy: 'Say what was seen with ;rod or ;hygiene, like cslh; what was not looked at stays open.',
      },
    ),
  ];
}

/** Metres seen to be contaminated, joined where they follow one another: flagged, never hidden. */
export function checkContaminated(
  hole: string,
  metres: readonly { readonly fromMm: number; readonly toMm: number; readonly flags: readonly Flag[] }[],
): readonly Finding[] {
  return runsOf(metres, (metre) => metre.flags.includes('contaminated')).map(({ fromMm, toMm, count }) =>
    metresContaminated.at(
      { hole, fromMm, toMm },
      {
        problem: count === 1 ? 'Contaminated.' : `${count} metres are contaminated.`,
        remedy: 'The flag stays with the samples. Spear the piles again where they are clean.',
      },
    ),
  );
}
