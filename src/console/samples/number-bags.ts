import { act } from '../../acts/act.ts';
import { type LeftOver, leftOverFor, takeLeftOver } from '../../acts/left-over.ts';
import { headerOf, holeNouns } from '../../hole/hole.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { bagRunOf, type ProposedRun, proposedRun } from '../../standing/bag-run.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import { pickedHole } from '../lists/holes.ts';
import type { Prompt } from '../prompt.ts';
import { NOTHING, type Shown, typedLine } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submittingResult, type World } from '../step.ts';
import type { Theme } from '../theme.ts';
import { line, wrap } from '../widgets/line.ts';

/** Asks which bags are labelled for the hole under the cursor. */
export function askNumbers(state: State): Step {
  const hole = pickedHole(state);
  if (hole === undefined) return still(state);
  const prompt = { kind: 'number bags', hole: hole.id, draft: EMPTY_DRAFT } as const;
  return still({ ...state, prompt, message: undefined });
}

/** Labels left over from a hole of the rig carry on into this one: one edit over both holes. */
export function carryLabels(state: State, hole: Document, world: World, after: State): Step {
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const taken = takeLeftOver(state.project, state.documents.values(), hole, maker);
  if (!taken.ok)
    return still(taken.findings[0] === undefined ? state : sayingFinding(state, taken.findings[0]));
  if (state.readOnly !== undefined)
    return still(saying(state, `Nothing is changed: ${state.readOnly}`, 'alert'));
  const { what, parts } = taken.value;
  return [saying(after, what, 'good'), [{ do: 'submit', what, parts }]];
}

/** The labels left over that the hole of the prompt can take over. */
export function labelsLeftOver(state: State, hole: Document): LeftOver | undefined {
  return leftOverFor(state.project, state.documents.values(), hole);
}

/** The numbers that would do for the hole of the prompt, behind all that are labelled. */
export function numbersProposed(state: State, hole: Document): ProposedRun | undefined {
  return proposedRun(state.project, state.documents.values(), hole);
}

/** Records the first and last number typed, or those proposed where nothing is typed, and shows the bag run; where nothing is wanted, the bag run alone. */
export function answerNumbers(state: State, world: World): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'number bags') return still(state);
  const hole = state.documents.get(`hole/${prompt.hole}`);
  if (hole === undefined) return still(state);
  const proposed = numbersProposed(state, hole);
  const [first, last, ...more] = prompt.draft.text.trim().split(/ +/);
  const short = bagRunOf(state.project, hole).shortMm > 0 || holeNouns(hole, 'bagRuns').length === 0;
  const screen = { name: 'bags', hole: hole.id, cursor: 0, find: '', from: 'head' } as const;
  const shown: State = { ...state, prompt: undefined, screen, message: undefined };
  const isRest = first === 'rest' && last === undefined;
  if (isRest || (first === '' && short && labelsLeftOver(state, hole) !== undefined))
    return carryLabels(state, hole, world, shown);
  if (first === '' && proposed === undefined) return still(shown);
  const said =
    first === '' || first === undefined ? proposed : last === undefined ? undefined : { first, last };
  if (said === undefined || more.length > 0)
    return still(
      saying(state, inOwn(state, 'Type the first and the last number, like ZQ000601 ZQ000720.'), 'warn'),
    );
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const command = { does: 'number bags', first: said.first, last: said.last } as const;
  const made = act(state.project, hole, command, maker, state.documents.values());
  return submittingResult(state, hole, made, shown);
}

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
  return `Left over from ${headerOf(hole).name}: ${numbers}. They carry on here (rest).`;
}
