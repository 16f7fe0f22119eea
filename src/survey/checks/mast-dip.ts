import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { formatDip } from '../../quantity/dip.ts';
import { mastDip } from '../findings.ts';

/** The crew's dip of the mast against the geologist's clinometer, degrees; one of them missing is a finding too. */
export function checkMastDip(
  crewDeg: number | undefined,
  clinometerDeg: number | undefined,
  toleranceDeg: number,
  place: Place,
): readonly Finding[] {
  const at = { ...place, field: 'dip' };
  if (crewDeg === undefined || clinometerDeg === undefined)
    return [
      mastDip.at(at, {
        problem: 'the dip of the mast was read once only',
        remedy:
          "Ask the driller to read out the crew's gauge. Ask the driller to take you in with your own clinometer, once the rig is stopped and isolated.",
      }),
    ];
  const apart = Math.abs(crewDeg - clinometerDeg);
  if (apart <= toleranceDeg + 1e-9) return [];
  return [
    mastDip.at(at, {
      excerpt: `crew ${formatDip(crewDeg)}, clinometer ${formatDip(clinometerDeg)}`,
      problem: `crew and clinometer differ by ${apart.toFixed(1)}°`,
      remedy:
        'Ask the driller to read the gauge again, and to take you in with your clinometer once the rig is stopped and isolated. Check the clinometer first, by turning it end for end.',
    }),
  ];
}
