import { latestFirst } from '../samples/dispatch.ts';
import { holeInHand, rowLeft, type State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import { shiftShown } from './shift-shown.ts';

/** Undo or redo of this sitting's latest edit on the hole in hand; on the screen of dispatches, on the latest of them; on that of questions, on the document settled last; on the shift record, on the shift. */
export function undoOrRedo(state: State, which: 'undo' | 'redo'): Step {
  if (state.screen.name === 'dispatch') {
    const [latest] = latestFirst(state.documents.values());
    if (latest === undefined) return still(saying(state, 'There is no dispatch.'));
    return [state, [{ do: which, document: { kind: 'dispatch', id: latest.name } }]];
  }
  if (state.screen.name === 'questions') {
    const { settled } = state.screen;
    if (settled === undefined) return still(saying(state, 'Nothing was settled here yet.'));
    return [state, [{ do: which, document: settled }]];
  }
  if (state.screen.name === 'shift') {
    const shift = shiftShown(state);
    if (shift === undefined) return still(saying(state, 'No shift is recorded.'));
    return [state, [{ do: which, document: { kind: 'shift', id: shift.id } }]];
  }
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first: undo works on the hole in hand.'));
  return [state, [{ do: which, document: { kind: hole.kind, id: hole.id } }]];
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
