import { EMPTY_DRAFT } from '../draft.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';

/** Asks for the folder to go on in. */
export function askElsewhere(state: State): Step {
  return still({ ...state, prompt: { kind: 'elsewhere', draft: EMPTY_DRAFT }, message: undefined });
}

/** Writes everything to another folder and goes on there; saving resumes by itself. */
export function goElsewhere(state: State, text: string): Step {
  const folder = text.trim();
  if (folder === '') return still(saying(state, 'Type a folder that is empty or not there yet.', 'warn'));
  return [
    { ...saying(state, `Writing everything to ${folder} …`), prompt: undefined },
    [{ do: 'elsewhere', folder }],
  ];
}
