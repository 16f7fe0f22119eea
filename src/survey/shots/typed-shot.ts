import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { foldDegrees } from '../../quantity/azimuth.ts';
import { DEEPEST_M, type Depth, depthFromMetres } from '../../quantity/depth.ts';
import { checkAzimuthOnCircle } from '../checks/azimuth-off-circle.ts';
import { checkDipSlip } from '../checks/dip-slip.ts';
import { offScale } from '../findings.ts';

/** A shot as a person or a file gives it: metres and degrees, not checked. */
export interface TypedShot {
  readonly depthM: number;
  readonly dipDeg: number;
  readonly azimuthDeg?: number;
}

/** A shot that can be recorded. */
export interface ReadShot {
  readonly depthMm: Depth;
  readonly dipDeg: number;
  readonly azimuthDeg?: number;
}

/** A shot, if it can be recorded at all, and what is doubtful about it. */
export interface ShotAnswer {
  readonly shot: ReadShot | undefined;
  readonly findings: readonly Finding[];
}

/**
 * A shot as typed, against the dip the hole should have (undefined where nothing is known). Slips of the pen (+60 for −60, an
 * inclination for a dip) come back as findings beside the shot, as it was typed: nothing is corrected in silence. What can't be a
 * shot at all (azimuth 365, a dip beyond vertical, a depth off the scale) gives none.
 */
export function readTypedShot(typed: TypedShot, expectedDip: number | undefined, place: Place): ShotAnswer {
  const { depthM, dipDeg, azimuthDeg } = typed;
  const impossible = [
    ...(azimuthDeg === undefined ? [] : checkAzimuthOnCircle(azimuthDeg, place)),
    ...checkDipOnScale(dipDeg, place),
    ...checkDepthOnScale(depthM, place),
  ];
  if (impossible.length > 0) return { shot: undefined, findings: impossible };
  return {
    shot: {
      depthMm: depthFromMetres(depthM),
      dipDeg,
      ...(azimuthDeg === undefined ? {} : { azimuthDeg: foldDegrees(azimuthDeg) }),
    },
    findings: expectedDip === undefined ? [] : checkDipSlip(dipDeg, expectedDip, place),
  };
}

function checkDipOnScale(dipDeg: number, place: Place): readonly Finding[] {
  if (dipDeg >= -90 && dipDeg <= 90) return [];
  return [
    offScale.at(
      { ...place, field: 'dip' },
      {
        excerpt: String(dipDeg),
        problem: 'a dip runs from -90 (vertically down) to 90',
        remedy:
          dipDeg > 90 && dipDeg <= 180
            ? `Is it counted from vertically up? Then it is ${(90 - dipDeg).toFixed(1)}°.`
            : 'Type it again.',
      },
    ),
  ];
}

function checkDepthOnScale(depthM: number, place: Place): readonly Finding[] {
  if (depthM >= 0 && depthM <= DEEPEST_M) return [];
  return [
    offScale.at(
      { ...place, field: 'depth' },
      {
        excerpt: String(depthM),
        problem: `a depth runs from 0 to ${DEEPEST_M} m`,
        remedy: 'Type it again, in metres along the hole.',
      },
    ),
  ];
}
