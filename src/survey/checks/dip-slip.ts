import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { formatDip } from '../../quantity/dip.ts';
import { dipFromVertical, dipUpwards } from '../findings.ts';

/** A dip further from the expected one than this is looked at, and a guess at it has to come this near, degrees. */
const FAR_DEG = 10;
const NEAR_DEG = 5;

/** A slip of a dip and the dip that was meant; undefined where there is none. */
export function dipSlip(
  typedDeg: number,
  expectedDeg: number,
): { readonly what: 'from vertical' | 'upwards'; readonly meantDeg: number } | undefined {
  const size = Math.abs(typedDeg);
  const inclination = 90 + expectedDeg;
  if (Math.abs(size + expectedDeg) > FAR_DEG && Math.abs(size - inclination) <= NEAR_DEG)
    return { what: 'from vertical', meantDeg: size - 90 };
  return typedDeg > 0 && expectedDeg < 0 ? { what: 'upwards', meantDeg: -typedDeg } : undefined;
}

/** A dip as typed against the dip the hole should have there (line-up, plan or the shot above), degrees. */
export function checkDipSlip(typedDeg: number, expectedDeg: number, place: Place): readonly Finding[] {
  const slip = dipSlip(typedDeg, expectedDeg);
  if (slip === undefined) return [];
  const at = { ...place, field: 'dip' };
  const excerpt = `${typedDeg} typed, about ${formatDip(expectedDeg)} expected`;
  const meant = formatDip(slip.meantDeg);
  return slip.what === 'from vertical'
    ? [
        dipFromVertical.at(at, {
          excerpt,
          problem: `this is likely an inclination from vertical: as a dip it is ${meant}`,
          remedy: `Record ${meant} if the tool counts from vertical.`,
        }),
      ]
    : [
        dipUpwards.at(at, {
          excerpt,
          problem: `a dip of ${formatDip(typedDeg)} points upwards`,
          remedy: `Downwards is negative: ${meant}?`,
        }),
      ];
}
