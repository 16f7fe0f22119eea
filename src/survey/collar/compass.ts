import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { type Azimuth, azimuth, degreesBetween, formatAzimuth } from '../../quantity/azimuth.ts';
import { checkCompassDistances, checkMagneticGround, type DistanceMean } from '../checks/compass-no-check.ts';
import { meanOnCircle } from '../norths/circle.ts';
import type { SurveySettings } from '../settings.ts';

/** A compass reading: degrees magnetic, how far from the rig, and whether it was sighted back at the rig. */
export interface CompassReading {
  readonly deg: number;
  readonly distanceM: number;
  readonly sightedBack: boolean;
}

/** What a reading turned out to be beside the azimuth it should show. */
export type Recognised = 'as expected' | 'the other way round' | 'neither';

/** A reading within this of a bearing is taken for it, degrees: wide, for the two it is told from are 180° apart. */
const RECOGNISED_DEG = 30;

/** The number to expect on the compass, magnetic: the azimuth looking along the hole, its back-bearing sighted back. */
export function expectedReading(along: Azimuth, sightedBack: boolean): Azimuth {
  return sightedBack ? azimuth(along.deg + 180, along.north, along.epoch) : along;
}

/** Tells a reading that is the expected one from one that is the other way round (± 180°). */
export function recogniseReading(readingDeg: number, expected: Azimuth): Recognised {
  const off = Math.abs(degreesBetween(readingDeg, expected.deg));
  if (off <= RECOGNISED_DEG) return 'as expected';
  return off >= 180 - RECOGNISED_DEG ? 'the other way round' : 'neither';
}

/** What the compass says, all readings together. */
export interface CompassAnswer {
  /** The mean, looking along the hole, magnetic; undefined when the readings are not to be used. */
  readonly azimuth: Azimuth | undefined;
  readonly spreadDeg: number | undefined;
  /** Each reading, in the order taken: what it was recognised as, and the azimuth along the hole taken from it. */
  readonly readings: readonly { readonly recognised: Recognised; readonly alongDeg: number }[];
  readonly findings: readonly Finding[];
}

/**
 * Compass readings against the planned azimuth (magnetic). A reading that is the other way round is recognised and turned. Readings
 * nearer to the rig than the settings allow are left out; means at two distances have to agree, or none is used; and in magnetic
 * ground the compass is refused as the only check.
 */
export function assessCompass(
  taken: readonly CompassReading[],
  planned: Azimuth,
  settings: SurveySettings,
  place: Place,
): CompassAnswer {
  const readings = taken.map((reading) => alongHole(reading, planned));
  const far = taken.flatMap((reading, index) =>
    reading.distanceM >= settings.compassNearestM
      ? [{ distanceM: reading.distanceM, alongDeg: readings[index]!.alongDeg }]
      : [],
  );
  const means = byDistance(far);
  const findings = [
    ...checkCompassDistances(means, settings, place),
    ...checkMagneticGround(settings.magneticGround, place),
  ];
  const mean = meanOnCircle(far.map((reading) => reading.alongDeg));
  const usable = mean !== undefined && findings.length === 0;
  return {
    azimuth: usable ? azimuth(mean.meanDeg, 'magnetic', planned.epoch) : undefined,
    spreadDeg: mean?.spreadDeg,
    readings,
    findings,
  };
}

function alongHole(reading: CompassReading, planned: Azimuth) {
  const recognised = recogniseReading(reading.deg, expectedReading(planned, reading.sightedBack));
  const back = reading.sightedBack !== (recognised === 'the other way round');
  return { recognised, alongDeg: azimuth(reading.deg + (back ? 180 : 0), 'magnetic').deg };
}

function byDistance(
  readings: readonly { readonly distanceM: number; readonly alongDeg: number }[],
): readonly DistanceMean[] {
  const distances = [...new Set(readings.map((one) => one.distanceM))].sort((a, b) => a - b);
  return distances.flatMap((distanceM) => {
    const mean = meanOnCircle(
      readings.filter((one) => one.distanceM === distanceM).map((one) => one.alongDeg),
    );
    return mean === undefined ? [] : [{ distanceM, meanDeg: mean.meanDeg }];
  });
}

/** `expect 088.5° magnetic along the hole, 268.5° magnetic sighted back`. */
export function formatExpected(planned: Azimuth): string {
  return `expect ${formatAzimuth(expectedReading(planned, false))} along the hole, ${formatAzimuth(expectedReading(planned, true))} sighted back`;
}
