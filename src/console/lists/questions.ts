import { settleQuestion } from '../../acts/settle.ts';
import { documentKey } from '../../record/document.ts';
import type { State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';
import { questionInHand } from './questions-list.ts';

/** Why no question can be settled; undefined where one can. */
export function whyNoQuestion(state: State): string | undefined {
  return questionInHand(state) === undefined ? 'no question is open' : state.readOnly;
}

/** Why both can't be kept of what the question in hand is about. */
export function whyNotSplit(state: State): string | undefined {
  const question = questionInHand(state);
  if (question !== undefined && question.twice !== 'rows')
    return 'only two rows over the same metres can both be kept';
  return whyNoQuestion(state);
}

/** Settles the question in hand with the first or the second value listed, or with both. A key that is held down settles no second one. */
export function settleInHand(state: State, side: 'first' | 'second' | 'both', world: World): Step {
  const question = questionInHand(state);
  if (state.screen.name !== 'questions' || question === undefined) return still(state);
  if (world.ahead)
    return still(saying(state, 'Several keys came at once: one key for one question.', 'warn'));
  const document = state.documents.get(documentKey(question.document));
  if (document === undefined) return still(state);
  const done = settleQuestion(
    state.project,
    document,
    question.id,
    side === 'both' ? side : question.labels[side === 'first' ? 0 : 1],
    world.newId,
    state.documents.values(),
  );
  const said = done.ok ? `${done.value.what}. Ctrl-U takes it back.` : undefined;
  return submittingResult(state, document, done, state, said);
}
