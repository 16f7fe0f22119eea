import { holeInHand, rowLeft, type State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';

/** Undo or redo of this sitting's latest deed, of whatever document. The hole whose rows are on the screen is in hand. */
export function undoOrRedo(state: State, which: 'undo' | 'redo'): Step {
  const elsewhere = ['dispatch', 'questions', 'shift'].includes(state.screen.name);
  const hole = elsewhere ? undefined : holeInHand(state);
  return [state, [{ do: which, inHand: hole === undefined ? undefined : { kind: hole.kind, id: hole.id } }]];
}

/** The hole in hand as it stood after the edit of that number, as typed. */
export function openEarlier(state: State, text: string): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  const edits = hole.history.length;
  const count = Number(text.trim());
  if (!Number.isInteger(count) || count < 1 || count > edits)
    return still(saying(state, `Type the number of an edit, 1 to ${edits}: ;history 12`, 'warn'));
  const screen = {
    name: 'history',
    hole: hole.id,
    cursor: 0,
    find: '',
    from: rowLeft(state.screen),
  } as const;
  return still({ ...state, screen: { ...screen, after: count }, message: undefined });
}

/** On the history: the hole as it stood an edit earlier or later than what is shown; past the latest the list again. */
export function stepThrough(state: State, by: number): Step {
  const { screen } = state;
  const hole = holeInHand(state);
  if (screen.name !== 'history' || hole === undefined) return still(state);
  const edits = hole.history.length;
  const count = (screen.after ?? edits) + by;
  if (count < 1) return still(saying(state, 'That is the first edit.', 'warn'));
  const { after: _, ...list } = screen;
  if (count >= edits) return still({ ...state, screen: { ...list, cursor: 0 } });
  return still({ ...state, screen: { ...list, after: count, find: '' }, message: undefined });
}
