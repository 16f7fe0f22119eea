import { doubtsOfShot, openRun, recordShotRead } from '../../desk/acts/shot.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { placeOf } from '../../standing/survey.ts';
import { type ReadShot, readTypedShot } from '../../survey/typed-shot.ts';
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

const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/** `60 -59.5 271.2`, or `b63 …` for the depth of the bit; undefined for anything else. A last `=` insists. */
function readTyped(text: string, toolOffsetMm: number) {
  const insists = text.trim().endsWith('=');
  const [depth = '', dip = '', azimuth, ...more] = text.trim().replace(/\s*=$/, '').split(/\s+/);
  const plain = depth.replace(/^b/, '');
  if (![plain, dip, azimuth ?? '0'].every((each) => NUMBER.test(each)) || more.length > 0) return undefined;
  const depthM = Number(plain) - (depth.startsWith('b') ? toolOffsetMm / 1000 : 0);
  const azimuthDeg = azimuth === undefined ? {} : { azimuthDeg: Number(azimuth) };
  return { insists, shot: { depthM, dipDeg: Number(dip), ...azimuthDeg } };
}

/** Enter on the shot: it is recorded, or refused with the likely cause; a doubtful one is asked about, and `=` insists. */
export function answerShot(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'shot' || hole === undefined) return still(state);
  const text = prompt.draft.text.trim();
  if (text === '') return still({ ...state, prompt: undefined, message: undefined });
  if (text === 'run') return askRun(state);
  const typed = readTyped(text, openRun(hole)?.[1].toolOffsetMm ?? 0);
  if (typed === undefined)
    return still(
      saying(state, 'Type depth, dip and azimuth with spaces between, like 60 -59.5 271.2.', 'warn'),
    );
  const { shot, findings } = readTypedShot(typed.shot, undefined, placeOf(hole));
  if (shot === undefined) return still(findings[0] === undefined ? state : sayingFinding(state, findings[0]));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const recorded = recordShotRead(hole, shot, maker);
  const doubt = recorded.ok ? doubtsOfShot(state.project, hole, shot, maker)[0] : undefined;
  if (doubt !== undefined && !typed.insists) {
    const asked = sayingFinding(state, doubt);
    // First how to insist: a long doubt is cut where the message has no more room.
    return still(saying(asked, `Doubtful; = behind it insists. ${asked.message?.text}`, 'alert'));
  }
  return submittingResult(state, hole, recorded, afterShot(state, hole, shot), shotWords(shot));
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

function shotWords(shot: ReadShot): string {
  const azimuth = shot.azimuthDeg === undefined ? 'no azimuth' : `azimuth ${shot.azimuthDeg.toFixed(1)}°`;
  return `Shot at ${formatDepth(shot.depthMm)} m recorded: dip ${shot.dipDeg.toFixed(1)}°, ${azimuth}.`;
}
