import { instantMs } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { shiftHeaderOf } from '../../shift/shift.ts';
import { shiftsOf } from '../../shift/shift-end.ts';
import type { State } from '../state.ts';

/** The shift on the screen as it is stored: the one that was gone to, else the latest of this rig. */
export function shiftShown(state: State): Document | undefined {
  const { screen } = state;
  if (screen.name === 'shift' && screen.shift !== undefined)
    return state.documents.get(`shift/${screen.shift}`);
  return latestStored(state);
}

/** The latest shift of this rig that has begun, as it is stored. */
export function latestStored(state: State): Document | undefined {
  return shiftsOf(state.documents.values(), state.rig).findLast(
    (each) => instantMs(shiftHeaderOf(each).startsAt) <= instantMs(state.now) + 300_000,
  );
}
