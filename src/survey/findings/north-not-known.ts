import { defineFinding, type Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { North } from '../../quantity/azimuth.ts';

export const northUnknown = defineFinding({
  code: 'survey-north-not-known',
  severity: 'fault',
  title: "Azimuths can't be turned to the north that the path is counted from.",
  rationale:
    'An azimuth without the angle from its north to the grid has no place on the map. Taken as it stands it would turn the hole by ' +
    'the declination, the convergence, or both.',
});

/** Azimuths of one north that are wanted in another, without the angle between the two. */
export function northNotKnown(from: North, to: North, place: Place): Finding {
  return northUnknown.at(place, {
    problem: `azimuths from ${from} north can't be turned to ${to} north: an angle between them isn't known`,
    remedy:
      "Set the project's grid (and mine grid), and see that the collar has a position and the run a date.",
  });
}
