import type { Prompt } from './prompt.ts';
import { answer, isDeliberate } from './prompts.ts';
import type { State } from './state.ts';
import { keptIfRefused, type Step, saying, still, type World } from './step.ts';
import type { KeyEvent } from './terminal/input/keys.ts';

/** Questions whose answer a run of chance keys was seen to give, and which others act on before anybody looks: one key more records them. */
type Deliberate = Extract<Prompt, { readonly sure?: 'asked' }>;

const takesSure = (prompt: Prompt | undefined): prompt is Deliberate =>
  prompt !== undefined && isDeliberate(prompt);

/** True while a question waits for the key that records its answer. */
export function isSureAsked(prompt: Prompt | undefined): boolean {
  return takesSure(prompt) && prompt.sure === 'asked';
}

/** Enter on a question: what it leads to; where it would record something that is not to happen by chance, the key more is asked for first. */
export function answerOrAsk(state: State, world: World): Step {
  const step = keptIfRefused(state, answer(state, world));
  const { prompt } = state;
  if (!takesSure(prompt) || step[1].length === 0) return step;
  const asked: State = { ...state, prompt: { ...prompt, sure: 'asked' } };
  return still(saying(asked, 'y records this. Any other key goes back to it.', 'warn'));
}

/** The key after that: y records the answer, any other goes back to the question with what was typed. */
export function sureKey(state: State, event: KeyEvent, world: World): Step {
  const { prompt } = state;
  if (!takesSure(prompt)) return still(state);
  const { sure: _, ...rest } = prompt;
  const back: State = { ...state, prompt: rest, message: undefined };
  return event.kind === 'text' && event.text === 'y' ? keptIfRefused(back, answer(back, world)) : still(back);
}
