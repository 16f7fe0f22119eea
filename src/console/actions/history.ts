import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';

/** Undo or redo of this sitting's latest edit on the hole in hand. */
export function undoOrRedo(state: State, which: 'undo' | 'redo'): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first: undo works on the hole in hand.'));
  return [state, [{ do: which, document: { kind: hole.kind, id: hole.id } }]];
}
