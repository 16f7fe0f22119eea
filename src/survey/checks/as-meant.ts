import { azimuth, type North } from '../../quantity/azimuth.ts';
import { dip } from '../../quantity/dip.ts';
import type { Direction } from '../direction.ts';
import { type NorthAngles, toNorth } from '../norths/norths.ts';
import type { RunWithShots } from '../shots/run-with-shots.ts';
import type { RankedStation } from '../shots/runs.ts';
import { isBackBearing } from './back-bearing.ts';
import { dipSlip } from './dip-slip.ts';

/**
 * A station as it was meant, where its dip or azimuth is told to be a slip: the checks that look for anything else read this, so that
 * what one slip brings about is not told as a second fault.
 */
export function stationAsMeant(one: RankedStation, along: Direction): RankedStation {
  if (one.basis === 'set') return one;
  const meant = { ...one, dip: dip(dipSlip(one.dip, along.dip)?.meantDeg ?? one.dip) };
  return isBackBearing(meant, along)
    ? { ...meant, azimuth: azimuth(one.azimuth.deg + 180, one.azimuth.north) }
    : meant;
}

/** The shots of a run as they were meant, the same way; `along` is of the north `north`. */
export function runAsMeant(
  run: RunWithShots,
  along: Direction,
  north: North,
  angles: NorthAngles,
): RunWithShots {
  const shots = run.shots.map((shot) => {
    const dipDeg = dipSlip(shot.dipDeg, along.dip)?.meantDeg ?? shot.dipDeg;
    if (shot.azimuthDeg === undefined) return { ...shot, dipDeg };
    const turned = toNorth(azimuth(shot.azimuthDeg, run.run.north), north, angles);
    const back = turned !== undefined && isBackBearing({ azimuth: turned, dip: dip(dipDeg) }, along);
    return { ...shot, dipDeg, azimuthDeg: back ? (shot.azimuthDeg + 180) % 360 : shot.azimuthDeg };
  });
  return { ...run, shots };
}
