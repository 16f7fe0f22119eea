import { azimuth, type North } from '../../src/quantity/azimuth.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { dip } from '../../src/quantity/dip.ts';
import type { Direction } from '../../src/survey/direction.ts';
import { type Path, pathThrough, type Station } from '../../src/survey/path.ts';

/** Places and things for the tests of this room: an invented hole on an invented program. */
export const AT = { hole: 'ZQRC004' };

export const pointing = (azimuthDeg: number, dipDeg: number, north: North = 'grid'): Direction => ({
  azimuth: azimuth(azimuthDeg, north),
  dip: dip(dipDeg),
});

/** A station from metres, azimuth, dip: set at the collar, measured below it. */
export const station = (depthM: number, azimuthDeg: number, dipDeg: number): Station => ({
  ...pointing(azimuthDeg, dipDeg),
  depthMm: depthFromMetres(depthM),
  basis: depthM === 0 ? 'set' : 'measured',
});

/** A path through `[metres, azimuth, dip]`; throws when there is none. */
export function pathOf(...stations: readonly (readonly [number, number, number])[]): Path {
  const built = pathThrough(
    stations.map(([depthM, azimuthDeg, dipDeg]) => station(depthM, azimuthDeg, dipDeg)),
    AT,
  );
  if (!built.ok) throw new Error(built.findings.map((finding) => finding.problem).join('; '));
  return built.value;
}
