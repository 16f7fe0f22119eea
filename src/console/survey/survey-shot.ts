import { openRun } from '../../acts/shot.ts';
import { readShotSaid } from '../../acts/shot-said.ts';
import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import type { ReadShot } from '../../survey/shots/typed-shot.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submittingResult, type World } from '../step.ts';
import { shotsDown } from './survey.ts';
import { askRun } from './survey-run.ts';

/** Asks for a shot; where no run is begun, for the run first. `text`: what is typed already. */
export function askShot(state: State, text = ''): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  if (openRun(hole) === undefined) return askRun(state, text);
  return still({ ...state, prompt: { kind: 'shot', draft: draftOf(text) }, message: undefined });
}

/** A shot typed behind `;shot`: recorded at once where nothing is doubtful, else asked about in the prompt. */
export function shotSaid(state: State, text: string, world: World): Step {
  const [asked] = askShot(state, text);
  if (asked.prompt?.kind !== 'shot') return still(asked);
  const [next, effects] = answerShot(asked, world);
  return effects.length === 0 ? still(next) : [{ ...next, prompt: undefined }, effects];
}

/** Enter on the shot: it is recorded, or refused with the likely cause; a doubtful one is asked about, and `=` insists. */
export function answerShot(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'shot' || hole === undefined) return still(state);
  const text = prompt.draft.text.trim();
  if (text === '') return still({ ...state, prompt: undefined, message: undefined });
  if (text === 'run') return askRun(state);
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const { shot, recorded, doubts, insists } = readShotSaid(
    state.project,
    hole,
    text,
    maker,
    state.documents.values(),
  );
  const [doubt] = doubts;
  if (doubt !== undefined && !insists) {
    const asked = sayingFinding(state, doubt);
    // First how to insist: a long doubt is cut where the message has no more room.
    return still(saying(asked, `Looks wrong. Add = to accept it. ${asked.message?.text}`, 'alert'));
  }
  if (shot === undefined) return submittingResult(state, hole, recorded, state);
  return submittingResult(state, hole, recorded, afterShot(state, hole, shot), shotWords(hole, shot));
}

/** After a single shot the prompt closes, in a run in or out of the hole it waits for the next; the cursor is on the new shot. */
function afterShot(state: State, hole: Document, shot: ReadShot): State {
  const goesOn = openRun(hole)?.[1].pass !== 'single';
  const prompt = goesOn ? ({ kind: 'shot', draft: EMPTY_DRAFT } as const) : undefined;
  const { screen } = state;
  if (screen.name !== 'survey') return { ...state, prompt };
  const cursor = shotsDown(hole).filter(([, each]) => each.depthMm <= shot.depthMm).length;
  return { ...state, prompt, screen: { ...screen, cursor } };
}

function shotWords(hole: Document, shot: ReadShot): string {
  const north = openRun(hole)?.[1].north ?? 'true';
  const read =
    shot.azimuthDeg === undefined
      ? 'no azimuth'
      : `azimuth ${formatAzimuth({ deg: shot.azimuthDeg, north })}`;
  return `Shot at ${formatDepth(shot.depthMm)} m recorded: dip ${shot.dipDeg.toFixed(1)}°, ${read}.`;
}
