import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Collar } from '../../hole/header.ts';
import { collarFixPoor } from '../findings.ts';
import type { SurveySettings } from '../settings.ts';

/** What tells how good a GPS position is. */
export interface FixQuality {
  /** Root mean square distance of the fixes from their mean, metres. */
  readonly scatterM: number;
  readonly fewestSatellites: number | undefined;
  /** Horizontal dilution of precision, HDOP. */
  readonly worstDilution: number | undefined;
}

/** What a collar keeps of its fix; undefined where it is not a fix of a GPS, or of a time when that was not kept. */
export function fixOf({ fix }: Collar): FixQuality | undefined {
  return fix === undefined
    ? undefined
    : {
        scatterM: fix.scatterMm / 1000,
        fewestSatellites: fix.fewestSatellites,
        worstDilution: fix.worstDilutionPercent === undefined ? undefined : fix.worstDilutionPercent / 100,
      };
}

/** The fix as the collar keeps it. */
export function fixKept({
  scatterM,
  fewestSatellites,
  worstDilution,
}: FixQuality): NonNullable<Collar['fix']> {
  return {
    scatterMm: Math.round(scatterM * 1000),
    ...(fewestSatellites === undefined ? {} : { fewestSatellites }),
    ...(worstDilution === undefined ? {} : { worstDilutionPercent: Math.round(worstDilution * 100) }),
  };
}

/** Four satellites give a position and nothing that checks it; common practice asks for one more. */
const FEWEST_SATELLITES = 5;

/** A dilution over this multiplies a receiver's own metres past what a peg can be told by; common practice. */
const MOST_DILUTION = 5;

/** A fix that no peg can be judged by: too few satellites, badly spread ones, or positions that scatter further than the tolerance. */
export function checkFix(
  { scatterM, fewestSatellites, worstDilution }: FixQuality,
  settings: Pick<SurveySettings, 'collarToleranceM'>,
  place: Place,
): readonly Finding[] {
  const poor = [
    ...(fewestSatellites !== undefined && fewestSatellites < FEWEST_SATELLITES
      ? [`${fewestSatellites} satellites (at least ${FEWEST_SATELLITES})`]
      : []),
    ...(worstDilution !== undefined && worstDilution > MOST_DILUTION
      ? [`HDOP ${worstDilution.toFixed(1)} (at most ${MOST_DILUTION})`]
      : []),
    ...(scatterM > settings.collarToleranceM
      ? [`scatter ${scatterM.toFixed(1)} m (at most ${settings.collarToleranceM} m)`]
      : []),
  ];
  if (poor.length === 0) return [];
  return [
    collarFixPoor.at(place, {
      problem: `the GPS fix is too poor to judge the peg by: ${poor.join(', ')}`,
      remedy: 'Stay outside the exclusion zone. Wait for more satellites under open sky, and read it again.',
    }),
  ];
}
