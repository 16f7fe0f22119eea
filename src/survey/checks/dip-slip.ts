import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { formatDip } from '../../quantity/dip.ts';
import { dipFromVertical, dipUpwards } from '../findings.ts';

/** A dip further from the expected one than this is looked at, and a guess at it has to come this near, degrees. */
const FAR_DEG = 10;
const NEAR_DEG = 5;

/** A dip as typed against the dip the hole should have there (line-up, plan or the shot above), degrees. */
export function checkDipSlip(typedDeg: number, expectedDeg: number, place: Place): readonly Finding[] {
  const at = { ...place, field: 'dip' };
  const excerpt = `${typedDeg} typed, about ${formatDip(expectedDeg)} expected`;
  const size = Math.abs(typedDeg);
  const inclination = 90 + expectedDeg;
  if (Math.abs(size + expectedDeg) > FAR_DEG && Math.abs(size - inclination) <= NEAR_DEG)
    return [
      dipFromVertical.at(at, {
        excerpt,
        problem: `this is likely an inclination from vertical: as a dip it is ${formatDip(size - 90)}`,
        remedy: `Record ${formatDip(size - 90)} if the tool counts from vertical.`,
      }),
    ];
  if (typedDeg > 0 && expectedDeg < 0)
    return [
      dipUpwards.at(at, {
        excerpt,
        problem: `a dip of ${formatDip(typedDeg)} points upwards`,
        remedy: `Downwards is negative: ${formatDip(-typedDeg)}?`,
      }),
    ];
  return [];
}
