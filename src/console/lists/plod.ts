import { plodContext, plodDeed, plodGap, receivePlod } from '../../acts/plod.ts';
import type { Result } from '../../finding/finding.ts';
import type { Document } from '../../record/document.ts';
import { type PlodContext, parsePlodLine, parseSheetPart } from '../../shift/plod-line.ts';
import { draftOf, EMPTY_DRAFT, edited } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import type { State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submittingResult, type World } from '../step.ts';
import { chordOf, type KeyEvent } from '../terminal/input/keys.ts';
import { atField, fieldFault, formText, newForm, PLOD_FIELDS, settledForm } from './plod-form.ts';

type PlodPrompt = Extract<Prompt, { readonly kind: 'plod' }>;

/** What a line about the plod of a shift leads to: a sheet begun, a query answered, a signature; undefined where it is about something else. */
export function plodTyped(state: State, shift: Document, text: string, world: World): Step | undefined {
  const [, sheet, who = ''] = /^plod +(\S+) *(.*)$/.exec(text) ?? [];
  if (sheet !== undefined) return still(begun(state, shift, sheet, who));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const made = plodDeed(state.project, [...state.documents.values()], shift, text, maker);
  if (made === undefined) return undefined;
  return submittingResult(state, shift, made, { ...state, prompt: undefined });
}

function begun(state: State, shift: Document, sheet: string, typed: string): State {
  const second = / *=$/.test(typed);
  const from = typed.replace(/ *=$/, '').trim();
  const prompt: PlodPrompt = {
    kind: 'plod',
    shift: shift.id,
    sheet,
    second,
    part: {},
    lines: [],
    gapShown: false,
    draft: EMPTY_DRAFT,
    ...(from === '' ? {} : { from }),
  };
  return { ...state, prompt, message: undefined };
}

/** Enter in a plod: the line is taken, or the empty line records the sheet, once the gap that it leaves was shown. */
export function answerPlod(state: State, world: World): Step {
  const { prompt } = state;
  const shift = prompt?.kind === 'plod' ? state.documents.get(`shift/${prompt.shift}`) : undefined;
  if (prompt?.kind !== 'plod' || shift === undefined) return still(state);
  const above = prompt.lines.map(({ line }) => line);
  const context = plodContext(state.project, [...state.documents.values()], shift, above, state.now);
  if (prompt.form !== undefined) return answerField(state, prompt, context);
  const text = prompt.draft.text.trim();
  if (text === '') return recorded(state, prompt, shift, plodGap(above, context), world);
  const part = parseSheetPart(text);
  if (part?.ok)
    return still({
      ...state,
      prompt: { ...prompt, part: { ...prompt.part, ...part.value }, draft: EMPTY_DRAFT },
      message: undefined,
    });
  if (part !== undefined) return refusedLine(state, part);
  return takeLine(state, prompt, text, context);
}

const refusedLine = (state: State, refused: Result<unknown>): Step => {
  const first = refused.ok ? undefined : refused.findings[0];
  return still(first === undefined ? state : sayingFinding(state, first));
};

/** A line put on the sheet; one that can't be stays where it was typed, with what is wrong. */
function takeLine(state: State, prompt: PlodPrompt, text: string, context: PlodContext): Step {
  const line = parsePlodLine(text, context);
  if (!line.ok) return refusedLine(state, line);
  const lines = [...prompt.lines, { text, line: line.value }];
  const taken = { ...prompt, lines, gapShown: false, draft: EMPTY_DRAFT };
  return still({ ...state, prompt: prompt.form === undefined ? taken : newForm(taken), message: undefined });
}

/** Enter in a field: what is typed there is looked at, and the hand goes to the next; on the last field the line is taken. */
function answerField(state: State, prompt: PlodPrompt, context: PlodContext): Step {
  const fault = fieldFault(prompt, context);
  if (fault !== undefined) return still(saying(state, fault, 'warn'));
  const { field } = prompt.form ?? { field: 0 };
  return field < PLOD_FIELDS.length - 1
    ? still({ ...state, prompt: atField(prompt, field + 1), message: undefined })
    : takeForm(state, prompt, context);
}

/** The line that the fields make, put on the sheet. */
function takeForm(state: State, prompt: PlodPrompt, context: PlodContext): Step {
  const fault = fieldFault(prompt, context);
  const form = settledForm(prompt);
  if (fault !== undefined || form === undefined) return still(saying(state, fault ?? '', 'warn'));
  return takeLine(state, { ...prompt, form }, formText(form, context), context);
}

function recorded(
  state: State,
  prompt: PlodPrompt,
  shift: Document,
  gap: string | undefined,
  world: World,
): Step {
  if (prompt.lines.length > 0 && gap !== undefined && !prompt.gapShown) {
    const words = `${gap.charAt(0).toUpperCase()}${gap.slice(1)}. Type what is missing, or Enter again records the sheet so.`;
    return still(saying({ ...state, prompt: { ...prompt, gapShown: true } }, words, 'warn'));
  }
  const { sheet, from, second } = prompt;
  const made = receivePlod(
    shift,
    { sheet, receivedAt: world.now, ...(from === undefined ? {} : { from }), ...prompt.part },
    prompt.lines.map(({ line }) => line),
    { second },
    { newId: world.newId, at: world.now, by: state.person },
  );
  const { screen } = state;
  const shown: State['screen'] = screen.name === 'shift' ? { ...screen, view: 'plod', cursor: 0 } : screen;
  return submittingResult(state, shift, made, { ...state, screen: shown, prompt: undefined });
}

/** Tab fills in the next line as a form; in it Tab and the arrows go from field to field, and F4 takes the line. Up takes a line back. */
export function plodKey(state: State, event: KeyEvent, _world: World, prompt: PlodPrompt): Step | undefined {
  const { dropping: _, ...kept } = prompt;
  const chord = chordOf(event);
  const { form } = kept;
  if (form === undefined) {
    if (chord === 'up') return takenBack(state, kept);
    if (chord === 'tab' && kept.draft.text === '')
      return still({ ...state, prompt: newForm(kept), message: undefined });
    return prompt.dropping === undefined ? undefined : promptedAgain({ ...state, prompt: kept }, event);
  }
  if (chord === 'f4') {
    const shift = state.documents.get(`shift/${prompt.shift}`);
    if (shift === undefined) return still(state);
    const above = prompt.lines.map(({ line }) => line);
    const context = plodContext(state.project, [...state.documents.values()], shift, above, state.now);
    return takeForm(state, kept, context);
  }
  const by = { tab: 1, down: 1, 'shift-tab': -1, up: -1 }[chord ?? ''];
  return by === undefined
    ? undefined
    : still({ ...state, prompt: atField(kept, form.field + by), message: undefined });
}

/** Another key after Escape: the lines stay, and the key does what it does. */
function promptedAgain(state: State, event: KeyEvent): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'plod') return still(state);
  const draft = edited(prompt.draft, event) ?? prompt.draft;
  return still({ ...state, prompt: { ...prompt, draft }, message: undefined });
}

/** Escape in a plod: out of the form with its line as typed; lines of a sheet are dropped by a second one only. */
export function leavePlod(state: State, prompt: PlodPrompt): Step {
  const { form: _, dropping, ...rest } = prompt;
  const form = settledForm(prompt);
  if (form !== undefined) {
    const activities = state.project.shift.activities;
    const text = formText(form, { activities });
    return still({ ...state, prompt: { ...rest, draft: draftOf(text) }, message: undefined });
  }
  if (prompt.lines.length === 0 || dropping !== undefined)
    return still({ ...state, prompt: undefined, message: undefined });
  const count = prompt.lines.length === 1 ? 'the line' : `the ${prompt.lines.length} lines`;
  return still(
    saying(
      { ...state, prompt: { ...prompt, dropping: true } },
      `Esc again drops ${count}. Any other key keeps them.`,
      'warn',
    ),
  );
}

/** Up in a plod: the last line is taken back, to be typed again. */
function takenBack(state: State, prompt: PlodPrompt): Step {
  const last = prompt.lines.at(-1);
  if (last === undefined || prompt.draft.text !== '') return still(state);
  return still({
    ...state,
    prompt: { ...prompt, lines: prompt.lines.slice(0, -1), gapShown: false, draft: draftOf(last.text) },
    message: undefined,
  });
}
