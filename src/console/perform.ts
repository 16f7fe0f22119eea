import type { Desk, Submitted } from '../desk/desk.ts';
import type { State } from './state.ts';
import { type Effect, saying } from './step.ts';

/** What performing effects needs from outside the desk. */
export interface Host {
  readonly desk: Desk;
  readonly leave: () => void;
  readonly suspend: () => void;
  readonly repaint: () => void;
}

/** Does one effect. Edits stand in memory at once: the state that comes back holds the documents after it. */
export function perform(state: State, effect: Effect, host: Host): State {
  const { desk } = host;
  switch (effect.do) {
    case 'submit':
      return afterSubmit(state, desk, desk.submit({ what: effect.what, parts: effect.parts }));
    case 'undo':
    case 'redo': {
      const done = effect.do === 'undo' ? desk.undo(effect.document) : desk.redo(effect.document);
      if (!done.ok)
        return saying(state, `${effect.do === 'undo' ? 'Undo' : 'Redo'}: ${done.problem}`, 'warn');
      return afterSubmit(
        saying(
          state,
          `${effect.do === 'undo' ? 'Undone' : 'Done again'}: ${whatWas(done.edit.what)}.`,
          'good',
        ),
        desk,
        done,
      );
    }
    case 'leave':
      host.leave();
      return state;
    case 'suspend':
      host.suspend();
      return state;
    case 'repaint':
      host.repaint();
      return state;
    case 'replay':
      return state;
  }
}

function afterSubmit(state: State, desk: Desk, submitted: Submitted): State {
  if (!submitted.ok) return saying(state, `Not done: ${submitted.problem}`, 'alert');
  return {
    ...state,
    documents: desk.documents(),
    health: { ...state.health, pending: desk.health().unsafeEdits },
  };
}

/** What an edit that takes another back (or does it again) is about: the words of that other one. */
function whatWas(what: string): string {
  return what.replace(/^(?:undo|redo): /, '');
}
