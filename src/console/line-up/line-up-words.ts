import type { LineUpContext } from '../../acts/line-up-order.ts';
import { headerOf, holeNouns } from '../../hole/hole.ts';
import { USUAL_CAUTIONS } from '../../project/cautions.ts';
import { instantMs, localDate } from '../../quantity/stamp.ts';
import { cautionsOf } from '../../standing/lined-up.ts';
import type { State } from '../state.ts';
import { type Line, wrap } from '../widgets/line.ts';
import type { LineUpForm } from './line-up-form.ts';
import { azimuthLines, collarLines, compassLines, dipLines, wayLines } from './line-up-readings.ts';
import { resultWords } from './line-up-result.ts';

/** The step in hand in words. */
export interface StepWords {
  readonly title: string;
  readonly lines: readonly Line[];
}

/** The words of the step in hand: what to do, what is planned, what to expect. */
export function stepWords(state: State, form: LineUpForm, context: LineUpContext, width: number): StepWords {
  const words = (...texts: readonly string[]) => texts.flatMap((each) => wrap(each, width));
  switch (form.step) {
    case 'cautions':
      return { title: 'cautions', lines: cautionLines(state, context, width) };
    case 'permission':
      return {
        title: 'permission',
        lines: [
          ...words('Ask the driller to stop and isolate the rig for the checks, and to say when it is done.'),
          ...words(
            'Stand outside exclusion zones and traffic: no one goes to the mast unless the driller takes them in.',
          ),
          ...words('Tell the driller when you are done.'),
          ...wrap('Type the name of the driller who gave permission.', width, 'strong'),
        ],
      };
    case 'way':
      return { title: 'planned direction', lines: wayLines(context, width) };
    case 'azimuth':
      return { title: 'azimuth of the mast', lines: azimuthLines(form, context, width) };
    case 'distance':
    case 'compass':
      return { title: 'compass', lines: compassLines(form, context, width) };
    case 'crew dip':
    case 'clinometer':
      return { title: 'dip of the mast', lines: dipLines(form, context, width) };
    case 'collar':
      return { title: 'collar position', lines: collarLines(form, context, width) };
    case 'result':
      return { title: 'planned and measured', lines: resultWords(form, context, width) };
  }
}

function cautionLines(state: State, context: LineUpContext, width: number): readonly Line[] {
  const dashed = (each: string) =>
    wrap(each, width - 2).map((one, index): Line => [{ text: index === 0 ? '- ' : '  ' }, ...one]);
  return [
    ...[
      ...new Set([
        ...cautionsOf(state.project, context.hole, context.documents),
        ...state.project.settings.hazards.cautions,
        ...USUAL_CAUTIONS,
      ]),
    ].flatMap(dashed),
    ...wrap(lastReadWords(context), width, 'faint'),
    ...wrap(
      `Type read, or Enter: read by ${context.person}, now; or type who. As often as site procedures say.`,
      width,
      'strong',
    ),
  ];
}

/** Who read the cautions last on this project, when, and at which hole; nothing where no one has. */
function lastReadWords({ documents }: LineUpContext): string {
  const [last] = documents
    .filter((document) => document.kind === 'hole')
    .flatMap((hole) =>
      holeNouns(hole, 'lineUps')
        .filter((each) => each.cautionsReadBy !== undefined)
        .map((each) => ({ each, name: headerOf(hole).name })),
    )
    .sort((a, b) => instantMs(b.each.at) - instantMs(a.each.at));
  return last === undefined
    ? ''
    : `Last read at ${last.name}: ${last.each.cautionsReadBy}, ${localDate(last.each.at)}.`;
}
