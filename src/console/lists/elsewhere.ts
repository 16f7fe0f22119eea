import { draftOf } from '../draft.ts';
import type { Message, State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';

/** Asks for the folder to go on in. */
export function askElsewhere(state: State): Step {
  return still(askedFolder(state, ''));
}

/** The question with a folder typed. */
export function askedFolder(state: State, text: string): State {
  const prompt = { kind: 'elsewhere', draft: draftOf(text), moving: false } as const;
  return { ...state, prompt, message: undefined };
}

/** Writes everything to another folder and goes on there; saving resumes by itself. */
export function goElsewhere(state: State): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'elsewhere' || prompt.moving) return still(state);
  const folder = prompt.draft.text.trim();
  if (folder === '') return still(saying(state, 'Type a folder that is empty or not there yet.', 'warn'));
  return [
    { ...saying(state, `Writing everything to ${folder} …`), prompt: { ...prompt, moving: true } },
    [{ do: 'elsewhere', folder }],
  ];
}

/** What came of it: where everything is there the question is over, else it stays with the folder as typed. */
export function movedElsewhere(state: State, moved: boolean, text: string, tone: Message['tone']): State {
  const { prompt } = state;
  if (prompt?.kind !== 'elsewhere') return saying(state, text, tone);
  return saying({ ...state, prompt: moved ? undefined : { ...prompt, moving: false } }, text, tone);
}
