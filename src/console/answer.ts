import { edited } from './draft.ts';
import { goElsewhere } from './lists/elsewhere.ts';
import { makeHole, redrillHole, reopen, stopHole } from './lists/holes.ts';
import { answerLeaving } from './lists/leaving.ts';
import { settleMissing } from './lists/missing.ts';
import { answerPlod, plodKey } from './lists/plod.ts';
import { answerLine, pickActivity, startActivity } from './lists/shift.ts';
import { changeCodeKey, saveChange } from './log/change-code.ts';
import { answerEnding } from './log/ending.ts';
import { addNewCode, codeLists } from './log/new-code.ts';
import { makeRange } from './log/range.ts';
import { answerDispatch, answerHandOn, latestFirst } from './samples/dispatch.ts';
import { answerMismatch } from './samples/mismatch.ts';
import { answerNumbers } from './samples/number-bags.ts';
import { answerResplit } from './samples/resplit.ts';
import { answerRod } from './samples/rod.ts';
import type { State } from './state.ts';
import { keptIfRefused, type Step, still, type World } from './step.ts';
import { answerRejection } from './survey/survey.ts';
import { answerRun } from './survey/survey-run.ts';
import { answerShot } from './survey/survey-shot.ts';
import { chordOf, type KeyEvent } from './terminal/input/keys.ts';

/** Enter on the question that stands: what it leads to. */
export function answer(state: State, world: World): Step {
  switch (state.prompt?.kind) {
    case 'rod':
      return answerRod(state, world);
    case 'mismatch':
      return answerMismatch(state, world);
    case 'preview':
      return makeRange(state, world);
    case 'new hole':
      return makeHole(state, world);
    case 'redrill':
      return redrillHole(state, world);
    case 'state':
      return stopHole(state, world);
    case 'scanned':
      return still({ ...state, prompt: undefined, message: undefined });
    case 'number bags':
      return answerNumbers(state, world);
    case 'reopen':
      return reopen(state, world);
    case 'ending':
      return answerEnding(state, world);
    case 'survey run':
      return answerRun(state, world);
    case 'shot':
      return answerShot(state, world);
    case 'rejection':
      return answerRejection(state);
    case 'new code':
      return addNewCode(state);
    case 'change code':
      return saveChange(state);
    case 'elsewhere':
      return goElsewhere(state);
    case 'leaving':
      return answerLeaving(state, state.prompt.draft.text);
    case 'missing':
      return settleMissing(state, state.prompt.document, state.prompt.draft.text);
    case 'dispatch':
      return answerDispatch(state, state.prompt.draft.text, world);
    case 'resplit':
      return answerResplit(state, world);
    case 'hand on':
      return answerHandOn(state, world);
    case 'activity':
      return startActivity(state, world);
    case 'plod':
      return answerPlod(state, world);
    case 'shift line':
      return answerLine(state, world);
    case undefined:
      return still(state);
  }
}

/** Any other key in a question: it moves the cursor of a choice, or edits what is typed there. */
export function promptKey(state: State, event: KeyEvent, world: World): Step {
  const { prompt } = state;
  if (prompt === undefined) return still(state);
  if (prompt.kind === 'change code') return changeCodeKey(state, event);
  if (prompt.kind === 'activity' && event.kind === 'text')
    return keptIfRefused(state, pickActivity(state, event.text, world));
  if (prompt.kind === 'plod' && chordOf(event) === 'up') return plodKey(state, prompt);
  const by = { up: -1, down: 1 }[chordOf(event) ?? ''];
  if ('cursor' in prompt && by !== undefined) {
    const last = choices(state, prompt.kind) - 1;
    const cursor = Math.max(0, Math.min(last, prompt.cursor + by));
    return still({ ...state, prompt: { ...prompt, cursor } });
  }
  if (!('draft' in prompt)) return still(state);
  const draft = edited(prompt.draft, event);
  return still(draft === undefined ? state : { ...state, prompt: { ...prompt, draft }, message: undefined });
}

function choices({ project, documents }: State, kind: 'activity' | 'new code' | 'hand on'): number {
  if (kind === 'activity') return project.settings.shift.activities.length;
  return kind === 'hand on' ? latestFirst(documents.values()).length : codeLists(project.schema).length;
}
