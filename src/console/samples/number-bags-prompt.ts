import type { LeftOver } from '../../acts/left-over.ts';
import { headerOf, holeNouns } from '../../hole/hole.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { bagRunOf } from '../../standing/bag-run.ts';
import type { Prompt } from '../prompt.ts';
import { NOTHING, type Shown, typedLine } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { line, wrap } from '../widgets/line.ts';
import { labelsLeftOver, numbersProposed } from './number-bags.ts';

/** Which bags are labelled for a hole: how far the numbers last, and those that come next in the rig's block. */
export function numbersShown(
  state: State,
  prompt: Extract<Prompt, { readonly kind: 'number bags' }>,
  width: number,
  theme: Theme,
): Shown {
  const hole = state.documents.get(`hole/${prompt.hole}`);
  if (hole === undefined) return NOTHING;
  const { toMm, shortMm, lines } = bagRunOf(state.project, hole);
  const proposed = numbersProposed(state, hole);
  const wanted = shortMm > 0 || holeNouns(hole, 'bagRuns').length === 0;
  const left = wanted ? labelsLeftOver(state, hole) : undefined;
  const foot = toMm === undefined ? '' : ` down to ${formatDepth(toMm)} m`;
  const lasting =
    shortMm === 0
      ? `The ${lines.length} numbered bags that come are enough${foot}.`
      : `No numbered bags yet for ${formatDepth(shortMm)} m of the way${foot}.`;
  return {
    title: `bags of ${headerOf(hole).name}`,
    lines: [
      ...wrap(lasting, width, shortMm === 0 ? 'good' : 'warn'),
      line(inOwn(state, 'First and last number labelled, like ZQ000601 ZQ000720:')),
      ...(left !== undefined
        ? wrap(leftWords(left), width, 'accent')
        : proposed === undefined
          ? []
          : wrap(
              `Next in the block: ${proposed.first} to ${proposed.last}, with the controls.`,
              width,
              'accent',
            )),
    ],
    foot: [
      typedLine(prompt.draft, theme),
      line(
        proposed === undefined && left === undefined
          ? 'Enter alone shows the bag run. Esc back.'
          : 'Enter alone takes those. Esc back.',
        'faint',
      ),
    ],
  };
}

/** Labels that carry on from a hole that is over. */
function leftWords({ hole, runs }: LeftOver): string {
  const numbers = runs.map(({ first, last }) => (first === last ? first : `${first} to ${last}`)).join(', ');
  return `Left over from ${headerOf(hole).name}: ${numbers}. They carry on here.`;
}
