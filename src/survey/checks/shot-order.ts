import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { shotOrder } from '../findings.ts';
import { placeOfShot, type RunWithShots } from '../shots/run-with-shots.ts';

/** A step between shots may be out by this much and still be the run's own, metres, or this part of it. */
const STEP_SLACK_M = 1.5;
const STEP_SLACK_PART = 0.06;
/** Fewer shots than this keep no step. */
const FEWEST_SHOTS = 3;

/**
 * True where shots, whatever order they were typed in, lie one step apart from top to bottom: the order is then that of the sheet, or of a
 * shot that was typed late, and says nothing against any depth. A depth that was misread leaves a gap where it belongs.
 */
export function keepOneStep(depthsMm: readonly number[]): boolean {
  if (depthsMm.length < FEWEST_SHOTS) return false;
  const sorted = depthsMm.toSorted((a, b) => a - b).map((each) => each / 1000);
  const gaps = sorted.slice(1).map((depth, index) => depth - (sorted[index] ?? 0));
  const stepM = gaps.toSorted((a, b) => a - b)[Math.floor(gaps.length / 2)] ?? 0;
  const slackM = Math.max(STEP_SLACK_M, STEP_SLACK_PART * stepM);
  return stepM > slackM && gaps.every((gap) => Math.abs(gap - stepM) <= slackM);
}

/** True where each depth is below the one before. */
export function isDown(depthsMm: readonly number[]): boolean {
  return depthsMm.slice(1).every((depth, index) => depth > (depthsMm[index] ?? 0));
}

/** Shots of a run in the order recorded: each below the one before, above it on the way out, unless together they keep one step. */
export function checkShotOrder({ run, shots }: RunWithShots, place: Place): readonly Finding[] {
  const out = run.pass === 'out';
  const kept = shots.filter((shot) => shot.rejected === undefined);
  // An out run typed as on its sheet, from the top down: the second shot would be in doubt already.
  if (out && isDown(kept.map(({ depthMm }) => depthMm))) return [];
  if (keepOneStep(kept.map(({ depthMm }) => depthMm))) return [];
  return kept.slice(1).flatMap((shot, index) => {
    const before = kept[index]!;
    const onward = out ? shot.depthMm < before.depthMm : shot.depthMm > before.depthMm;
    if (onward) return [];
    return [
      shotOrder.at(placeOfShot(place, run, shot), {
        excerpt: `${formatDepth(before.depthMm)} m, then ${formatDepth(shot.depthMm)} m`,
        problem: `this depth is not ${out ? 'above' : 'below'} the one before it in the run`,
        remedy:
          "Check both depths against the driller's sheet: reject one that is wrong. One that was only typed late may stay.",
      }),
    ];
  });
}
