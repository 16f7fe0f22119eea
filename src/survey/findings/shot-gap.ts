import { defineFinding, type Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { type Depth, formatDepth } from '../../quantity/depth.ts';
import type { SurveySettings } from '../settings.ts';

export const shotGap = defineFinding({
  code: 'survey-shot-gap',
  severity: 'warning',
  title: 'Too many metres without a shot.',
  rationale:
    'Between shots the path is a smooth guess. A hole that wanders inside a long gap comes out of it in the wrong place, and nothing in ' +
    'the data shows it.',
});

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
            ? 'A shot is overdue: take one at the next rod.'
            : 'Survey this part of the hole again.',
        },
      ),
    ];
  });
}
