import { acceptFinding, openFinding, openHoleAgain, signHoleOff } from '../../acts/acceptance.ts';
import { rowsDown } from '../../hole/hole.ts';
import type { Document } from '../../record/document.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';
import { findingInHand } from './check-list.ts';
import { openOver } from './lists.ts';

type AcceptPrompt = Extract<Prompt, { readonly kind: 'accept' }>;

/** Opens the list of findings; where it was left by a jump to a place, with the cursor where it was. */
export function openCheck(state: State): Step {
  const { checkLeft } = state;
  if (checkLeft === undefined) return openOver('check')(state);
  return still({ ...state, screen: checkLeft, checkLeft: undefined, message: undefined });
}

/** From the worst first to hole by hole, and back. */
export function turnCheck(state: State): Step {
  const { screen } = state;
  if (screen.name !== 'check') return still(state);
  const { by, ...rest } = screen;
  return still({ ...state, screen: { ...rest, cursor: 0, ...(by === 'hole' ? {} : { by: 'hole' }) } });
}

/** Why there is no finding in hand; undefined where there is. */
export function whyNoFinding(state: State): string | undefined {
  return findingInHand(state) === undefined ? 'no finding is in hand' : undefined;
}

/** Goes to where the finding in hand is: its row, its shots, its bags, its shift. The key that opened the list leads back to it. */
export function goToFinding(state: State): Step {
  const judged = findingInHand(state);
  const { screen } = state;
  if (judged === undefined || screen.name !== 'check') return still(state);
  const { document, finding } = judged;
  const to = document === undefined ? undefined : screenOf(document, finding.code, finding.place.fromMm);
  if (to === undefined) return still(saying(state, `It is of no screen here. ${finding.remedy}`, 'warn'));
  return still({
    ...saying(state, 'Ctrl-O leads back to the list of findings.'),
    screen: to,
    checkLeft: screen,
  });
}

function screenOf(document: Document, code: string, fromMm: number | undefined): State['screen'] | undefined {
  const { kind, id } = document;
  const list = { cursor: 0, find: '', from: 'head' } as const;
  if (kind === 'shift')
    return { name: 'shift', shift: id, ...list, ...(code.startsWith('plod') ? { view: 'plod' } : {}) };
  if (kind === 'dispatch') return { name: 'dispatch', ...list };
  if (kind === 'results') return { name: 'results', ...list };
  if (kind !== 'hole') return undefined;
  if (/^(survey|shot|line-up)/.test(code)) return { name: 'survey', hole: id, cursor: 0, view: 'shots' };
  if (/bag|control|number|tray/.test(code)) return { name: 'bags', hole: id, ...list };
  const row = rowsDown(document).find(
    ([, each]) => fromMm !== undefined && each.fromMm <= fromMm && fromMm < each.toMm,
  );
  return { name: 'log', hole: id, cursor: row === undefined ? 'head' : row[0] };
}

/** Asks why the finding in hand is accepted as it is; of one that is accepted takes that back. */
export function askAccept(state: State, world: World): Step {
  const judged = findingInHand(state);
  if (judged === undefined) return still(state);
  if (judged.accepted === undefined)
    return still({
      ...state,
      prompt: { kind: 'accept', facts: judged.facts, draft: EMPTY_DRAFT },
      message: undefined,
    });
  const done = openFinding(judged);
  const document = judged.document;
  if (document === undefined || world.ahead) return still(state);
  return submittingResult(state, document, done, state);
}

export function answerAccept(state: State, world: World, { facts, draft }: AcceptPrompt): Step {
  const judged = findingInHand(state);
  if (judged === undefined || judged.facts !== facts)
    return still(
      saying({ ...state, prompt: undefined }, 'It has changed meanwhile: look at the list again.', 'warn'),
    );
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const done = acceptFinding(judged, draft.text, maker);
  return submittingResult(
    state,
    judged.document ?? { kind: 'hole', id: '' },
    done,
    { ...state, prompt: undefined },
    'Accepted: it stands at the foot of the list. Ctrl-U takes it back.',
  );
}

/** Signs the hole in hand off, with what is typed behind the word. */
export function signOffInHand(state: State, text: string, world: World): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const done = signHoleOff(state.project, hole, state.documents.values(), text, maker);
  return submittingResult(state, hole, done, state);
}

/** Opens a hole that was signed off again: the reason stands behind the word. */
export function openAgainInHand(state: State, text: string, world: World): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  return submittingResult(state, hole, openHoleAgain(hole, text, maker), state);
}
