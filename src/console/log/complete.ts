import { COMMAND_WORDS } from '../../shorthand/commands.ts';
import { complete } from '../../shorthand/complete.ts';
import type { Suggestion } from '../../shorthand/said.ts';
import { draftOf } from '../draft.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import { entryContext } from './entry.ts';
import { openForm } from './fields.ts';

/** Tab: takes the likeliest way to go on, and names the others; on an empty line it opens the fields. */
export function completeLine(state: State): Step {
  return completeWith(state, COMMAND_WORDS);
}

/** The same, with all the words that can follow `;`: those of screens stand in the table of keys, which knows this file. */
export function completeWith(state: State, words: readonly Suggestion[]): Step {
  const hole = holeInHand(state);
  if (hole === undefined || state.screen.name !== 'log') return still(state);
  if (state.draft.text === '') return openForm(state);
  const found = complete(state.draft.text, entryContext(state, hole, state.screen.cursor), words);
  const first = found.options[0];
  const others = [...found.options.slice(1), ...found.amounts]
    .slice(0, 6)
    .map((each) => `${each.text} ${each.label}`);
  if (first === undefined) {
    return still(
      saying(state, others.length === 0 ? 'Nothing begins like that.' : `Next: ${others.join(', ')}`),
    );
  }
  const line = state.draft.text.slice(0, found.from) + first.text;
  const also = others.length === 0 ? '' : `; also ${others.join(', ')}`;
  return still({ ...saying(state, `${first.text} ${first.label}${also}`), draft: draftOf(line) });
}
