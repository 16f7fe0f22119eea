import { startActivityNow } from '../../acts/shift.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, sayingFinding, still, submitting, type World } from '../step.ts';

/** Asks what the rig does now. */
export function askActivity(state: State): Step {
  return still({ ...state, prompt: { kind: 'activity', cursor: 0 }, message: undefined });
}

/** Enter on the list of activities: the one under the cursor starts now, and the one before it ends. */
export function startActivity(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'activity') return still(state);
  const activity = state.project.settings.shift.activities[prompt.cursor];
  if (activity === undefined) return still(state);
  const said = { rig: state.rig, activity: activity.code, ...(hole === undefined ? {} : { hole: hole.id }) };
  const made = startActivityNow(state.project, state.documents.values(), said, {
    newId: world.newId,
    at: world.now,
    by: state.person,
  });
  const closed: State = { ...state, prompt: undefined };
  if (!made.ok)
    return still(made.findings[0] === undefined ? closed : sayingFinding(closed, made.findings[0]));
  return submitting(closed, made.value.document, made.value.made);
}
