import { leavingWords } from '../lists/leaving.ts';
import { plodShown } from '../lists/plod-prompt.ts';
import { activityShown, lineShown } from '../lists/shift-prompts.ts';
import { changeCodeShown } from '../log/change-code-prompt.ts';
import { endingShown } from '../log/ending-prompt.ts';
import { newCodeShown } from '../log/new-code-prompt.ts';
import type { Prompt } from '../prompt.ts';
import { dispatchShown, handOnShown } from '../samples/dispatch-prompts.ts';
import { numbersShown } from '../samples/number-bags-prompt.ts';
import { resplitShown } from '../samples/resplit-prompt.ts';
import { mismatchShown, rodShown } from '../samples/rod-prompts.ts';
import { holeInHand, inOwn, type State } from '../state.ts';
import { surveyPrompt } from '../survey/survey-prompts.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { type Line, line, wrap } from '../widgets/line.ts';
import { NOTHING, type Shown, typedShown } from './shown.ts';

/** The question that stands, as a box that lies over the screen above the entry line; none where there is no question. */
export function promptPanel(state: State, width: number, room: number, theme: Theme): readonly Line[] {
  if (state.prompt === undefined) return [];
  const shown = shownPrompt(state, state.prompt, width - 4, theme);
  const foot = shown.foot ?? [];
  const lines = [...shown.lines.slice(0, Math.max(0, room - 2 - foot.length)), ...foot]
    .slice(0, room - 2)
    .map((each): Line => [{ text: ' ' }, ...each]);
  return box([{ title: shown.title, lines, height: lines.length }], width, theme.signs);
}

function shownPrompt(state: State, prompt: Prompt, width: number, theme: Theme): Shown {
  const hole = holeInHand(state);
  switch (prompt.kind) {
    case 'rod':
      return hole === undefined ? NOTHING : rodShown(state, hole, prompt, width);
    case 'mismatch':
      return hole === undefined ? NOTHING : mismatchShown(state, hole, prompt, width);
    case 'preview':
      return {
        title: prompt.title,
        lines: prompt.lines.flatMap((each) =>
          each.startsWith('CAUTION') ? wrap(each, width, 'alert') : [line(each)],
        ),
        foot: [line('Enter makes the change. Esc leaves all as it is.', 'faint')],
      };
    case 'survey run':
    case 'shot':
    case 'rejection':
      return hole === undefined ? NOTHING : surveyPrompt(hole, prompt, width, theme);
    case 'ending':
      return hole === undefined ? NOTHING : endingShown(state, hole, prompt, width, theme);
    case 'change code':
      return changeCodeShown(state, prompt, width, theme);
    case 'new code':
      return newCodeShown(state, prompt, width, theme);
    case 'dispatch':
      return dispatchShown(state, prompt, width, theme);
    case 'resplit':
      return hole === undefined ? NOTHING : resplitShown(state, hole, prompt, width);
    case 'hand on':
      return handOnShown(state, prompt, width, theme);
    case 'scanned':
      return {
        title: `bag ${prompt.number}`,
        lines: [...wrap(prompt.said, width, 'alert'), ...wrap(prompt.ground, width)],
        foot: [line('Enter goes on, so does any other key. Nothing is changed.', 'faint')],
      };
    case 'number bags':
      return numbersShown(state, prompt, width, theme);
    case 'plod':
      return plodShown(state, prompt, width, theme);
    case 'shift line':
      return lineShown(state, prompt, width, theme);
    case 'activity':
      return activityShown(state, prompt.cursor, theme);
    default: {
      const [title, ...words] = prompt.kind === 'leaving' ? leavingWords(state) : typedWords(prompt);
      const own = words.map((each) => inOwn(state, each));
      return typedShown(title, own, prompt.draft, width, theme);
    }
  }
}

type TypedPrompt = Extract<
  Prompt,
  { readonly kind: 'new hole' | 'redrill' | 'state' | 'reopen' | 'elsewhere' | 'missing' | 'leaving' }
>;

/** The title and the words of a question that is answered by typing. */
function typedWords(
  prompt: Exclude<TypedPrompt, { readonly kind: 'leaving' }>,
): readonly [title: string, ...words: readonly string[]] {
  switch (prompt.kind) {
    case 'new hole':
      return [
        'a hole that nobody planned',
        'Its name, like ZQRC014. Direction and depth may follow: ZQRC014 270g -60 120 (from 48 behind a pre-collar)',
        '(t true, m magnetic, g grid, l local grid; dip down negative; metres)',
      ];
    case 'redrill':
      return [
        `redrill ${prompt.hole}`,
        'Why is it redrilled? The hole gets the next suffix and the same plan.',
      ];
    case 'state':
      return [`${prompt.hole} ${prompt.to}`, `Why is it ${prompt.to}?`];
    case 'reopen':
      return [`reopen ${prompt.hole}`, 'Why is it reopened? It is recorded with your name.'];
    case 'missing':
      return [
        `${prompt.document.id}: its file is gone`,
        'restore makes it anew from what the journal still holds of it; what was before that is not in it.',
        'Anything else is the reason to let it go for good, recorded with your name. A copy is taken in with offsider receive.',
      ];
    case 'elsewhere':
      return [
        'go on in another folder',
        'Everything is written to it, what is not safe too, and work goes on there. The old folder stays as it is.',
        'A folder that is empty or not there yet, on another disk:',
      ];
  }
}
