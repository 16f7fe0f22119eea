import { degreesBetween } from '../../quantity/azimuth.ts';
import { radians } from '../direction.ts';
import type { Geographic } from '../norths/grids.ts';
import { type Fix, type FixKind, readNmea } from './nmea.ts';

/** GPS fixes averaged, with what tells how good they are. */
interface AveragedFix extends Geographic {
  readonly heightM: number | undefined;
  readonly fixes: number;
  /** How they were made, each way once. */
  readonly kinds: readonly FixKind[];
  /** Root mean square distance of the fixes from their mean, metres. A receiver's slow drift doesn't show in it. */
  readonly scatterM: number;
  readonly fewestSatellites: number | undefined;
  readonly worstDilution: number | undefined;
}

/** The lines of a receiver read: the average if there is any fix, and what was left out and why. */
export interface FixesRead {
  readonly average: AveragedFix | undefined;
  readonly leftOut: readonly { readonly line: number; readonly text: string; readonly reason: string }[];
}

/** Metres to a degree of latitude, near enough for a scatter of metres. */
const METRES_PER_DEGREE = 111_200;

/**
 * Reads the sentences of a GPS, one a line, and averages their fixes. Where there are GGA sentences (they say how good a fix is) RMC
 * ones are not counted a second time.
 */
export function readFixes(text: string): FixesRead {
  const lines = text.split(/\r?\n/).map((line, index) => ({ line: index + 1, text: line }));
  const fixes: Fix[] = [];
  const leftOut: { line: number; text: string; reason: string }[] = [];
  for (const { line, text: sentence } of lines.filter((one) => one.text.trim() !== '')) {
    const read = readNmea(sentence);
    if (read.kind === 'fix') fixes.push(read.fix);
    else leftOut.push({ line, text: sentence, reason: read.reason });
  }
  const rich = fixes.filter((fix) => fix.sentence === 'GGA');
  return { average: averageOf(rich.length > 0 ? rich : fixes), leftOut };
}

function averageOf(fixes: readonly Fix[]): AveragedFix | undefined {
  const [first] = fixes;
  if (first === undefined) return undefined;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const latDeg = mean(fixes.map((fix) => fix.latDeg));
  const lonDeg = first.lonDeg + mean(fixes.map((fix) => degreesBetween(fix.lonDeg, first.lonDeg)));
  const squares = fixes.map((fix) => {
    const north = (fix.latDeg - latDeg) * METRES_PER_DEGREE;
    const east = degreesBetween(fix.lonDeg, lonDeg) * METRES_PER_DEGREE * Math.cos(radians(latDeg));
    return north * north + east * east;
  });
  const known = (key: 'heightM' | 'satellites' | 'dilution') => fixes.flatMap((fix) => fix[key] ?? []);
  const heights = known('heightM');
  return {
    latDeg,
    lonDeg: degreesBetween(lonDeg, 0),
    heightM: heights.length === 0 ? undefined : mean(heights),
    fixes: fixes.length,
    kinds: [...new Set(fixes.map((fix) => fix.kind))],
    scatterM: Math.sqrt(mean(squares)),
    fewestSatellites: known('satellites').reduce<number | undefined>(
      (a, b) => Math.min(a ?? b, b),
      undefined,
    ),
    worstDilution: known('dilution').reduce<number | undefined>((a, b) => Math.max(a ?? b, b), undefined),
  };
}
