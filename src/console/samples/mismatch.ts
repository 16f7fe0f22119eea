import { withCare } from '../../acts/hygiene.ts';
import { rodFits, rodMendedLater } from '../../acts/mend-later.ts';
import { rodAsExpected, rodMended, rodNoted } from '../../acts/rod.ts';
import { type RodRead, readRod, waySeen } from '../../acts/rod-read.ts';
import type { Document } from '../../record/document.ts';
import type { RodSeen } from '../../sampling/rod/mismatch.ts';
import type { RodCheck } from '../../sampling/rod/rod-check.ts';
import { waitingMismatches, waitingRod } from '../../standing/mismatches.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import { holeInHand, inOwn, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';
import { rodStanding } from './rod.ts';
import { LOOK_ANSWERS, type Look, type MismatchWay, pagesOf, WAY_LETTERS, wayOf, waysOn } from './ways.ts';

type MismatchPrompt = Extract<Prompt, { readonly kind: 'mismatch' }>;

const NUMBER = '(?=[A-Z0-9-]*\\d)[A-Z0-9-]{2,}';
const ANSWER: { readonly [fact in 'count' | 'controls' | 'double' | 'first' | 'lastTwo']: RegExp } = {
  count: /^x(\d{1,2})$/i,
  controls: /^c(\d{1,2})$/i,
  double: /^([yn])$/i,
  first: new RegExp(`^(${NUMBER})$`, 'i'),
  lastTwo: new RegExp(`^(${NUMBER})[ ,]+(${NUMBER})$`, 'i'),
};

/** What a look told, or undefined where what is typed is no answer to it: nothing else is then made of it. */
function readLook(look: Look, typed: string): RodSeen | undefined {
  const text = typed.trim();
  if (look === 'walk') {
    const told = text.split(/ +/).map(readWalk);
    if (told.length !== 3 || told.some((each) => each === undefined)) return undefined;
    const all: RodSeen = Object.assign({}, ...told);
    return Object.keys(all).length === 3 ? all : undefined;
  }
  const [, one, other] = ANSWER[look].exec(text) ?? [];
  if (one === undefined) return undefined;
  if (look === 'lastTwo')
    return other === undefined ? undefined : { lastTwo: [one.toUpperCase(), other.toUpperCase()] };
  if (look === 'first') return { first: one.toUpperCase() };
  return look === 'double' ? { double: one.toLowerCase() === 'y' } : { [look]: Number(one) };
}

/** One word of what a walk down the row told. */
function readWalk(word: string): RodSeen | undefined {
  return (['count', 'controls', 'double'] as const)
    .map((look) => readLook(look, word))
    .find((each) => each !== undefined);
}

/** Opens the uppermost mismatch that was noted and waits, with what was read then; `typed` is what is read on the bags now. */
export function askMend(state: State, hole: Document, typed = ''): Step {
  const [waiting] = waitingMismatches(hole);
  if (waiting === undefined) return still(saying(state, 'No bag mismatch is open in this hole.', 'good'));
  const [later, rod] = waiting;
  const read = [rod.lastBag, rod.bags === undefined ? undefined : `x${rod.bags}`].filter(
    (each) => each !== undefined,
  );
  if (readRod(typed)?.fits === true) {
    const done = rodFits(hole, waiting);
    return submittingResult(state, hole, done, state, `Rod ${rod.rod}: the bags match, nothing waits.`);
  }
  const lastDigits = typed === '' ? read.join(' ') : typed;
  const { depthMm } = rod;
  const prompt: MismatchPrompt = {
    ...{ kind: 'mismatch', rod: rod.rod, depthMm, lastDigits, looked: {}, page: 0, later },
    draft: EMPTY_DRAFT,
  };
  const { check } = rodStanding(state, hole, prompt);
  if (check.agrees)
    return submittingResult(
      state,
      hole,
      rodFits(hole, waiting),
      state,
      `Rod ${rod.rod}: the bags match, nothing waits.`,
    );
  return still({ ...state, prompt, message: undefined });
}

/**
 * An answer to the mismatch prompt: what the look that is asked for told (then it is checked again), a letter to mend it that way, `m` for
 * more places, the place as someone sees it (`46-47`, or the digits on the calico), `fits` where the reading was wrong, or Enter alone to record
 * the rod as expected with the mismatch noted; one that is noted already is left as it is. A figure alone is no answer: it may be a count.
 */
export function answerMismatch(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'mismatch' || hole === undefined) return still(state);
  const { check } = rodStanding(state, hole, prompt);
  const choice = prompt.draft.text.trim();
  const again = (changed: Partial<MismatchPrompt>): Step =>
    still({ ...state, prompt: { ...prompt, ...changed, draft: EMPTY_DRAFT }, message: undefined });
  const read = readRod(prompt.lastDigits) ?? {};
  if (choice === '') return noted(state, hole, prompt, check, read, world);
  if (choice === FITS) return fitted(state, hole, prompt, check, read, world);
  const looked = check.look === undefined ? undefined : readLook(check.look, choice);
  if (looked !== undefined) return lookedAt(state, hole, prompt, looked, world);
  const pages = pagesOf(state, check).length;
  if (choice === 'm' && pages > 1) return again({ page: (prompt.page + 1) % pages });
  const seen = check.look === 'first' ? undefined : waySeen(check, choice.toUpperCase());
  const way =
    seen === undefined ? waysOn(state, check, prompt.page)[WAY_LETTERS.indexOf(choice)] : wayOf(seen);
  if (way === undefined && check.look !== 'first') {
    const settled = readRight(state, hole, prompt, choice, world);
    if (settled !== undefined) return settled;
  }
  if (way === undefined)
    return still(saying(state, inOwn(state, howToAnswer(state, check, prompt.page)), 'warn'));
  return mended(state, hole, prompt, way, read, world);
}

/**
 * The number that is expected on the last calico, typed after it was misread: the rod is done. Undefined for any other figure, which may be a
 * count or a place.
 */
function readRight(
  state: State,
  hole: Document,
  prompt: MismatchPrompt,
  choice: string,
  world: World,
): Step | undefined {
  const { digits, ...more } = readRod(choice.toUpperCase()) ?? {};
  if (digits === undefined || digits.length < 2 || Object.keys(more).length > 0) return undefined;
  const before = readRod(prompt.lastDigits);
  const kept = prompt.lastDigits.split(/\s+/).filter((word) => readRod(word)?.digits === undefined);
  if (before?.digits === digits) return undefined;
  const next = { ...prompt, lastDigits: [digits, ...kept].join(' '), page: 0, draft: EMPTY_DRAFT };
  const { check } = rodStanding(state, hole, next);
  return check.agrees ? fitted(state, hole, prompt, check, before ?? {}, world) : undefined;
}

/** What a look told is taken, and the bags are checked again: where they now agree, the first reading was wrong and the rod is done. */
function lookedAt(state: State, hole: Document, prompt: MismatchPrompt, told: RodSeen, world: World): Step {
  const next = { ...prompt, looked: { ...prompt.looked, ...told }, page: 0, draft: EMPTY_DRAFT };
  const { check } = rodStanding(state, hole, next);
  const read = readRod(prompt.lastDigits) ?? {};
  return check.agrees
    ? fitted(state, hole, prompt, check, read, world)
    : still({ ...state, prompt: next, message: undefined });
}

/** The bags fit after all: the rod is recorded as expected and as read. */
function fitted(
  state: State,
  hole: Document,
  prompt: MismatchPrompt,
  check: RodCheck,
  { care }: RodRead,
  world: World,
): Step {
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const waiting = waitingRod(hole, prompt.later);
  const done =
    waiting === undefined
      ? withCare(
          state.project,
          hole,
          rodAsExpected(hole, prompt, check, maker, { digits: FITS }),
          care,
          maker,
        )
      : rodFits(hole, waiting);
  const said = 'The bags match, and the reading before was wrong: the rod is recorded as expected.';
  return submittingResult(state, hole, done, { ...state, prompt: undefined }, said);
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
    return still(saying(closed, 'Unchanged: the mismatch is still open, ;fix.'));
  const { depthMm: _depth, care, ...seen } = read;
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const at = { rod: prompt.rod, depthMm: prompt.depthMm };
  const done = withCare(state.project, hole, rodNoted(hole, at, check, seen, maker), care, maker);
  const said = 'Rod recorded as expected; the mismatch is noted and open: ;fix.';
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
      ? withCare(state.project, hole, rodMended(hole, at, named, index, maker), care, maker)
      : rodMendedLater(state.project, hole, waiting, named, index, maker);
  const waits = (fix.putOff ?? []).map(({ kind, number }) => `; ${kind} ${number} waits, ;place puts it in`);
  const said = done.ok ? `${done.value.what}${waits.join('')}` : undefined;
  return submittingResult(state, hole, done, { ...state, prompt: undefined }, said);
}

function howToAnswer(state: State, check: RodCheck, page: number): string {
  const ways = waysOn(state, check, page).length;
  const look = check.look === undefined ? '' : ` For the look ${LOOK_ANSWERS[check.look]}.`;
  return ways === 0
    ? `Enter notes it and goes on; Esc leaves it to read the calico again; fits if the bags match.${look}`
    : `A letter from a to ${WAY_LETTERS[ways - 1]} records it so, fits if the bags match after all, Enter notes it and goes on.${look}`;
}

/** What is typed if the bags match and the reading was wrong. */
const FITS = 'fits';
