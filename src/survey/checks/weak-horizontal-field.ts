import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { compassBlackout, compassCaution } from '../findings.ts';

/** Horizontal field under which a compass is unusable (blackout zone) and under which it wants caution, nT: WMM technical report. */
const BLACKOUT_NT = 2000;
const CAUTION_NT = 6000;

/** What the horizontal field, nT, says about the use of a compass and of magnetic tools. */
export function checkHorizontalField(horizontalNt: number, place: Place): readonly Finding[] {
  if (horizontalNt >= CAUTION_NT) return [];
  const excerpt = `horizontal field ${Math.round(horizontalNt)} nT`;
  return horizontalNt < BLACKOUT_NT
    ? [
        compassBlackout.at(place, {
          excerpt,
          problem: 'a blackout zone: no compass and no magnetic tool can be used',
          remedy:
            'Ask the driller to set the rig and survey the hole with tools that need no magnetic north.',
        }),
      ]
    : [
        compassCaution.at(place, {
          excerpt,
          problem: 'the horizontal field is weak: compass azimuths are poor',
          remedy: 'Check each magnetic azimuth against one that needs no magnetic north.',
        }),
      ];
}
