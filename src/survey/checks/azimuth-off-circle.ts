import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { azimuthOffCircle } from '../findings.ts';

/** An azimuth as typed, degrees; 360 is north, as it is written in the field. */
export function checkAzimuthOnCircle(typedDeg: number, place: Place): readonly Finding[] {
  if (typedDeg >= 0 && typedDeg <= 360) return [];
  const folded = ((typedDeg % 360) + 360) % 360;
  return [
    azimuthOffCircle.at(
      { ...place, field: 'azimuth' },
      {
        excerpt: String(typedDeg),
        problem: 'an azimuth runs from 0 to 360',
        remedy: Number.isFinite(folded)
          ? `Type it again: a slipped digit, or ${folded.toFixed(1).padStart(5, '0')}°?`
          : 'Type degrees, like 087.5.',
      },
    ),
  ];
}
