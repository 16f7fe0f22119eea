import { isRejected, type RejectedPart, turnRejection } from '../../acts/shot.ts';
import type { Shot } from '../../hole/direction.ts';
import { holeThing, holeThings } from '../../hole/hole.ts';
import type { Document, Id } from '../../record/document.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import { holeInHand, type State, type SurveyView } from '../state.ts';
import { type Step, saying, still, submittingResult } from '../step.ts';

/** Opens the survey of the hole in hand. */
export function openSurvey(state: State): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  const cursor = Math.max(0, shotsDown(hole).length - 1);
  return still({
    ...state,
    screen: { name: 'survey', hole: hole.id, cursor, view: 'shots' },
    message: undefined,
  });
}

/** The shots of a hole from the top down, as the survey screen lists them. */
export function shotsDown(hole: Document): readonly (readonly [Id, Shot])[] {
  return [...holeThings(hole, 'shots')].sort(([, a], [, b]) => a.depthMm - b.depthMm);
}

/** The shot under the cursor. */
export function pickedShot(state: State): readonly [Id, Shot] | undefined {
  const hole = holeInHand(state);
  return hole === undefined || state.screen.name !== 'survey'
    ? undefined
    : shotsDown(hole)[state.screen.cursor];
}

/** Moves the cursor over the shots. */
export function moveShot(state: State, by: number): Step {
  const hole = holeInHand(state);
  const { screen } = state;
  if (hole === undefined || screen.name !== 'survey') return still(state);
  const last = Math.max(0, shotsDown(hole).length - 1);
  const cursor = Math.max(0, Math.min(last, screen.cursor + by));
  return still({ ...state, screen: { ...screen, cursor }, message: undefined });
}

/** Shows the shots, the hole from above or the hole from the side; the same view again leads back to the shots. */
export function viewSurvey(view: SurveyView): (state: State) => Step {
  return (state) => {
    const { screen } = state;
    if (screen.name !== 'survey') return still(state);
    return still({ ...state, screen: { ...screen, view: screen.view === view ? 'shots' : view } });
  };
}

/** Why the shot under the cursor can't be rejected (or restored), undefined where it can. */
export function rejectionHindered(part: RejectedPart): (state: State) => string | undefined {
  return (state) => {
    const [, shot] = pickedShot(state) ?? [];
    if (shot === undefined) return 'there is no shot under the cursor';
    return part === 'azimuth' && shot.azimuthDeg === undefined ? 'this shot has no azimuth' : undefined;
  };
}

/** Asks why a shot or its azimuth is not used, or is used again. */
export function askRejection(part: RejectedPart): (state: State) => Step {
  return (state) => {
    const [shot] = pickedShot(state) ?? [];
    if (shot === undefined) return still(state);
    return still({
      ...state,
      prompt: { kind: 'rejection', shot, part, draft: EMPTY_DRAFT },
      message: undefined,
    });
  };
}

/** Enter on the reason: the shot is rejected, or used again. */
export function answerRejection(state: State): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'rejection' || hole === undefined) return still(state);
  const reason = prompt.draft.text.trim();
  if (reason === '') return still(saying(state, 'Say why: the reason stays with the shot.', 'warn'));
  const shot = holeThing(hole, 'shots', prompt.shot);
  const said =
    prompt.part === 'azimuth' && shot !== undefined && !isRejected(shot, 'azimuth')
      ? 'The azimuth is not used; the dip is kept.'
      : undefined;
  return submittingResult(
    state,
    hole,
    turnRejection(hole, prompt.shot, prompt.part, reason),
    { ...state, prompt: undefined },
    said,
  );
}
