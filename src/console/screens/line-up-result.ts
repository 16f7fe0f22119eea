import type { LineUpStanding } from '../../desk/acts/line-up.ts';
import type { LineUpContext } from '../../desk/acts/line-up-steps.ts';
import { holeNouns } from '../../hole/hole.ts';
import { degreesBetween, formatAzimuth } from '../../quantity/azimuth.ts';
import { plannedCollar } from '../../survey/collars.ts';
import { bearingAndDistance } from '../../survey/grids.ts';
import { formatAzimuthCompared, formatDipCompared, type LineUpAnswer } from '../../survey/line-up.ts';
import { standingOf } from '../actions/line-up.ts';
import type { LineUpForm } from '../actions/line-up-form.ts';
import { type Line, line, wrap } from '../widgets/line.ts';

/** The result: each thing planned and measured, the miss it would make, what is doubtful, and what Enter does. */
export function resultWords(form: LineUpForm, context: LineUpContext, width: number): readonly Line[] {
  const standing = standingOf(form, context);
  const { answer, findings } = standing;
  const doubts = findings.flatMap((each) =>
    wrap(`? ${capital(each.problem)}. ${each.remedy}`, width, each.severity === 'fault' ? 'alert' : 'warn'),
  );
  if (answer === undefined)
    return [
      ...wrap(missingWords(form, standing), width, 'alert'),
      ...doubts,
      ...wrap('Nothing is recorded yet. Esc goes back; what was read stays.', width, 'faint'),
    ];
  return [
    ...comparedLines(answer, context, width),
    ...compassCheck(standing, context, width),
    ...collarLine(form, context, width),
    ...doubts,
    ...decisionLines(answer, width),
  ];
}

function comparedLines(answer: LineUpAnswer, { here }: LineUpContext, width: number): readonly Line[] {
  const tone = (inside: boolean) => (inside ? 'good' : 'alert');
  const steep = answer.steep
    ? ' The hole is steep: the angle in space counts, held to the tolerance of the dip.'
    : '';
  return [
    ...wrap(
      `Azimuth: ${formatAzimuthCompared(answer.azimuth, here.planned.azimuth)}.`,
      width,
      answer.steep ? 'plain' : tone(answer.azimuth.inside),
    ),
    ...wrap(
      `Dip: ${formatDipCompared(answer.dip)}.`,
      width,
      answer.steep ? 'plain' : tone(answer.dip.inside),
    ),
    ...wrap(
      `${answer.angleDeg.toFixed(2)}° apart in space: ${answer.missM.toFixed(1)} m off at the target, ${here.targetM} m down.${steep}`,
      width,
      'strong',
    ),
  ];
}

/** A compass beside pegs or a device: how far it is from them. */
function compassCheck(standing: LineUpStanding, { project }: LineUpContext, width: number): readonly Line[] {
  const { compassAzimuth, measured, compass } = standing;
  if (compassAzimuth === undefined || measured === undefined) return [];
  const apart = Math.abs(degreesBetween(compassAzimuth.deg, measured.azimuth.deg));
  const spread = compass?.spreadDeg === undefined ? '' : `, readings spread ${compass.spreadDeg.toFixed(1)}°`;
  const agrees = apart <= project.survey.compassAgreementDeg;
  return wrap(
    `Compass: ${formatAzimuth(compassAzimuth)}${spread}; ${apart.toFixed(1)}° from the azimuth${agrees ? '' : ': which of the two is wrong?'}.`,
    width,
    agrees ? 'plain' : 'alert',
  );
}

function collarLine(form: LineUpForm, { hole }: LineUpContext, width: number): readonly Line[] {
  const { collar } = form.taken;
  const planned = plannedCollar(holeNouns(hole, 'collars'));
  if (collar === undefined || planned === undefined) return [];
  const peg = { eastM: planned.eastingMm / 1000, northM: planned.northingMm / 1000 };
  const { deg, metres } = bearingAndDistance(peg, collar);
  return wrap(
    `Collar: ${metres.toFixed(1)} m from the planned one, towards ${deg.toFixed(0).padStart(3, '0')}° grid.`,
    width,
  );
}

function missingWords({ taken }: LineUpForm, { measured, set }: LineUpStanding): string {
  if (set === undefined)
    return taken.way === 'compass'
      ? 'The compass gives no azimuth that can be used.'
      : 'The azimuth was not read.';
  if (taken.crewDip === undefined && taken.clinometerDip === undefined)
    return 'The dip of the mast was not read.';
  return measured === undefined ? 'The azimuth can not be compared with the plan.' : '';
}

function decisionLines(answer: LineUpAnswer, width: number): readonly Line[] {
  if (answer.accepted)
    return [line('Inside tolerance.', 'good'), line('Enter accepts it: station 0 of the hole.', 'strong')];
  return [
    ...wrap(`OUTSIDE tolerance. ${answer.request ?? ''}`, width, 'alert'),
    ...wrap(
      'Enter alone: refused and recorded with this request; then read the mast again.',
      width,
      'strong',
    ),
    ...wrap('Or type why it is accepted all the same.', width),
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
