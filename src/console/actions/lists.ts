import type { ListScreen, State } from '../state.ts';
import { holeInHand, holesOf } from '../state.ts';
import { type Step, saying, still } from '../step.ts';

/** Opens a list screen of the hole in hand. */
export function openList(name: ListScreen): (state: State) => Step {
  return (state) => {
    const hole = holeInHand(state);
    if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
    const from = state.screen.name === 'log' ? state.screen.cursor : 'head';
    return still({ ...state, screen: { name, hole: hole.id, cursor: 0, from }, message: undefined });
  };
}

/** Moves the cursor of a list screen; the screen itself keeps it within its lines. */
export function moveList(state: State, by: number): Step {
  const { screen } = state;
  if (!('cursor' in screen) || typeof screen.cursor !== 'number') return still(state);
  return still({
    ...state,
    screen: { ...screen, cursor: Math.max(0, screen.cursor + by) } as State['screen'],
  });
}

/** The help, over whatever is in hand. */
export function openHelp(state: State): Step {
  const hole = state.screen.name === 'holes' ? undefined : state.screen.hole;
  return still({
    ...state,
    screen: { name: 'help', cursor: 0, ...(hole === undefined ? {} : { hole }) },
    message: undefined,
  });
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
