import { defineFinding, type Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';

export const azimuthOffCircle = defineFinding({
  code: 'survey-azimuth-off-circle',
  severity: 'fault',
  title: 'An azimuth is no number from 0 to 360.',
  rationale:
    'A circle ends at 360°. A number beyond it is a slipped digit, and quietly folding it back (365 to 5) would turn the slip into a ' +
    'good-looking azimuth.',
});

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
