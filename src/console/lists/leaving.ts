import { EMPTY_DRAFT } from '../draft.ts';
import type { Health, State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import { askElsewhere } from './elsewhere.ts';

/** The word that leaves with rows not saved: typed in full, so that no habit and no key held down does it. */
export const LEAVE_WORD = 'leave';

/** Leaves, at once where everything is saved; else asks, and leaves by itself once the disk has taken it. */
export function leave(state: State): Step {
  if (state.health.pending === 0) return [state, [{ do: 'leave' }]];
  return still({ ...state, prompt: { kind: 'leaving', draft: EMPTY_DRAFT }, message: undefined });
}

/** What was typed where somebody wants to leave with rows not saved. */
export function answerLeaving(state: State, text: string): Step {
  const word = text.trim().toLowerCase();
  if (word === LEAVE_WORD) return [state, [{ do: 'leave' }]];
  if (word === ';elsewhere' || word === 'elsewhere') return askElsewhere(state);
  return still(
    saying(
      state,
      `Esc goes back to the log. The word ${LEAVE_WORD}, typed in full, leaves without saving.`,
      'warn',
    ),
  );
}

/** The state once the disk has answered; somebody who waits to leave does so when nothing is left to save. */
export function healthCame(state: State, health: Health): Step {
  const after = { ...state, health };
  if (state.prompt?.kind !== 'leaving' || health.pending > 0) return still(after);
  return [{ ...after, prompt: undefined }, [{ do: 'leave' }]];
}

const MOST_NAMED = 6;

/** The words of the question: how many are not saved, which, why, and the three ways on. */
export function leavingWords({ health }: State): readonly [title: string, ...words: readonly string[]] {
  const { pending, unsafe } = health;
  const count = pending === 1 ? 'One edit is' : `${pending} edits are`;
  const named = unsafe?.what ?? [];
  const more = named.length > MOST_NAMED ? `; and ${named.length - MOST_NAMED} more` : '';
  const which = named.length === 0 ? [] : [`${named.slice(0, MOST_NAMED).join('; ')}${more}.`];
  const wait =
    unsafe?.isForGood === true
      ? []
      : [
          `Wait here: it leaves by itself once ${pending === 1 ? 'it is' : 'they are'} saved. Esc goes back to the log.`,
        ];
  return [
    'not saved yet',
    `${count} not saved${unsafe === undefined ? ', on the way to the disk' : `: ${unsafe.reason}`}.`,
    ...which,
    ...wait,
    `Or type ;elsewhere to go on in another folder, or the word ${LEAVE_WORD} to leave without saving:`,
  ];
}
