import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Shot } from '../../hole/direction.ts';
import { magneticDipSign, magneticFieldOff } from '../findings.ts';
import type { MagneticField } from '../norths/declination.ts';
import type { SurveySettings } from '../settings.ts';
import { placeOfShot, type RunWithShots } from '../shots/run-with-shots.ts';

type FieldSettings = Pick<SurveySettings, 'fieldToleranceNt' | 'magneticDipToleranceDeg'>;

/** Total field and magnetic dip of each shot, where the tool gives them, against the model at the collar and date. */
export function checkMagneticField(
  { run, shots }: RunWithShots,
  field: MagneticField,
  settings: FieldSettings,
  place: Place,
): readonly Finding[] {
  return shots
    .filter((shot) => shot.azimuthRejected === undefined && shot.rejected === undefined)
    .flatMap((shot) => {
      const at = placeOfShot(place, run, shot);
      const parts = offParts(shot, field, settings);
      const unsigned = dipWithoutSign(shot, field, settings);
      const rightSign = unsigned === undefined ? '' : `${(-unsigned).toFixed(1)}°`;
      if (parts.length > 0)
        return [
          magneticFieldOff.at(at, {
            excerpt: parts.join('; '),
            problem: `the field at this shot is not the Earth's by ${field.model}: its azimuth is doubtful`,
            remedy: `Reject the azimuth alone (keep the dip). Ask the driller to survey again with a gyro if it matters.${
              unsigned === undefined
                ? ''
                : ` Its magnetic dip lacks its sign: down is positive, here ${rightSign}.`
            }`,
          }),
        ];
      if (unsigned === undefined) return [];
      return [
        magneticDipSign.at(at, {
          excerpt: `magnetic dip ${unsigned.toFixed(1)}°, expected ${field.dipDeg.toFixed(1)}°`,
          problem:
            'the magnetic dip is likely written with the wrong sign, or without one; the field is sound',
          remedy: `Down is positive: here it is ${rightSign}. The azimuth is kept.`,
        }),
      ];
    });
}

/** True where the field at a shot is not the Earth's, and its azimuth says nothing. A dip without its sign is no such field. */
export function fieldOff(shot: Shot, field: MagneticField, settings: FieldSettings): boolean {
  return offParts(shot, field, settings).length > 0;
}

/** The magnetic dip of a shot where it is the model's with the other sign; undefined where it is not. */
function dipWithoutSign(shot: Shot, field: MagneticField, settings: FieldSettings): number | undefined {
  const { magneticDipDeg: measured } = shot;
  const tolerance = settings.magneticDipToleranceDeg;
  if (measured === undefined || Math.abs(measured - field.dipDeg) <= tolerance) return undefined;
  return Math.abs(-measured - field.dipDeg) <= tolerance ? measured : undefined;
}

function offParts(shot: Shot, field: MagneticField, settings: FieldSettings): readonly string[] {
  const signed = dipWithoutSign(shot, field, settings) === undefined ? shot.magneticDipDeg : undefined;
  return [
    ...offBy(shot.fieldNt, field.totalNt, settings.fieldToleranceNt, 'total field', ' nT', 0),
    ...offBy(signed, field.dipDeg, settings.magneticDipToleranceDeg, 'magnetic dip', '°', 1),
  ];
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
