import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { North } from '../../quantity/azimuth.ts';
import { northUnknown } from '../findings.ts';

/** Azimuths of one north that are wanted in another, without the angle between the two. */
export function northNotKnown(from: North, to: North, place: Place): Finding {
  return northUnknown.at(place, {
    problem: `azimuths from ${from} north can't be turned to ${to} north: an angle between them isn't known`,
    remedy:
      "Set the project's grid (and mine grid), and see that the collar has a position and the run a date.",
  });
}
