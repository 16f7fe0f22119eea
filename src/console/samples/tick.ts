import { tickBags } from '../../acts/tick.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';
import { numberInHand } from './bags-list.ts';

/** Enter on the screen of bags: the calico in hand is ticked off, or its tick taken away, and the next one is in hand. */
export function tickInHand(state: State, world: World): Step {
  const hole = holeInHand(state);
  const number = numberInHand(state);
  if (hole === undefined || number === undefined || state.screen.name !== 'bags')
    return still(saying(state, 'Enter ticks a bag that comes: go down to one.', 'warn'));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const after = { ...state, screen: { ...state.screen, cursor: state.screen.cursor + 1 } };
  return submittingResult(state, hole, tickBags(state.project, hole, { first: number }, maker), after);
}
