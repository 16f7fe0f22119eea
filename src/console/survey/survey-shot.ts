import { earlierWords, openRun } from '../../acts/shot.ts';
import { readShotSaid } from '../../acts/shot-said.ts';
import type { Finding } from '../../finding/finding.ts';
import { REFUSALS } from '../../hole/findings.ts';
import { formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import type { ReadShot } from '../../survey/shots/typed-shot.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submittingResult, type World } from '../step.ts';
import { pickedShot, shotsDown } from './survey.ts';
import { askRun } from './survey-run.ts';

/** Asks for a shot; where no run is begun, for the run first. `text`: what is typed already. */
export function askShot(state: State, text = ''): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  if (openRun(hole) === undefined) return askRun(state, text);
  return still({ ...state, prompt: { kind: 'shot', draft: draftOf(text) }, message: undefined });
}

/** The reading of the shot under the cursor as a line, to be put right: what was typed first is kept with it. */
export function askCorrection(state: State): Step {
  const hole = holeInHand(state);
  const [, shot] = pickedShot(state) ?? [];
  if (hole === undefined || shot === undefined) return still(state);
  if (shot.run !== openRun(hole)?.[0])
    return still(
      saying(state, 'It is of an earlier run: only shots of the run in hand can be corrected.', 'warn'),
    );
  const text = [shot.depthMm / 1000, shot.dipDeg, shot.azimuthDeg].filter((each) => each !== undefined);
  return still({
    ...state,
    prompt: { kind: 'shot', draft: draftOf(text.join(' ')), corrects: true },
    message: undefined,
  });
}

const withCorrects = (text: string): string =>
  text.endsWith('=') ? `${text.slice(0, -1).trim()} corrects =` : `${text} corrects`;

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
  const { shot, recorded, doubts, earlier, insists, corrects } = readShotSaid(
    state.project,
    hole,
    prompt.corrects === true && text !== '' ? withCorrects(text) : text,
    maker,
    state.documents.values(),
  );
  const [doubt] = doubts;
  if (doubt !== undefined && !insists) {
    const asked = sayingFinding(state, doubt);
    // First how to insist: a long doubt is cut where the message has no more room.
    const insist =
      doubt.code === REFUSALS.asked.code
        ? 'Was the tool run again? Then add =.'
        : 'Looks wrong. Add = to accept it.';
    return still(saying(asked, `${insist} ${asked.message?.text}`, 'alert'));
  }
  if (shot === undefined) return submittingResult(state, hole, recorded, state);
  if (corrects) return submittingResult(state, hole, recorded, { ...state, prompt: undefined });
  const after = afterShot(state, hole, shot, earlier);
  const [next, effects] = submittingResult(state, hole, recorded, after, shotWords(hole, shot));
  const [other] = earlierWords(earlier);
  if (other === undefined || effects.length === 0) return [next, effects];
  const words = `Shot at ${formatDepth(shot.depthMm)} m recorded. ${other.charAt(0).toUpperCase()}${other.slice(1)}.`;
  return [saying(next, words, 'alert'), effects];
}

/**
 * After a single shot the prompt closes, in a run in or out of the hole it waits for the next. The cursor is on the new shot, or on the one
 * above it that now looks wrong.
 */
function afterShot(state: State, hole: Document, shot: ReadShot, earlier: readonly Finding[]): State {
  const goesOn = openRun(hole)?.[1].pass !== 'single';
  const prompt = goesOn ? ({ kind: 'shot', draft: EMPTY_DRAFT } as const) : undefined;
  const { screen } = state;
  if (screen.name !== 'survey') return { ...state, prompt };
  const down = shotsDown(hole);
  const wrong = earlier.map(({ place: { fromMm } }) =>
    down.findIndex(([, each]) => each.rejected === undefined && each.depthMm === fromMm),
  );
  const [index = down.filter(([, each]) => each.depthMm <= shot.depthMm).length] = wrong.filter(
    (each) => each >= 0,
  );
  // A shot recorded above it moves what is below one place down.
  const cursor = earlier.length > 0 && (down[index]?.[1].depthMm ?? 0) > shot.depthMm ? index + 1 : index;
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
