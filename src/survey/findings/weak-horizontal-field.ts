import { defineFinding, type Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';

/** Horizontal field under which a compass is unusable (blackout zone) and under which it wants caution, nT: WMM technical report. */
const BLACKOUT_NT = 2000;
const CAUTION_NT = 6000;

const RATIONALE =
  'A compass follows the horizontal part of the field. Near the magnetic poles that part is weak: the World Magnetic Model names under ' +
  '2,000 nT a blackout zone and under 6,000 nT a zone of caution.';

export const compassBlackout = defineFinding({
  code: 'survey-compass-blackout',
  severity: 'fault',
  title: 'A compass is unusable here.',
  rationale: RATIONALE,
});

export const compassCaution = defineFinding({
  code: 'survey-compass-caution',
  severity: 'warning',
  title: 'A compass is weak here.',
  rationale: RATIONALE,
});

/** What the horizontal field, nT, says about the use of a compass and of magnetic tools. */
export function checkHorizontalField(horizontalNt: number, place: Place): readonly Finding[] {
  if (horizontalNt >= CAUTION_NT) return [];
  const excerpt = `horizontal field ${Math.round(horizontalNt)} nT`;
  return horizontalNt < BLACKOUT_NT
    ? [
        compassBlackout.at(place, {
          excerpt,
          problem: 'a blackout zone: no compass and no magnetic tool can be used',
          remedy: 'Set the rig and survey the hole with tools that need no magnetic north.',
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
