import { formatDepth } from '../../quantity/depth.ts';
import type { LeftOut } from '../shots/standing-shots.ts';
import type { Reach, SplitMiss } from './miss.ts';
import type { ChanceBasis, GrowthPoint, Uncertainty } from './uncertainty.ts';

/** A miss in one direction: its metres, and which way. */
function sideWords(m: number, positive: string, negative: string): string {
  return Math.abs(m) < 0.05 ? '0.0' : `${Math.abs(m).toFixed(1)} ${m > 0 ? positive : negative}`;
}

/** A miss along, across and in height, each with its side: `0.7 short`, `0.5 left`, `0.9 above`. */
export function missSides({ alongM, acrossM, belowM }: SplitMiss): readonly [string, string, string] {
  return [
    sideWords(alongM, 'beyond', 'short'),
    sideWords(acrossM, 'right', 'left'),
    sideWords(belowM, 'below', 'above'),
  ];
}

/** Whether the target can still be reached, and what it would take; shots that are likely wrong say neither. */
export function reachWords(reach: Reach, limitPer30m: number, radiusM: number, basis: ChanceBasis): string {
  if (basis === 'shots marked as wrong')
    return 'Whether the target can be reached is not known: settle the shots marked as wrong first.';
  if (basis === 'no line-up')
    return 'Whether the target can be reached is not known: record the line-up first (;line-up).';
  if (reach.lengthM === undefined) {
    const off = (reach.passedM ?? Number.POSITIVE_INFINITY).toFixed(1);
    return reach.within
      ? `Target passed at ${off} m, within ${radiusM} m of it.`
      : `Target passed at ${off} m, and the hole is past it: it can’t be reached.`;
  }
  const bend = `${reach.severityPer30m.toFixed(1)}° per 30 m (limit ${limitPer30m})`;
  if (!reach.within) return `To come within ${radiusM} m it would bend ${bend}: it CAN NOT.`;
  return `Target within reach${reach.severityPer30m < 0.05 ? '' : `: bends ${bend}`}.`;
}

/** A chance in whole %, never as sure; where no shot has measured the azimuth it is only the most it can be. */
export function chanceWords(chance: number | undefined, basis: ChanceBasis): string {
  if (chance === undefined || basis === 'shots marked as wrong' || basis === 'no line-up') return 'not known';
  if (basis === 'shots that are left')
    return chance > 0.99 ? 'at most 99 %' : `about ${Math.max(1, Math.round(chance * 100))} %`;
  if (basis !== 'shots') return `at most ${Math.max(1, Math.min(99, Math.round(chance * 100)))} %`;
  if (chance > 0.995) return 'over 99 %';
  return chance < 0.005 ? 'under 1 %' : `${Math.round(chance * 100)} %`;
}

/** What a chance rests on. */
export function basisWords(basis: ChanceBasis): string {
  switch (basis) {
    case 'line-up':
      return 'no shot to go by: it rests on the line-up alone, and on how holes bend by themselves';
    case 'line-up and dips':
      return 'no azimuth to go by: it rests on that of the line-up, and on how holes turn by themselves';
    case 'shots marked as wrong':
      return 'it rests on shots marked as wrong: settle them first';
    case 'no line-up':
      return 'no line-up is accepted, and one tool alone read the azimuths: record the line-up (;line-up), or run a second tool that finds north';
    case 'shots that are left':
      return 'it goes by the shots that are left: settle those marked as wrong first';
    case 'shots':
      return 'by tool errors, and how holes stray by themselves between and below shots';
  }
}

/** How the uncertainty grows: `one sigma 0.3 m at 60 m, 0.6 m at 90 m, 1.2 m at 120 m`. Empty where nothing is projected. */
export function growthWords(growth: readonly GrowthPoint[]): string {
  const parts = growth.map(({ depthMm, sigmaM }) => `${sigmaM.toFixed(1)} m at ${formatDepth(depthMm)} m`);
  return parts.length === 0 ? '' : `One sigma grows: ${parts.join(', ')}`;
}

/** Shots that the path, the miss and the chance leave out, where there are some. */
export function leftOutWords(leftOut: readonly LeftOut[]): string {
  if (leftOut.length === 0) return '';
  const parts = (['shot', 'azimuth'] as const).flatMap((part) => {
    const depths = leftOut.filter((each) => each.part === part).map(({ depthMm }) => formatDepth(depthMm));
    return depths.length === 0
      ? []
      : [`the ${part}${depths.length === 1 ? '' : 's'} at ${depths.join(', ')} m`];
  });
  return `Left out of the path and of every figure here, marked as wrong: ${parts.join('; ')}`;
}

/** An ellipse this near to upright, or to lying, is said to be so, degrees. */
const SAME_WAY_DEG = 3;

/** The one-sigma ellipse: `± 0.6 by 0.3 m, the longer way 12° right of up`. */
export function ellipseWords({ ellipse }: Uncertainty): string {
  const longM = ellipse.longM.toFixed(1);
  if (longM === ellipse.shortM.toFixed(1)) return `± ${longM} m all round`;
  const round = ((Math.round(ellipse.angleDeg) % 180) + 180) % 180;
  const way =
    Math.min(round, 180 - round) <= SAME_WAY_DEG
      ? 'up and down'
      : Math.abs(round - 90) <= SAME_WAY_DEG
        ? 'left and right'
        : `${round}° right of up`;
  return `± ${longM} by ${ellipse.shortM.toFixed(1)} m, the longer way ${way}`;
}
