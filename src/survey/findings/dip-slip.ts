import { defineFinding, type Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { formatDip } from '../../quantity/dip.ts';

const RATIONALE =
  'Dip is counted from horizontal, negative downwards: a vertical hole is -90. Some tools and sheets count upwards, or from vertical, and the ' +
  'number alone does not say which.';

export const dipUpwards = defineFinding({
  code: 'survey-dip-upwards',
  severity: 'fault',
  title: 'A dip points upwards.',
  rationale: RATIONALE,
});

export const dipFromVertical = defineFinding({
  code: 'survey-dip-from-vertical',
  severity: 'warning',
  title: 'A dip looks like an inclination from vertical.',
  rationale: RATIONALE,
});

/** A dip further from the expected one than this is looked at, and a guess at it has to come this near, degrees. */
const FAR_DEG = 10;
const NEAR_DEG = 5;

/** A dip as typed against the dip the hole should have there (line-up, plan or the shot above), degrees. */
export function checkDipSlip(typedDeg: number, expectedDeg: number, place: Place): readonly Finding[] {
  const at = { ...place, field: 'dip' };
  const excerpt = `${typedDeg} typed, about ${formatDip(expectedDeg)} expected`;
  const size = Math.abs(typedDeg);
  const inclination = 90 + expectedDeg;
  if (Math.abs(size + expectedDeg) > FAR_DEG && Math.abs(size - inclination) <= NEAR_DEG)
    return [
      dipFromVertical.at(at, {
        excerpt,
        problem: `this is likely an inclination from vertical: as a dip it is ${formatDip(size - 90)}`,
        remedy: `Record ${formatDip(size - 90)} if the tool counts from vertical.`,
      }),
    ];
  if (typedDeg > 0 && expectedDeg < 0)
    return [
      dipUpwards.at(at, {
        excerpt,
        problem: `a dip of ${formatDip(typedDeg)} points upwards`,
        remedy: `Downwards is negative: ${formatDip(-typedDeg)}?`,
      }),
    ];
  return [];
}
