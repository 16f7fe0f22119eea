import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { magneticFieldOff } from '../findings.ts';
import type { MagneticField } from '../norths/declination.ts';
import type { SurveySettings } from '../settings.ts';
import { placeOfShot, type RunWithShots } from '../shots/run-with-shots.ts';

/** Total field and magnetic dip of each shot, where the tool gives them, against the model at the collar and date. */
export function checkMagneticField(
  { run, shots }: RunWithShots,
  field: MagneticField,
  settings: Pick<SurveySettings, 'fieldToleranceNt' | 'magneticDipToleranceDeg'>,
  place: Place,
): readonly Finding[] {
  return shots
    .filter((shot) => shot.azimuthRejected === undefined && shot.rejected === undefined)
    .flatMap((shot) => {
      const parts = [
        ...offBy(shot.fieldNt, field.totalNt, settings.fieldToleranceNt, 'total field', ' nT', 0),
        ...offBy(shot.magneticDipDeg, field.dipDeg, settings.magneticDipToleranceDeg, 'magnetic dip', '°', 1),
      ];
      if (parts.length === 0) return [];
      return [
        magneticFieldOff.at(placeOfShot(place, run, shot), {
          excerpt: parts.join('; '),
          problem: `the field at this shot is not the Earth's by ${field.model}: its azimuth is doubtful`,
          remedy: 'Reject the azimuth alone (the dip stands), or survey again with a gyro.',
        }),
      ];
    });
}

function offBy(
  measured: number | undefined,
  model: number,
  tolerance: number,
  what: string,
  unit: string,
  decimals: number,
): readonly string[] {
  if (measured === undefined || Math.abs(measured - model) <= tolerance) return [];
  return [`${what} ${measured.toFixed(decimals)}${unit}, expected ${model.toFixed(decimals)}${unit}`];
}
