import {
  type LineUpDecision,
  type LineUpStanding,
  lineUpStanding,
  recordLineUpTaken,
} from '../../acts/line-up.ts';
import { type LineUpContext, type LineUpStep, stepsOf } from '../../acts/line-up-order.ts';
import { decisionSentence } from '../../acts/line-up-sentences.ts';
import { takeTyped } from '../../acts/line-up-steps.ts';
import { ok } from '../../finding/finding.ts';
import { isOver } from '../../hole/header.ts';
import { headerOf, planOf } from '../../hole/hole.ts';
import type { Document } from '../../record/document.ts';
import { EMPTY_DRAFT, edited } from '../draft.ts';
import { pickedHole } from '../lists/holes.ts';
import { holeInHand, holesOf, type Screen, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';
import type { KeyEvent } from '../terminal/input/keys.ts';
import type { LineUpForm } from './line-up-form.ts';
import { gpsPath, takeSentences } from './line-up-gps.ts';
import { formOf, lineUpContext, withForm } from './line-up-state.ts';

/** Why the hole in hand (or under the cursor of the list) can't be lined up, undefined where it can. */
export function lineUpHindered(state: State): string | undefined {
  const hole = holeInHand(state) ?? pickedHole(state);
  if (hole === undefined) return 'open a hole first';
  const { state: standing } = headerOf(hole);
  if (isOver(standing)) return `the hole is ${standing}: the rig is not lined up on it`;
  return planOf(hole) === undefined ? 'the hole has no planned direction to compare with' : undefined;
}

/** Opens the line-up of the hole in hand, or of the one under the cursor of the list, where it was left: nothing read is lost by leaving the screen. */
export function openLineUp(state: State): Step {
  const hole = holeInHand(state) ?? pickedHole(state);
  const hindrance = lineUpHindered(state);
  if (hole === undefined || hindrance !== undefined)
    return still(saying(state, `line-up: ${hindrance}.`, 'warn'));
  return still({ ...state, screen: { name: 'line-up', hole: hole.id }, message: undefined });
}

/** What was read, compared with the plan. */
export function standingOf(form: LineUpForm, { project, hole, here }: LineUpContext): LineUpStanding {
  return lineUpStanding(project, hole, form.taken, here);
}

/** Enter: what is typed is taken and the next step is in hand; at the last one the line-up is decided on. */
export function goOn(state: State, world: World): Step {
  const hole = holeInHand(state);
  const context = hole === undefined ? undefined : lineUpContext(state, hole);
  if (hole === undefined || context === undefined) return still(state);
  const form = formOf(state, hole);
  if (form.unread) return readOn(state, hole, form);
  if (form.step === 'result') return decide(state, hole, form, context, world);
  const path = form.step === 'collar' ? gpsPath(form.typed.text) : undefined;
  if (path !== undefined)
    return [
      saying(state, `Reading the GPS at ${path}. A device is listened to for up to half a minute.`),
      [{ do: 'read gps', path, hole: hole.id }],
    ];
  const taken = takeTyped(form, form.typed.text, context);
  if (!taken.ok) return still(saying(state, taken.problem, 'alert'));
  const step = taken.stays === true ? form.step : nextOf(taken.form, form.typed.text.trim(), context);
  const next = withForm(state, hole, { ...taken.form, step, typed: EMPTY_DRAFT, scroll: 0 });
  return still(taken.said === undefined ? next : saying(next, taken.said, 'warn'));
}

/** Cautions that were never on the screen are not read: Enter shows them first. */
function readOn(state: State, hole: Document, form: LineUpForm): Step {
  const next = withForm(state, hole, { ...form, scroll: form.scroll + Math.max(1, form.page - 2) });
  return still(saying(next, 'Read to the end first: Enter goes on.', 'warn'));
}

/** The step behind the one in hand. Readings at one distance lead back to the next distance; no further distance ends them. */
function nextOf(form: LineUpForm, typed: string, context: LineUpContext): LineUpStep {
  if (form.step === 'compass') return 'distance';
  const steps = stepsOf(form, context);
  const skipped = form.step === 'distance' && typed === '' ? 2 : 1;
  return steps[steps.indexOf(form.step) + skipped] ?? 'result';
}

/** Where a line-up leads back to: the log, or the list of holes while the hole is not begun. */
function besideLineUp(state: State, hole: Document): Screen {
  return headerOf(hole).state === 'planned'
    ? { name: 'holes', cursor: holesOf(state).findIndex((each) => each.id === hole.id) }
    : { name: 'log', hole: hole.id, cursor: 'head' };
}

/** Back one step; from the first one to the log. What was read stays. */
export function goBack(state: State): Step {
  const hole = holeInHand(state);
  const context = hole === undefined ? undefined : lineUpContext(state, hole);
  if (hole === undefined) return still(state);
  const form = formOf(state, hole);
  const steps = context === undefined ? [] : stepsOf(form, context);
  const before = steps[steps.indexOf(form.step) - 1];
  if (before === undefined) return still({ ...state, screen: besideLineUp(state, hole), message: undefined });
  return still(
    withForm(state, hole, { ...form, step: before, typed: EMPTY_DRAFT, scroll: 0, unread: false }),
  );
}

/** Scrolls the words of a step that are longer than the screen. */
export function scrollStep(by: number): (state: State) => Step {
  return (state) => {
    const hole = holeInHand(state);
    if (hole === undefined) return still(state);
    const form = formOf(state, hole);
    return still(withForm(state, hole, { ...form, scroll: Math.max(0, form.scroll + by) }));
  };
}

/** Any other key: it types. A paste with GPS sentences is taken whole at the collar step, however long it is. */
export function typeInLineUp(state: State, event: KeyEvent): Step {
  const hole = holeInHand(state);
  const context = hole === undefined ? undefined : lineUpContext(state, hole);
  if (hole === undefined || context === undefined) return still(state);
  const form = formOf(state, hole);
  if (event.kind === 'paste' && form.step === 'collar' && event.text.includes('$'))
    return takeSentences(state, hole, form, event.text, context);
  const typed = edited(form.typed, event);
  return still(typed === undefined ? state : withForm(state, hole, { ...form, typed }));
}

/**
 * Enter at the result. Inside its tolerance the line-up is accepted; outside it is refused with the correction to request, and the
 * azimuth is read again; a reason typed there accepts it all the same.
 */
function decide(state: State, hole: Document, form: LineUpForm, context: LineUpContext, world: World): Step {
  const standing = standingOf(form, context);
  const { answer } = standing;
  if (answer === undefined)
    return still(
      saying(state, 'Something is missing: Esc goes back to it. Nothing is recorded yet.', 'alert'),
    );
  const because = form.typed.text.trim();
  const decision: LineUpDecision =
    answer.accepted || because !== ''
      ? { accepted: true, ...(because === '' ? {} : { because }) }
      : { accepted: false };
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const made = recordLineUpTaken(context.project, hole, form.taken, standing, decision, maker);
  if (decision.accepted) {
    const lineUps = new Map([...state.lineUps].filter(([id]) => id !== hole.id));
    const done: State = { ...state, lineUps, screen: besideLineUp(state, hole) };
    return submittingResult(state, hole, ok(made), done, 'Line-up accepted: it is station 0 of the hole.');
  }
  const again = { ...form, ...readAgain(form, context), typed: EMPTY_DRAFT, scroll: 0 };
  const after = withForm(state, hole, again);
  return submittingResult(state, hole, ok(made), after, decisionSentence(standing, hole)?.text ?? 'Refused.');
}

/** After a correction the mast is read again; cautions, permission, way and collar stand. */
function readAgain(form: LineUpForm, context: LineUpContext): Pick<LineUpForm, 'step' | 'taken'> {
  const { azimuth: _a, crewDip: _c, clinometerDip: _d, ...others } = form.taken;
  const steps = stepsOf(form, context);
  return { step: steps[steps.indexOf('way') + 1] ?? 'way', taken: { ...others, compass: [] } };
}
