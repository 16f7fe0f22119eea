import { plodContext, plodDeed, plodGap, receivePlod } from '../../acts/plod.ts';
import type { Document } from '../../record/document.ts';
import { parsePlodLine, parseSheetPart } from '../../shift/plod-line.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import type { State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submittingResult, type World } from '../step.ts';
import { chordOf, type KeyEvent } from '../terminal/input/keys.ts';

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
  const text = prompt.draft.text.trim();
  const above = prompt.lines.map(({ line }) => line);
  const context = plodContext(state.project, [...state.documents.values()], shift, above, state.now);
  if (text === '') return recorded(state, prompt, shift, plodGap(above, context), world);
  const part = parseSheetPart(text);
  if (part?.ok)
    return still({
      ...state,
      prompt: { ...prompt, part: { ...prompt.part, ...part.value }, draft: EMPTY_DRAFT },
      message: undefined,
    });
  const line = part ?? parsePlodLine(text, context);
  if (!line.ok) {
    const [first] = line.findings;
    return still(first === undefined ? state : sayingFinding(state, first));
  }
  const lines = [...prompt.lines, { text, line: line.value }];
  return still({
    ...state,
    prompt: { ...prompt, lines, gapShown: false, draft: EMPTY_DRAFT },
    message: undefined,
  });
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

/** Up in a plod: the last line is taken back, to be typed again. */
export function plodKey(state: State, event: KeyEvent, _world: World, prompt: PlodPrompt): Step | undefined {
  if (chordOf(event) !== 'up') return undefined;
  const last = prompt.lines.at(-1);
  if (last === undefined || prompt.draft.text !== '') return still(state);
  return still({
    ...state,
    prompt: { ...prompt, lines: prompt.lines.slice(0, -1), gapShown: false, draft: draftOf(last.text) },
    message: undefined,
  });
}
