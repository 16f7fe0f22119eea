import type { Finding } from '../../finding/finding.ts';
import { formatMass } from '../../quantity/mass.ts';
import {
  metresWet,
  recoveryHigh,
  recoveryLow,
  recoveryTrendFound,
  splitOffTarget,
  wetRun,
} from '../findings.ts';
import { type MetreRun, runsOf } from '../numbers/metre-runs.ts';
import { NEAR_SPLITTER } from '../rod/mismatch.ts';
import type { Sampling } from '../sampling.ts';
import { type Recovery, recoveryTrend } from './recovery.ts';

/** A fall that is named, percent of recovery a hundred metres; common practice. */
const FALL = -10;

/** Wet metres in a row that are named, common practice. */
const WET_IN_A_ROW = 3;

/** What stands out in the recovery of a hole: low and high metres, splits off their target, wet metres and runs, a fall with depth. Metres from the top down. */
export function checkRecovery(
  sampling: Sampling,
  hole: string,
  metres: readonly Recovery[],
): readonly Finding[] {
  return [
    ...metres.flatMap((metre) => checkMetre(sampling, hole, metre)),
    ...(['poor', 'none'] as const).flatMap((seen) =>
      runsOf(metres, (metre) => metre.percent === undefined && metre.seen === seen).map(({ fromMm, toMm }) =>
        recoveryLow.at(
          { hole, fromMm, toMm },
          {
            problem: seen === 'none' ? 'Nothing came up, by eye.' : 'Recovery is poor by eye.',
            remedy: TELL_THE_DRILLER,
          },
        ),
      ),
    ),
    ...runsOf(metres, (metre) => metre.moisture === 'wet').map((run) => wetFinding(hole, run)),
    ...checkTrend(hole, metres),
  ];
}

const TELL_THE_DRILLER =
  'Tell the driller, look for leaks and blockages from where you are, and flag the metre.';

function wetFinding(hole: string, { fromMm, toMm, count }: MetreRun): Finding {
  const place = { hole, fromMm, toMm };
  return count < WET_IN_A_ROW
    ? metresWet.at(place, {
        problem: count === 1 ? 'Wet.' : `${count} metres are wet.`,
        remedy: 'Don’t riffle wet chips: spear the pile when it is dry. The flag stays with the sample.',
      })
    : wetRun.at(place, {
        problem: `${count} wet metres in a row.`,
        remedy:
          'Don’t riffle wet chips: spear the piles when they are dry, and ask the driller about the air.',
      });
}

function checkMetre(sampling: Sampling, hole: string, metre: Recovery): readonly Finding[] {
  const place = { hole, fromMm: metre.fromMm, toMm: metre.toMm };
  const { lowPercent, highPercent } = sampling.recovery;
  const { percent, splitG } = metre;
  const weighed =
    percent === undefined
      ? ''
      : `${percent.toFixed(0)} % came up: ${formatMass(metre.recoveredG ?? 0)} of ${formatMass(metre.expectedG ?? 0)}.`;
  return [
    ...(percent !== undefined && percent < lowPercent
      ? [recoveryLow.at(place, { problem: weighed, remedy: TELL_THE_DRILLER })]
      : []),
    ...(percent !== undefined && percent > highPercent
      ? [
          recoveryHigh.at(place, {
            problem: weighed,
            remedy:
              'Look whether two metres are in one bag. Ask the driller to have the bit measured, and to say if the hole caves.',
          }),
        ]
      : []),
    ...(splitG === undefined || Math.abs(offTarget(sampling, splitG)) <= sampling.splitTolerancePercent
      ? []
      : [
          splitOffTarget.at(place, {
            problem: `The calico has ${formatMass(splitG)}; ${formatMass(sampling.splitTargetG)} is wanted.`,
            remedy: `Ask the driller to stop, so that the chute can be set. ${NEAR_SPLITTER}`,
          }),
        ]),
  ];
}

/** How far a split is off its target, in percent of the target; negative is under it. */
function offTarget(sampling: Sampling, splitG: number): number {
  return (100 * (splitG - sampling.splitTargetG)) / sampling.splitTargetG;
}

function checkTrend(hole: string, metres: readonly Recovery[]): readonly Finding[] {
  const trend = recoveryTrend(metres);
  const first = metres[0];
  const last = metres.at(-1);
  if (trend === undefined || trend > FALL || first === undefined || last === undefined) return [];
  return [
    recoveryTrendFound.at(
      { hole, fromMm: first.fromMm, toMm: last.toMm },
      {
        problem: `Recovery falls by ${Math.abs(trend).toFixed(0)} % in 100 m.`,
        remedy: 'Ask the driller to have the bit measured, and to look at air, seals and the inner tube.',
      },
    ),
  ];
}
