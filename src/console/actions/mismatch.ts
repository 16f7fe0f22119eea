import { withCare } from '../../desk/acts/hygiene.ts';
import { rodMended, rodNoted } from '../../desk/acts/rod.ts';
import { readRod } from '../../desk/acts/rod-read.ts';
import type { RodSeen } from '../../sampling/mismatch.ts';
import type { RodCheck } from '../../sampling/rod-check.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';
import { rodStanding } from './rod.ts';

/** A look that tells mismatches apart. */
type Look = NonNullable<RodCheck['look']>;

/** How the answer to a look is typed; never a single figure, which mends. */
export const LOOK_ANSWERS: { readonly [look in Look]: string } = {
  first: 'type its last digits, two or more',
  double: 'type y or n',
  controls: 'type c and the number, like c1',
};

/** What a look told, or undefined where what is typed is no answer to it. */
export function readLook(look: Look, typed: string): RodSeen | undefined {
  const text = typed.trim();
  if (look === 'first')
    return /^(?=.*\d$)[A-Z0-9-]{2,}$/i.test(text) ? { first: text.toUpperCase() } : undefined;
  if (look === 'double') return /^[yn]$/i.test(text) ? { double: text.toLowerCase() === 'y' } : undefined;
  const count = /^c(\d{1,2})$/i.exec(text)?.[1];
  return count === undefined ? undefined : { controls: Number(count) };
}

/**
 * An answer to the mismatch prompt: what the look that is asked for told (then it is checked again), `1` to `9` to mend it that way, or
 * Enter alone to record the rod as expected with the mismatch noted.
 */
export function answerMismatch(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'mismatch' || hole === undefined) return still(state);
  const { check } = rodStanding(state, hole, prompt);
  const choice = prompt.draft.text.trim();
  const looked = check.look === undefined ? undefined : readLook(check.look, choice);
  if (looked !== undefined) {
    const again = { ...prompt, looked: { ...prompt.looked, ...looked }, draft: EMPTY_DRAFT };
    return still({ ...state, prompt: again, message: undefined });
  }
  const at = { rod: prompt.rod, depthMm: prompt.depthMm };
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const closed: State = { ...state, prompt: undefined };
  const read = readRod(prompt.lastDigits);
  if (choice === '') {
    const lastBag = read?.digits ?? 'not read';
    const noted = withCare(hole, rodNoted(hole, at, check, lastBag, maker), read?.care, maker);
    const said = 'Rod recorded as expected; the mismatch is noted and stays to be mended.';
    return submittingResult(state, hole, noted, closed, said);
  }
  const way = /^\d$/.test(choice) ? mismatchWays(check)[Number(choice) - 1] : undefined;
  if (way === undefined) return still(saying(state, howToAnswer(check), 'warn'));
  const mended = withCare(hole, rodMended(hole, at, way.named, way.index, maker), read?.care, maker);
  const waits = (way.fix.putOff ?? []).map(
    ({ kind, number }) => `; ${kind} ${number} waits, ;place puts it in`,
  );
  const said = mended.ok ? `${mended.value.what}${waits.join('')}` : undefined;
  return submittingResult(state, hole, mended, closed, said);
}

function howToAnswer(check: RodCheck): string {
  const ways = mismatchWays(check).length;
  const look = check.look === undefined ? '' : `, ${LOOK_ANSWERS[check.look]} for the look`;
  return ways === 0
    ? `Enter notes it and goes on${look}; Esc leaves it to read the calico again.`
    : `Type a number from 1 to ${ways}${look}, or Enter to note it and go on.`;
}

/** The ways to mend a mismatch, likeliest first, as the prompt numbers them. */
export function mismatchWays(check: RodCheck) {
  return check.named
    .slice(0, 3)
    .flatMap((named) => named.ways.slice(0, 2).map((way, index) => ({ ...way, named, index })));
}
