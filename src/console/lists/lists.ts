import { headerOf } from '../../hole/hole.ts';
import { draftOf, edited } from '../draft.ts';
import type { ListOver, ListScreen, State } from '../state.ts';
import { holeInHand, holesOf, rowLeft } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import type { KeyEvent } from '../terminal/input/keys.ts';

/** Opens a list screen of the hole in hand. */
export function openList(name: ListScreen): (state: State) => Step {
  return (state) => {
    const hole = holeInHand(state);
    if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
    const screen = { name, hole: hole.id, cursor: 0, find: '', from: rowLeft(state.screen) };
    return still({ ...state, screen, message: undefined });
  };
}

/** Scrolls a list screen; the end is set when the state is published, because it hangs on the size of the screen. */
export function moveList(state: State, by: number): Step {
  const { screen } = state;
  if (!('find' in screen)) return still(state);
  return still({ ...state, screen: { ...screen, cursor: Math.max(0, screen.cursor + by) } });
}

/** A character on a list screen searches it; Backspace takes one back. */
export function typeInList(state: State, event: KeyEvent): Step {
  const { screen } = state;
  if (!('find' in screen)) return still(state);
  const draft = edited(draftOf(screen.find), event);
  if (draft === undefined || draft.text === screen.find) return still(state);
  return still({ ...state, screen: { ...screen, find: draft.text, cursor: 0 }, message: undefined });
}

/** Escape on a list screen: ends a search, else goes back to the log, to the row that was open there. */
export function leaveList(state: State): Step {
  const { screen } = state;
  if ('find' in screen && screen.find !== '')
    return still({ ...state, screen: { ...screen, find: '', cursor: 0 } });
  // The help goes back to what it lies over, with the cursor where it was.
  if (screen.name === 'help') return still({ ...state, screen: screen.asked, message: undefined });
  if ('after' in screen && screen.after !== undefined) {
    const { after: _, ...history } = screen;
    return still({ ...state, screen: { ...history, cursor: 0 }, message: undefined });
  }
  const hole = screen.name === 'holes' ? undefined : screen.hole;
  // A hole that is not started has no log to go back to.
  const inHand = holeInHand(state);
  if (inHand !== undefined && headerOf(inHand).state === 'planned') return openHoles(state);
  return still({
    ...state,
    screen:
      hole === undefined ? { name: 'holes', cursor: 0 } : { name: 'log', hole, cursor: rowLeft(screen) },
    message: undefined,
  });
}

/** The help, over whatever is in hand; the keys of that screen come first. */
export function openHelp(state: State): Step {
  const { screen } = state;
  const hole = screen.name === 'holes' ? undefined : screen.hole;
  const asked = screen.name === 'help' ? screen.asked : screen;
  return still({
    ...state,
    screen: {
      name: 'help',
      cursor: 0,
      find: '',
      asked,
      from: rowLeft(screen),
      ...(hole === undefined ? {} : { hole }),
    },
    message: undefined,
  });
}

/** Opens a list over whatever is in hand; Escape leads back to it. */
export function openOver(name: ListOver): (state: State) => Step {
  return (state) => {
    const { screen } = state;
    const hole = screen.name === 'holes' ? undefined : screen.hole;
    const from = rowLeft(screen);
    return still({
      ...state,
      screen: { name, cursor: 0, find: '', from, ...(hole === undefined ? {} : { hole }) },
      message: undefined,
    });
  };
}

/** The list of holes, with the cursor on the hole that was in hand. */
export function openHoles(state: State): Step {
  const hole = holeInHand(state);
  const cursor = Math.max(
    0,
    holesOf(state).findIndex((each) => each.id === hole?.id),
  );
  return still({ ...state, screen: { name: 'holes', cursor }, message: undefined });
}
