import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { type Depth, formatDepth } from '../../quantity/depth.ts';
import { shotGap } from '../findings.ts';
import type { SurveySettings } from '../settings.ts';

/** Gaps longer than allowed between stations, and from the last one down to the drilled depth. Depths in any order. */
export function checkShotGaps(
  stationsMm: readonly Depth[],
  drilledMm: Depth,
  settings: Pick<SurveySettings, 'longestGapM'>,
  place: Place,
): readonly Finding[] {
  const down = [0, ...stationsMm.filter((depth) => depth <= drilledMm), drilledMm].sort((a, b) => a - b);
  return down.slice(1).flatMap((toMm, index) => {
    const fromMm = down[index]!;
    if (toMm - fromMm <= settings.longestGapM * 1000) return [];
    const open = toMm === drilledMm;
    return [
      shotGap.at(
        { ...place, fromMm, toMm },
        {
          problem: `${formatDepth(toMm - fromMm)} m without a shot; ${settings.longestGapM} m is allowed`,
          remedy: open
            ? 'Ask the driller to take a shot at the next rod: it is overdue.'
            : 'Ask the driller to survey this part of the hole again.',
        },
      ),
    ];
  });
}
