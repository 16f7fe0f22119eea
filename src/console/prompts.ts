import type { Document } from '../record/document.ts';
import { type Draft, edited } from './draft.ts';
import { answerAccept } from './lists/check.ts';
import { findingInHand } from './lists/check-list.ts';
import { goElsewhere } from './lists/elsewhere.ts';
import { makeHole, redrillHole, reopen, stopHole } from './lists/holes.ts';
import { answerLeaving, leavingWords } from './lists/leaving.ts';
import { isRolledBack, settleMissing } from './lists/missing.ts';
import { answerPlod, leavePlod, plodKey } from './lists/plod.ts';
import { plodShown } from './lists/plod-prompt.ts';
import { answerLine, pickActivity, startActivity } from './lists/shift.ts';
import { activityShown, lineShown } from './lists/shift-prompts.ts';
import { leaveUndo, undoKey, undoShown } from './lists/undo-asked.ts';
import { changeCodeKey, changeCodeShown, saveChange } from './log/change-code.ts';
import { changeFieldKey, changeFieldShown, saveFieldChange } from './log/change-field.ts';
import { answerEnding } from './log/ending.ts';
import { endingShown } from './log/ending-prompt.ts';
import { addNewCode, codeLists, newCodeShown } from './log/new-code.ts';
import { makeRange, previewShown } from './log/range.ts';
import type { Prompt } from './prompt.ts';
import { answerDispatch, answerHandOn, latestFirst } from './samples/dispatch.ts';
import { dispatchShown, handOnShown } from './samples/dispatch-prompts.ts';
import { answerMismatch } from './samples/mismatch.ts';
import { answerNumbers, numbersShown } from './samples/number-bags.ts';
import { answerResplit, resplitShown } from './samples/resplit.ts';
import { answerRod } from './samples/rod.ts';
import { mismatchShown, rodShown } from './samples/rod-prompts.ts';
import { scannedShown } from './samples/scan.ts';
import { NOTHING, type Shown, typedShown } from './screens/shown.ts';
import { holeInHand, inOwn, type State } from './state.ts';
import { type Step, still, type World } from './step.ts';
import { answerRejection } from './survey/survey.ts';
import { surveyPrompt } from './survey/survey-prompts.ts';
import { answerRun } from './survey/survey-run.ts';
import { answerShot } from './survey/survey-shot.ts';
import { chordOf, type KeyEvent } from './terminal/input/keys.ts';
import type { Theme } from './theme.ts';

type Show<P> = (state: State, prompt: P, width: number, theme: Theme) => Shown;

/**
 * One kind of question, of the shape P: a new one is its shape in prompt.ts and an entry here. Methods, so that the entry of any kind can be
 * called with the prompt that it was found by.
 */
interface PromptEntry<P> {
  show(state: State, prompt: P, width: number, theme: Theme): Shown;
  /** Enter. */
  answer(state: State, world: World, prompt: P): Step;
  /** Any other key; undefined where it does what it does in every question: edit what is typed. */
  key?(state: State, event: KeyEvent, world: World, prompt: P): Step | undefined;
  /** Escape; undefined where it leaves the question and changes nothing. */
  leave?(state: State, prompt: P): Step;
  /** How many there are to choose from, where up and down move a cursor. */
  choices?(state: State): number;
  /** True where one key more records the answer (see deliberate.ts). */
  isDeliberate?(prompt: P): boolean;
}

/** Every question that the console asks. */
export const PROMPTS: {
  readonly [Kind in Prompt['kind']]: PromptEntry<Extract<Prompt, { readonly kind: Kind }>>;
} = {
  rod: { show: ofHole(rodShown), answer: answerRod },
  mismatch: { show: ofHole(mismatchShown), answer: answerMismatch },
  preview: { show: previewShown, answer: makeRange },
  'new hole': {
    show: typed((_prompt, state) => [
      'a hole that is not in the program',
      inOwn(
        state,
        'Its name, like ZQRC014. Direction and depth may follow: ZQRC014 270g -60 120 (from 48 after a pre-collar)',
      ),
      '(t true, m magnetic, g grid, l local grid; dip down negative; metres)',
    ]),
    answer: makeHole,
  },
  state: {
    show: typed(({ hole, to }) => [`${hole} ${to}`, `Why is it ${to}?`]),
    answer: stopHole,
    isDeliberate: ({ to }) => to === 'abandoned',
  },
  redrill: {
    show: typed(({ hole }) => [
      `redrill ${hole}`,
      'Why is it redrilled? The hole gets the next suffix and the same plan.',
    ]),
    answer: redrillHole,
  },
  reopen: {
    show: typed(({ hole }) => [`reopen ${hole}`, 'Why is it reopened? It is recorded with your name.']),
    answer: reopen,
  },
  ending: { show: ofHole(endingShown), answer: answerEnding },
  'survey run': { show: ofHole(surveyPrompt), answer: answerRun },
  shot: { show: ofHole(surveyPrompt), answer: answerShot },
  rejection: { show: ofHole(surveyPrompt), answer: answerRejection, isDeliberate: () => true },
  'new code': {
    show: newCodeShown,
    answer: addNewCode,
    choices: ({ project }) => codeLists(project.schema).length,
  },
  'change code': {
    show: changeCodeShown,
    answer: saveChange,
    key: changeCodeKey,
    isDeliberate: () => true,
  },
  'change field': {
    show: changeFieldShown,
    answer: saveFieldChange,
    key: changeFieldKey,
    isDeliberate: () => true,
  },
  elsewhere: {
    show: typed(() => [
      'go on in another folder',
      'Everything is written to it, what is not safe too, and work goes on there. The old folder stays as it is.',
      'A folder that is empty or not there yet, on another disk:',
    ]),
    answer: goElsewhere,
  },
  leaving: {
    show: typed(({ open }, state) => leavingWords(state, open)),
    answer: (state, _world, { draft }) => answerLeaving(state, draft.text),
  },
  missing: {
    show: typed(({ document }, state) =>
      isRolledBack(state, document)
        ? [
            `${document.id}: its file is older than when it was last written`,
            'Esc and put the later copy back, or take one in with offsider receive: then nothing is lost.',
            'If this older one is right, type the reason: it is recorded with your name, and work goes on from it.',
          ]
        : [
            `${document.id}: its file is gone`,
            'restore rebuilds it from what the journal still has; anything older is missing from it.',
            'Anything else is the reason to let it go for good, recorded with your name. A copy is taken in with offsider receive.',
          ],
    ),
    answer: (state, _world, { document, draft }) => settleMissing(state, document, draft.text),
    isDeliberate: ({ draft }) => draft.text.trim().toLowerCase() !== 'restore',
  },
  accept: {
    show: typed((_prompt, state) => [
      'accept as it is',
      findingInHand(state)?.finding.problem ?? '',
      'Type why it is right as it is: kept in the file with your initials, and shown.',
      'Where what was found changes, it is open again.',
    ]),
    answer: answerAccept,
  },
  dispatch: {
    show: dispatchShown,
    answer: (state, world, { draft }) => answerDispatch(state, draft.text, world),
  },
  resplit: { show: ofHole(resplitShown), answer: answerResplit },
  'hand over': {
    show: handOnShown,
    answer: answerHandOn,
    choices: ({ documents }) => latestFirst(documents.values()).length,
    isDeliberate: () => true,
  },
  activity: {
    show: activityShown,
    answer: startActivity,
    key: pickActivity,
    choices: ({ project }) => project.settings.shift.activities.length,
  },
  plod: { show: plodShown, answer: answerPlod, key: plodKey, leave: leavePlod },
  'shift line': { show: lineShown, answer: answerLine },
  scanned: {
    show: scannedShown,
    answer: (state) => still({ ...state, prompt: undefined, message: undefined }),
  },
  'number bags': { show: numbersShown, answer: answerNumbers },
  undo: { show: undoShown, answer: leaveUndo, key: undoKey },
};

/** Shown of the hole in hand; nothing where there is none. */
function ofHole<P>(
  show: (state: State, hole: Document, prompt: P, width: number, theme: Theme) => Shown,
): Show<P> {
  return (state, prompt, width, theme) => {
    const hole = holeInHand(state);
    return hole === undefined ? NOTHING : show(state, hole, prompt, width, theme);
  };
}

/** A question that is answered by typing: its title, then its words. */
function typed<P extends { readonly draft: Draft }>(
  words: (prompt: P, state: State) => readonly [title: string, ...words: readonly string[]],
): Show<P> {
  return (state, prompt, width, theme) => {
    const [title, ...rest] = words(prompt, state);
    return typedShown(title, rest, prompt.draft, width, theme);
  };
}

const entryOf = ({ kind }: Prompt): PromptEntry<Prompt> => PROMPTS[kind];

/** The question that stands, as it is shown. */
export function promptShown(state: State, prompt: Prompt, width: number, theme: Theme): Shown {
  return entryOf(prompt).show(state, prompt, width, theme);
}

/** True of a question whose answer one key more records. */
export function isDeliberate(prompt: Prompt): boolean {
  return entryOf(prompt).isDeliberate?.(prompt) === true;
}

/** Enter on the question that stands: what it leads to. */
export function answer(state: State, world: World): Step {
  return state.prompt === undefined ? still(state) : entryOf(state.prompt).answer(state, world, state.prompt);
}

/** Escape on the question that stands. */
export function leavePrompt(state: State): Step {
  const { prompt } = state;
  const own = prompt === undefined ? undefined : entryOf(prompt).leave?.(state, prompt);
  return own ?? still({ ...state, prompt: undefined, message: undefined });
}

/** Any other key in a question: it moves the cursor of a choice, or edits what is typed there. */
export function promptKey(state: State, event: KeyEvent, world: World): Step {
  const { prompt } = state;
  if (prompt === undefined) return still(state);
  const entry = entryOf(prompt);
  const own = entry.key?.(state, event, world, prompt);
  if (own !== undefined) return own;
  const by = { up: -1, down: 1 }[chordOf(event) ?? ''];
  if ('cursor' in prompt && by !== undefined) {
    const last = (entry.choices?.(state) ?? 1) - 1;
    const cursor = Math.max(0, Math.min(last, prompt.cursor + by));
    return still({ ...state, prompt: { ...prompt, cursor } });
  }
  if (!('draft' in prompt)) return still(state);
  const draft = edited(prompt.draft, event);
  return still(draft === undefined ? state : { ...state, prompt: { ...prompt, draft }, message: undefined });
}
