import type { Finding } from '../finding/finding.ts';
import { holeNouns } from '../hole/hole.ts';
import { degreesBetween, formatAzimuth } from '../quantity/azimuth.ts';
import type { Document } from '../record/document.ts';
import { siteOfProject } from '../standing/survey.ts';
import { bestCollar, collarsByRank, positionOf } from '../survey/collar/collars.ts';
import { formatAzimuthCompared, formatDipCompared } from '../survey/collar/line-up.ts';
import { formatFieldSource } from '../survey/norths/declination.ts';
import { bearingAndDistance, formatAxes, formatDatumShift } from '../survey/norths/grids.ts';
import { formatConvergence, formatDeclination, formatEastWest } from '../survey/norths/norths.ts';
import type { CollarTaken } from './collar-taken.ts';
import { isPastLineUp, type LineUpStanding } from './line-up.ts';
import type { LineUpContext, LineUpReading } from './line-up-order.ts';

/** A sentence about a line-up and how it is meant: good, doubtful, alarming, the one that counts. */
export interface Sentence {
  readonly text: string;
  readonly tone: 'plain' | 'good' | 'warn' | 'alert' | 'strong' | 'faint';
}

const sentence = (text: string, tone: Sentence['tone'] = 'plain'): Sentence => ({ text, tone });

/** The planned direction in every north, the angles between them with their signs in words, where each is from, and every caution about them. */
export function northSentences({
  here,
  project,
}: Pick<LineUpContext, 'here' | 'project'>): readonly Sentence[] {
  const { angles, field, planned } = here;
  const own = project.settings.survey.declination;
  return [
    ...(angles.declinationDeg === undefined
      ? [sentence('The declination is not known here: no compass can be used.', 'warn')]
      : [sentence(`${capital(formatDeclination(angles.declinationDeg))}.`, 'faint')]),
    ...(own === undefined
      ? []
      : [
          sentence(
            `That is project.json's own (${own.source})${field === undefined ? '' : `; by the model it is ${formatEastWest(field.declinationDeg)}`}.`,
            'warn',
          ),
        ]),
    ...(field === undefined ? [] : [sentence(`${formatFieldSource(field)}.`, 'faint')]),
    ...(angles.convergenceDeg === undefined
      ? []
      : [sentence(`${capital(formatConvergence(angles.convergenceDeg))}.`, 'faint')]),
    ...(angles.mineGridRotationDeg === undefined
      ? []
      : [
          sentence(
            `Mine north bears ${formatEastWest(angles.mineGridRotationDeg)} of grid north (mine grid = grid - rotation, clockwise positive).`,
            'faint',
          ),
        ]),
    ...(planned.azimuth.north === 'magnetic'
      ? [sentence('The plan is from magnetic north, which moves: ask for its date.', 'warn')]
      : []),
    ...here.findings.map(doubtSentence),
  ];
}

/**
 * Readings that disagree, which come first; then inside tolerance, or what to request of the driller: nothing while readings disagree, nor
 * once the hole is begun. Undefined while something is missing.
 */
export function decisionSentence(
  { answer, disagree }: Pick<LineUpStanding, 'answer' | 'disagree'>,
  hole: Document,
): Sentence | undefined {
  if (answer === undefined) return undefined;
  const again = disagree.length === 0 ? [] : [`Read again first: ${disagree.join('; ')}.`];
  const verdict = answer.accepted ? 'Inside tolerance.' : 'OUTSIDE tolerance.';
  const begun = answer.accepted || !isPastLineUp(hole) ? [] : [PAST_LINE_UP];
  const request = answer.request === undefined ? begun : [answer.request];
  return sentence(
    [...again, verdict, ...request].join(' '),
    answer.accepted && again.length === 0 ? 'good' : 'alert',
  );
}

/** Said in place of a request where rods are in the ground, or the hole is over. */
export const PAST_LINE_UP =
  'The hole is begun: the rig is not to be moved for this. Where the hole goes is what its survey says.';

/** Each thing planned and measured with its difference, the miss it would make, the checks beside it, what is doubtful. */
export function resultSentences(
  { taken }: Pick<LineUpReading, 'taken'>,
  standing: LineUpStanding,
  context: LineUpContext,
): readonly Sentence[] {
  const { answer, findings } = standing;
  const doubts = findings.map(doubtSentence);
  const collar = taken.collar === undefined ? [] : collarSentences(context, taken.collar).slice(0, 1);
  if (answer === undefined) return [sentence(missingWords(taken, standing), 'alert'), ...doubts, ...collar];
  return [
    ...comparedSentences(standing, context),
    ...compassSentences(standing, context),
    ...collar,
    ...doubts,
  ];
}

function doubtSentence({ problem, remedy, severity }: Finding): Sentence {
  return sentence(`? ${capital(problem)}. ${remedy}`, severity === 'fault' ? 'alert' : 'warn');
}

function comparedSentences({ answer }: LineUpStanding, { here }: LineUpContext): readonly Sentence[] {
  if (answer === undefined) return [];
  const tone = (inside: boolean) => (answer.steep ? 'plain' : inside ? 'good' : 'alert');
  const steep = answer.steep
    ? ' The hole is steep: the angle in space counts, held to the tolerance of the dip.'
    : '';
  return [
    sentence(
      `Azimuth: ${formatAzimuthCompared(answer.azimuth, here.planned.azimuth)}.`,
      tone(answer.azimuth.inside),
    ),
    sentence(`Dip: ${formatDipCompared(answer.dip)}.`, tone(answer.dip.inside)),
    sentence(
      `${answer.angleDeg.toFixed(2)}° apart in space: ${answer.missM.toFixed(1)} m off at the target, ${here.targetM} m down.${steep}`,
      'strong',
    ),
  ];
}

/** A compass beside pegs or a device: how far it is from them. */
function compassSentences(standing: LineUpStanding, { project }: LineUpContext): readonly Sentence[] {
  const { compassAzimuth, measured, compass } = standing;
  if (compassAzimuth === undefined || measured === undefined) return [];
  const apart = Math.abs(degreesBetween(compassAzimuth.deg, measured.azimuth.deg));
  const spread = compass?.spreadDeg === undefined ? '' : `, readings spread ${compass.spreadDeg.toFixed(1)}°`;
  const agrees = apart <= project.survey.compassAgreementDeg;
  return [
    sentence(
      `Compass: ${formatAzimuth(compassAzimuth)}${spread}; ${apart.toFixed(1)}° from the azimuth${agrees ? '' : ': which of the two is wrong?'}.`,
      agrees ? 'plain' : 'alert',
    ),
  ];
}

/** Positions of the collar from the best rank down, the one just read first, each with its distance from the planned one. */
export function collarSentences(
  { hole }: { readonly hole: Document },
  taken: CollarTaken | undefined,
): readonly Sentence[] {
  const there = collarsByRank(holeNouns(hole, 'collars'));
  const peg = there.find((one) => one.rank === 'planned');
  const away = (at: { readonly eastM: number; readonly northM: number }) => {
    if (peg === undefined) return '';
    const { deg, metres } = bearingAndDistance(positionOf(peg), at);
    return metres < 0.05
      ? ', on the planned one'
      : `, ${metres.toFixed(1)} m from the planned one towards ${deg.toFixed(0).padStart(3, '0')}° grid`;
  };
  const words = ({ eastM, northM }: { readonly eastM: number; readonly northM: number }) =>
    `${eastM.toFixed(1)} E ${northM.toFixed(1)} N`;
  const used = bestCollar(there);
  return [
    ...(taken === undefined
      ? []
      : [sentence(`Collar read: ${words(taken)} (${taken.source})${away(taken)}.`, 'good')]),
    ...there.map((one) =>
      sentence(
        `${capital(one.rank)}: ${words(positionOf(one))} (${one.source})${one === peg ? '' : away(positionOf(one))}${one === used ? ', in use' : ''}.`,
      ),
    ),
  ];
}

/** What is to be known of the grid where a position is given: its name, how it is counted, what is done about its datum. */
export function gridSentences({ project }: Pick<LineUpContext, 'project'>): readonly Sentence[] {
  const { grid } = siteOfProject(project);
  if (grid === undefined) return [];
  const axes = formatAxes(grid);
  return [
    ...(axes === undefined ? [] : [sentence(`${grid.name}: ${axes}.`, 'warn')]),
    sentence(`A GPS position on ${grid.name}: ${formatDatumShift(grid)}.`, 'faint'),
  ];
}

function missingWords(taken: LineUpReading['taken'], { measured, set }: LineUpStanding): string {
  if (set === undefined)
    return taken.way === 'compass'
      ? 'The compass gives no azimuth that can be used.'
      : 'The azimuth was not read.';
  if (taken.crewDip === undefined && taken.clinometerDip === undefined)
    return 'The dip of the mast was not read.';
  return measured === undefined ? 'The azimuth can not be compared with the plan.' : '';
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
