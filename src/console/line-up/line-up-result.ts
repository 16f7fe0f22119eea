import type { LineUpStanding } from '../../acts/line-up.ts';
import type { LineUpContext } from '../../acts/line-up-order.ts';
import { decisionSentence, resultSentences, type Sentence } from '../../acts/line-up-sentences.ts';
import { type Line, line, wrap } from '../widgets/line.ts';
import { standingOf } from './line-up.ts';
import type { LineUpForm } from './line-up-form.ts';

/** The result: first what is decided and what Enter does, which no small window may cut; then each thing planned and measured, and what is doubtful. */
export function resultWords(form: LineUpForm, context: LineUpContext, width: number): readonly Line[] {
  const standing = standingOf(form, context);
  const decision = decisionSentence(standing, context.hole);
  return [
    ...(decision === undefined ? [] : sentenceLines(decision, width)),
    ...decisionLines(standing, width),
    ...resultSentences(form, standing, context).flatMap((each) => sentenceLines(each, width)),
  ];
}

/** A sentence on lines of a width, in its tone. */
export function sentenceLines({ text, tone }: Sentence, width: number): readonly Line[] {
  return wrap(text, width, tone);
}

function decisionLines({ answer, disagree }: LineUpStanding, width: number): readonly Line[] {
  if (answer === undefined)
    return wrap('Nothing is recorded yet. Esc goes back; what was read stays.', width, 'faint');
  if (answer.accepted) return [line('Enter accepts it: station 0 of the hole.', 'strong')];
  return [
    ...wrap(
      answer.request !== undefined
        ? 'Enter alone: refused and recorded with this request; then, once the driller has corrected it, check again.'
        : disagree.length > 0
          ? 'Enter alone: refused and recorded without a request; then read again what disagrees.'
          : 'Enter alone: refused and recorded without a request.',
      width,
      'strong',
    ),
    ...wrap('Or type why it is accepted all the same.', width),
  ];
}
