import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { collarOffPlan } from '../findings.ts';
import { bearingAndDistance, type MapPosition, metresApart } from '../norths/grids.ts';
import type { SurveySettings } from '../settings.ts';

/** A planned collar of another hole. */
export interface OtherPeg {
  readonly hole: string;
  readonly at: MapPosition;
}

/** A collar as found against where it was planned, both of one grid; one that is on the peg of another hole is told so. */
export function checkCollarOnPlan(
  found: MapPosition,
  planned: MapPosition,
  settings: Pick<SurveySettings, 'collarToleranceM'>,
  place: Place,
  others: readonly OtherPeg[] = [],
): readonly Finding[] {
  const { deg, metres } = bearingAndDistance(planned, found);
  if (metres <= settings.collarToleranceM) return [];
  const taken = others.find(({ at }) => metresApart(at, found) <= settings.collarToleranceM);
  return [
    collarOffPlan.at(place, {
      problem: `the collar is ${metres.toFixed(1)} m from where it was planned, towards ${deg.toFixed(0).padStart(3, '0')}° grid`,
      remedy:
        taken === undefined
          ? 'Is the rig on the right peg? If the peg was moved, record that and plan the direction again.'
          : `It is on the peg of ${taken.hole}: the wrong peg, or the two exchanged?`,
    }),
  ];
}
