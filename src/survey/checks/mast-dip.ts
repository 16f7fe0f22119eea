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
        remedy: "Read the mast with the crew's gauge and with your own clinometer, the rig stopped.",
      }),
    ];
  const apart = Math.abs(crewDeg - clinometerDeg);
  if (apart <= toleranceDeg + 1e-9) return [];
  return [
    mastDip.at(at, {
      excerpt: `crew ${formatDip(crewDeg)}, clinometer ${formatDip(clinometerDeg)}`,
      problem: `crew and clinometer differ by ${apart.toFixed(1)}°`,
      remedy: 'Read both again on clean steel; check the clinometer by turning it end for end.',
    }),
  ];
}
