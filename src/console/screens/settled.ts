import { settledLineUp } from '../line-up/line-up-screen.ts';
import { settledList } from '../lists/list-screen.ts';
import { holeInHand, type State } from '../state.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';

/** The state as the screen can show it: nothing scrolled past its end, and known what has been on the screen. */
export function settled(state: State, size: Size, theme: Theme): State {
  const hole = holeInHand(state);
  if (state.screen.name === 'line-up') return hole === undefined ? state : settledLineUp(state, hole, size);
  return settledList(state, size, theme);
}
