import { settledLineUp } from '../line-up/line-up-screen.ts';
import { settledList } from '../lists/list-screen.ts';
import { holeInHand, type State } from '../state.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { isTooSmall } from './screen.ts';

/** The state as the screen can show it: nothing scrolled past its end, and known what has been on the screen. */
export function settled(state: State, size: Size, theme: Theme): State {
  // Nothing of it is on the screen: what was scrolled to, and what has been seen, stays as it is until there is room again.
  if (isTooSmall(size)) return state;
  const hole = holeInHand(state);
  if (state.screen.name === 'line-up') return hole === undefined ? state : settledLineUp(state, hole, size);
  return settledList(state, size, theme);
}
