import { withCare } from '../../acts/hygiene.ts';
import { rodMendedLater } from '../../acts/mend-later.ts';
import { rodMended, rodNoted } from '../../acts/rod.ts';
import { type RodRead, readRod } from '../../acts/rod-read.ts';
import type { Document } from '../../record/document.ts';
import type { RodSeen } from '../../sampling/rod/mismatch.ts';
import type { RodCheck } from '../../sampling/rod/rod-check.ts';
import { waitingMismatches, waitingRod } from '../../standing/mismatches.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';
import { rodStanding } from './rod.ts';
import { type MismatchWay, pagesOf, waysOn } from './ways.ts';

/** A look that tells mismatches apart. */
type Look = NonNullable<RodCheck['look']>;
type MismatchPrompt = Extract<Prompt, { readonly kind: 'mismatch' }>;

/** How the answer to a look is typed; never a single figure, which mends. */
export const LOOK_ANSWERS: { readonly [look in Look]: string } = {
  first: 'type its last digits, two or more',
  double: 'type y or n',
  controls: 'type c and the number, like c1',
};

/** What a look told, or undefined where what is typed is no answer to it. */
function readLook(look: Look, typed: string): RodSeen | undefined {
  const text = typed.trim();
  if (look === 'first')
    return /^(?=.*\d$)[A-Z0-9-]{2,}$/i.test(text) ? { first: text.toUpperCase() } : undefined;
  if (look === 'double') return /^[yn]$/i.test(text) ? { double: text.toLowerCase() === 'y' } : undefined;
  const count = /^c(\d{1,2})$/i.exec(text)?.[1];
  return count === undefined ? undefined : { controls: Number(count) };
}

/** Opens the uppermost mismatch that was noted and waits, with what was read then; `typed` is what is read on the bags now. */
export function askMend(state: State, hole: Document, typed = ''): Step {
  const [waiting] = waitingMismatches(hole);
  if (waiting === undefined)
    return still(saying(state, 'No mismatch waits to be mended in this hole.', 'good'));
  const [later, rod] = waiting;
  const read = [rod.lastBag, rod.bags === undefined ? undefined : `x${rod.bags}`].filter(
    (each) => each !== undefined,
  );
  const lastDigits = typed === '' ? read.join(' ') : typed;
  const { depthMm } = rod;
  const prompt: MismatchPrompt = {
    ...{ kind: 'mismatch', rod: rod.rod, depthMm, lastDigits, looked: {}, page: 0, later },
    draft: EMPTY_DRAFT,
  };
  return still({ ...state, prompt, message: undefined });
}

/**
 * An answer to the mismatch prompt: what the look that is asked for told (then it is checked again), `1` to `9` to mend it that way, `m` for
 * more places, or Enter alone to record the rod as expected with the mismatch noted; one that is noted already is left as it is.
 */
export function answerMismatch(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'mismatch' || hole === undefined) return still(state);
  const { check } = rodStanding(state, hole, prompt);
  const choice = prompt.draft.text.trim();
  const again = (changed: Partial<MismatchPrompt>): Step =>
    still({ ...state, prompt: { ...prompt, ...changed, draft: EMPTY_DRAFT }, message: undefined });
  const looked = check.look === undefined ? undefined : readLook(check.look, choice);
  if (looked !== undefined) return again({ looked: { ...prompt.looked, ...looked }, page: 0 });
  if (choice === 'm' && pagesOf(check) > 1) return again({ page: (prompt.page + 1) % pagesOf(check) });
  const read = readRod(prompt.lastDigits) ?? {};
  if (choice === '') return noted(state, hole, prompt, check, read, world);
  const way = /^\d$/.test(choice) ? waysOn(check, prompt.page)[Number(choice) - 1] : undefined;
  if (way === undefined) return still(saying(state, howToAnswer(check, prompt.page), 'warn'));
  return mended(state, hole, prompt, way, read, world);
}

function noted(
  state: State,
  hole: Document,
  prompt: MismatchPrompt,
  check: RodCheck,
  read: RodRead,
  world: World,
): Step {
  const closed: State = { ...state, prompt: undefined };
  if (prompt.later !== undefined)
    return still(saying(closed, 'Left as it is: the mismatch still waits, ;mend.', 'warn'));
  const { depthMm: _depth, care, ...seen } = read;
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const at = { rod: prompt.rod, depthMm: prompt.depthMm };
  const done = withCare(hole, rodNoted(hole, at, check, seen, maker), care, maker);
  const said = 'Rod recorded as expected; the mismatch is noted and waits: ;mend.';
  return submittingResult(state, hole, done, closed, said);
}

function mended(
  state: State,
  hole: Document,
  prompt: MismatchPrompt,
  { named, index, fix }: MismatchWay,
  { care }: RodRead,
  world: World,
): Step {
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const at = { rod: prompt.rod, depthMm: prompt.depthMm };
  const waiting = waitingRod(hole, prompt.later);
  const done =
    waiting === undefined
      ? withCare(hole, rodMended(hole, at, named, index, maker), care, maker)
      : rodMendedLater(state.project, hole, waiting, named, index, maker);
  const waits = (fix.putOff ?? []).map(({ kind, number }) => `; ${kind} ${number} waits, ;place puts it in`);
  const said = done.ok ? `${done.value.what}${waits.join('')}` : undefined;
  return submittingResult(state, hole, done, { ...state, prompt: undefined }, said);
}

function howToAnswer(check: RodCheck, page: number): string {
  const ways = waysOn(check, page).length;
  const look = check.look === undefined ? '' : `, ${LOOK_ANSWERS[check.look]} for the look`;
  return ways === 0
    ? `Enter notes it and goes on${look}; Esc leaves it to read the calico again.`
    : `Type a number from 1 to ${ways}${look}, or Enter to note it and go on.`;
}
