import { beginRun, latestRun } from '../../acts/shot.ts';
import { ok } from '../../finding/finding.ts';
import { TOOL_CLASSES } from '../../hole/direction.ts';
import { NORTHS } from '../../quantity/azimuth.ts';
import type { Document } from '../../record/document.ts';
import { metresInto, type RunSaid, USUAL_NORTH } from '../../survey/shots/run-said.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';

/** What is said of a run so far. */
type RunSoFar = Partial<RunSaid>;

/** One thing asked once a run: what can be picked, what Enter alone says, what a typed answer means (undefined: nothing). */
export interface RunStep {
  readonly asks: string;
  readonly choices?: readonly string[];
  readonly usual: (said: RunSoFar) => string;
  readonly take: (typed: string) => RunSoFar | undefined;
  /** Asked only where this holds; for every run without it. */
  readonly only?: (said: RunSoFar) => boolean;
}

const picked = <T extends string>(choices: readonly T[], typed: string): T | undefined =>
  /^\d$/.test(typed) ? choices[Number(typed) - 1] : choices.find((each) => each === typed);

/** A step that picks one of the values of a field. */
function choosing<K extends 'toolClass' | 'north' | 'pass' | 'inside'>(
  field: K,
  asks: string,
  choices: readonly RunSaid[K][],
  usual: (said: RunSoFar) => RunSaid[K],
): RunStep {
  return {
    asks,
    choices,
    usual,
    take: (typed) => {
      const value = picked(choices, typed);
      return value === undefined ? undefined : { [field]: value };
    },
  };
}

/** The order in which a run is asked about. */
export const RUN_STEPS: readonly RunStep[] = [
  choosing('toolClass', 'What does the tool find north by?', TOOL_CLASSES, () => 'north-seeking gyro'),
  choosing(
    'north',
    'From which north does it give the azimuth?',
    NORTHS,
    (said) => USUAL_NORTH[said.toolClass ?? 'magnetic'],
  ),
  choosing(
    'pass',
    'Single shots while drilling, or a run in or out of the hole?',
    ['single', 'in', 'out'],
    () => 'single',
  ),
  choosing('inside', 'Where does the tool sit when it reads?', ['rods', 'open hole'], () => 'rods'),
  {
    asks: 'How far is the sensor from steel above or below, in metres? Enter alone: not known',
    usual: () => '',
    take: (typed) => (typed === '' ? {} : metresInto('steelMm', typed)),
    only: (said) => said.toolClass === 'magnetic' && said.inside === 'open hole',
  },
  {
    asks: 'Which tool: its name or number?',
    usual: () => 'not named',
    take: (typed) => ({ tool: typed }),
  },
  {
    asks: 'How far is the sensor behind the bit (tool offset), in metres?',
    usual: () => '0',
    take: (typed) => metresInto('toolOffsetMm', typed),
  },
  { asks: 'Who runs it?', usual: () => 'driller', take: (typed) => ({ operator: typed }) },
];

/** Asks about a new run. `shot`: a shot already typed, that waits for it. */
export function askRun(state: State, shot = ''): Step {
  if (holeInHand(state) === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  return still({
    ...state,
    prompt: {
      kind: 'survey run',
      step: 0,
      said: {},
      like: latestRun(state.documents.values()),
      draft: EMPTY_DRAFT,
      shot,
    },
    message: undefined,
  });
}

/** Enter on a step of the run: what is typed, or the usual where nothing is; behind the last step the run is begun. */
export function answerRun(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'survey run' || hole === undefined) return still(state);
  const step = RUN_STEPS[prompt.step];
  if (step === undefined) return still(state);
  const typed = prompt.draft.text.trim();
  if (prompt.step === 0 && typed === '0' && prompt.like !== undefined)
    return runBegun(state, hole, prompt.like, prompt.shot, world);
  const said = step.take(typed === '' ? step.usual(prompt.said) : typed);
  if (said === undefined)
    return still(
      saying(
        state,
        step.choices === undefined
          ? 'Type metres, from 0 to 50.'
          : `Type a number from 1 to ${step.choices.length}.`,
        'warn',
      ),
    );
  const so = { ...prompt.said, ...said };
  const next = nextStep(prompt.step + 1, so);
  if (next < RUN_STEPS.length)
    return still({
      ...state,
      prompt: { ...prompt, step: next, said: so, draft: EMPTY_DRAFT },
      message: undefined,
    });
  return runBegun(state, hole, so as RunSaid, prompt.shot, world);
}

/** The run begun, and its first shot asked. */
function runBegun(state: State, hole: Document, said: RunSaid, typed: string, world: World): Step {
  const shot: Prompt = { kind: 'shot', draft: draftOf(typed) };
  const made = beginRun(said, { newId: world.newId, at: world.now, by: state.person });
  return submittingResult(state, hole, ok(made), { ...state, prompt: shot });
}

function nextStep(from: number, said: RunSoFar): number {
  const found = RUN_STEPS.findIndex((step, index) => index >= from && (step.only?.(said) ?? true));
  return found < 0 ? RUN_STEPS.length : found;
}
