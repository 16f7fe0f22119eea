import { defineFinding, type Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { bearingAndDistance, type MapPosition } from '../grids.ts';
import type { SurveySettings } from '../settings.ts';

export const collarOffPlan = defineFinding({
  code: 'survey-collar-off-plan',
  severity: 'warning',
  title: 'The collar as drilled is not where it was planned.',
  rationale:
    'A peg moved for the pad, or the wrong peg, moves the whole hole by the same metres. It is cheap to see before drilling, and a ' +
    'handheld fix is enough to see it.',
});

/** A collar as found against where it was planned, both of one grid. */
export function checkCollarOnPlan(
  found: MapPosition,
  planned: MapPosition,
  settings: Pick<SurveySettings, 'collarToleranceM'>,
  place: Place,
): readonly Finding[] {
  const { deg, metres } = bearingAndDistance(planned, found);
  if (metres <= settings.collarToleranceM) return [];
  return [
    collarOffPlan.at(place, {
      problem: `the collar is ${metres.toFixed(1)} m from where it was planned, towards ${deg.toFixed(0).padStart(3, '0')}° grid`,
      remedy: 'Is the rig on the right peg? If the peg was moved, say so and plan the direction anew.',
    }),
  ];
}
