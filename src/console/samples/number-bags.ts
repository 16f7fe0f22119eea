import { act } from '../../acts/act.ts';
import type { Document } from '../../record/document.ts';
import { type ProposedRun, proposedRun } from '../../standing/bag-run.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import { pickedHole } from '../lists/holes.ts';
import type { State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';

/** Asks which bags are labelled for the hole under the cursor. */
export function askNumbers(state: State): Step {
  const hole = pickedHole(state);
  if (hole === undefined) return still(state);
  const prompt = { kind: 'number bags', hole: hole.id, draft: EMPTY_DRAFT } as const;
  return still({ ...state, prompt, message: undefined });
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
  const screen = { name: 'bags', hole: hole.id, cursor: 0, find: '', from: 'head' } as const;
  const shown: State = { ...state, prompt: undefined, screen, message: undefined };
  if (first === '' && proposed === undefined) return still(shown);
  const said =
    first === '' || first === undefined ? proposed : last === undefined ? undefined : { first, last };
  if (said === undefined || more.length > 0)
    return still(saying(state, 'Type the first and the last number, like MB000601 MB000720.', 'warn'));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const command = { does: 'number bags', first: said.first, last: said.last } as const;
  const made = act(state.project, hole, command, maker, state.documents.values());
  return submittingResult(state, hole, made, shown);
}
