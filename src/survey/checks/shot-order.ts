import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { shotOrder } from '../findings.ts';
import { placeOfShot, type RunWithShots } from '../shots/run-with-shots.ts';

/** Shots of a run in the order recorded: each below the one before, above it on the way out. */
export function checkShotOrder({ run, shots }: RunWithShots, place: Place): readonly Finding[] {
  const out = run.pass === 'out';
  const kept = shots.filter((shot) => shot.rejected === undefined);
  return kept.slice(1).flatMap((shot, index) => {
    const before = kept[index]!;
    const onward = out ? shot.depthMm < before.depthMm : shot.depthMm > before.depthMm;
    if (onward) return [];
    return [
      shotOrder.at(placeOfShot(place, run, shot), {
        excerpt: `${formatDepth(before.depthMm)} m, then ${formatDepth(shot.depthMm)} m`,
        problem: `this depth is not ${out ? 'above' : 'below'} the one before it in the run`,
        remedy: "Check the depth against the driller's sheet; reject the wrong one of the two.",
      }),
    ];
  });
}
