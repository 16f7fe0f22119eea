import type { LineUpContext } from '../../acts/line-up-order.ts';
import { takeTyped } from '../../acts/line-up-steps.ts';
import type { GpsText } from '../../files/read-gps.ts';
import { type Document, documentKey } from '../../record/document.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import type { LineUpForm } from './line-up-form.ts';
import { formOf, lineUpContext, withForm } from './line-up-state.ts';

/** The sentences of a GPS taken whole at the collar, however many there are. */
export function takeSentences(
  state: State,
  hole: Document,
  form: LineUpForm,
  text: string,
  context: LineUpContext,
): Step {
  const taken = takeTyped(form, text, context);
  if (!taken.ok) return still(saying(state, taken.problem, 'alert'));
  const next = withForm(state, hole, { ...taken.form, typed: EMPTY_DRAFT });
  const tone = taken.said === undefined ? 'good' : 'warn';
  return still(saying(next, taken.said ?? 'Position taken. Enter goes on.', tone));
}

/** What a GPS sent, for the line-up that asked for it, where that is still at its collar. */
export function gpsRead(state: State, id: string, read: GpsText): Step {
  const hole = state.documents.get(documentKey({ kind: 'hole', id }));
  const context = hole === undefined ? undefined : lineUpContext(state, hole);
  if (hole === undefined || context === undefined) return still(state);
  const form = formOf(state, hole);
  if (!read.ok)
    return still(
      saying(
        state,
        `The GPS gave nothing: ${read.problem}. Type east and north, paste, or try again.`,
        'alert',
      ),
    );
  if (form.step !== 'collar')
    return still(saying(state, 'The GPS was read too late: the line-up has gone on.', 'warn'));
  const text = read.text.includes('$') ? read.text : `$ ${read.text}`;
  const insists = /=\s*$/.test(form.typed.text);
  return takeSentences(state, hole, form, insists ? `${text.trimEnd()} =` : text, context);
}

/** The file or device that is typed where a position is asked; undefined where it is a position or nothing. */
export function gpsPath(typed: string): string | undefined {
  const text = typed.trim().replace(/\s*=$/, '');
  return /^[A-Za-z~./\\]/.test(text) && !text.includes('$') ? text : undefined;
}
