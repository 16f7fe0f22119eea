import { faultsUnderRows } from '../../desk/change-logging.ts';
import type { Finding } from '../../finding/finding.ts';
import type { CodeChange } from '../../schema/change/edit-code.ts';
import { newlyFound, withCode } from '../../schema/change/preview-change.ts';
import type { Code } from '../../schema/logging-schema.ts';
import { takesOf } from '../../schema/strokes.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { CodeMember, Prompt } from '../prompt.ts';
import { NOTHING, type Shown, typedLine } from '../screens/shown.ts';
import type { State } from '../state.ts';
import { type Step, saying, sayingFinding, still, type World } from '../step.ts';
import { chordOf, type KeyEvent } from '../terminal/input/keys.ts';
import { fit } from '../terminal/paint/cells.ts';
import type { Theme, Tone } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { askFieldChange } from './change-field.ts';
import { codeInHand, fieldInHand } from './codes-list.ts';

/** The question that changes a code. */
export type ChangePrompt = Extract<Prompt, { readonly kind: 'change code' }>;

/** What is typed for a member of a code, as a change of it; or why it can't be. */
export type ChangeRead =
  | { readonly ok: true; readonly change: CodeChange }
  | { readonly ok: false; readonly problem: string };

/** Opens the change of the code in hand on the screen of codes. */
export function askChange(state: State): Step {
  const field = fieldInHand(state);
  if (field !== undefined) return askFieldChange(state, field);
  const found = state.screen.name === 'codes' ? codeInHand(state) : undefined;
  if (found === undefined)
    return still(
      saying(
        state,
        'Enter changes a code or, at the end, a field. Levels of a scale are changed in logging.json.',
        'warn',
      ),
    );
  const { list, code } = found;
  const draft = draftOf(code.label);
  return still({
    ...state,
    prompt: { kind: 'change code', list, code: code.code, member: 'label', draft, adding: false },
    message: undefined,
  });
}

/** The code that a change is about, as it is. */
export function codeOfChange({ project }: State, { list, code }: ChangePrompt): Code | undefined {
  return project.schema.lists[list]?.codes.find((each) => each.code === code);
}

/** What can be changed of a code: a key only where an amount comes after it, the provisional mark only where it is set. */
export function membersOf(state: State, prompt: ChangePrompt): readonly CodeMember[] {
  const { schema } = state.project;
  const takesKey = schema.fields.some(
    (field) => 'list' in field && field.list === prompt.list && takesOf(field) !== 'no amount',
  );
  const isProvisional = codeOfChange(state, prompt)?.provisional === true;
  return [
    'label',
    'look',
    'pair',
    ...(takesKey ? (['key'] as const) : []),
    'retiredSince',
    ...(isProvisional ? (['provisional'] as const) : []),
    'after',
  ];
}

/** A key in the question: another member, or a character of what it is to be. */
export function changeCodeKey(
  state: State,
  event: KeyEvent,
  _world: World,
  prompt: ChangePrompt,
): Step | undefined {
  const by = { up: -1, down: 1 }[chordOf(event) ?? ''];
  if (by === undefined) return undefined;

  const members = membersOf(state, prompt);
  const at = members.indexOf(prompt.member) + by;
  const member = members[Math.max(0, Math.min(members.length - 1, at))] ?? prompt.member;
  const code = codeOfChange(state, prompt);
  return still({
    ...state,
    prompt: { ...prompt, member, draft: draftFor(member, code) },
    message: undefined,
  });
}

function draftFor(member: CodeMember, code: Code | undefined) {
  if (member === 'retiredSince' || member === 'provisional' || member === 'after') return EMPTY_DRAFT;
  return draftOf(code?.[member] ?? '');
}

/** What is typed, as a change. Nothing typed takes a pair or key away, retires a code from today, or uses a retired one again. */
export function readChange(state: State, prompt: ChangePrompt): ChangeRead {
  const typed = prompt.draft.text.trim();
  const code = codeOfChange(state, prompt);
  switch (prompt.member) {
    case 'label':
      if (typed === '') return { ok: false, problem: 'Type what it is called.' };
      return typed.length > 60
        ? { ok: false, problem: 'At most 60 characters: say the rest in what to look for.' }
        : { ok: true, change: { label: typed } };
    case 'look':
      return typed.length > 200
        ? { ok: false, problem: 'At most 200 characters.' }
        : { ok: true, change: { look: typed } };
    case 'pair':
    case 'key':
      return { ok: true, change: { [prompt.member]: typed === '' ? null : typed } };
    case 'retiredSince':
      if (typed === '' && code?.retiredSince !== undefined)
        return { ok: true, change: { retiredSince: null } };
      return typed === '' || /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.test(typed)
        ? { ok: true, change: { retiredSince: typed === '' ? state.now.slice(0, 10) : typed } }
        : { ok: false, problem: 'Type a date like 2026-03-14, or nothing for today.' };
    case 'provisional':
      return { ok: true, change: { provisional: null } };
    case 'after':
      return placeTyped(state, prompt, typed);
  }
}

/** Where a code goes in its list: behind the one that is typed, or first. */
function placeTyped({ project }: State, { list, code }: ChangePrompt, typed: string): ChangeRead {
  const others = (project.schema.lists[list]?.codes ?? []).filter((each) => each.code !== code);
  if (typed === '-' && others[0] !== undefined)
    return { ok: true, change: { before: others[0].code, after: undefined } };
  const there = others.find((each) => each.code.toLowerCase() === typed.toLowerCase());
  return there === undefined
    ? { ok: false, problem: 'Type the code of the list that it comes after, or - for first.' }
    : { ok: true, change: { after: there.code, before: undefined } };
}

/** What the check finds in a change that it does not find now: its rules, and what rows of open holes would come to say. */
export function foundInChange(
  state: State,
  { list, code }: ChangePrompt,
  change: CodeChange,
): readonly Finding[] {
  const { schema } = state.project;
  const after = withCode(schema, list, code, change);
  return [...newlyFound(schema, after), ...faultsUnderRows(schema, after, state.documents.values())];
}

/** Enter: the change is written to logging.json, and stands once that is durable. One with a fault stays, with the reason. */
export function saveChange(state: State): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'change code' || prompt.adding) return still(state);
  if (state.readOnly !== undefined)
    return still(saying(state, `Nothing is changed: ${state.readOnly}`, 'alert'));
  const read = readChange(state, prompt);
  if (!read.ok) return still(saying(state, read.problem, 'warn'));
  const code = codeOfChange(state, prompt);
  const same = Object.entries(read.change).every(
    ([member, value]) => value !== undefined && (code?.[member as keyof Code] ?? null) === value,
  );
  if (same) return still(saying(state, 'It says that already.'));
  const fault = foundInChange(state, prompt, read.change).find(({ severity }) => severity === 'fault');
  if (fault !== undefined) return still(sayingFinding(state, fault));
  return [
    { ...state, prompt: { ...prompt, adding: true }, message: undefined },
    [{ do: 'change code', list: prompt.list, code: prompt.code, change: read.change }],
  ];
}

const NAMES: Readonly<Record<CodeMember, string>> = {
  label: 'called',
  look: 'look for',
  pair: 'pair',
  key: 'key',
  retiredSince: 'retired',
  provisional: 'provisional',
  after: 'comes after',
};

/** A code with what can be changed of it, and what the check finds in what is typed, as it is typed. */
export function changeCodeShown(state: State, prompt: ChangePrompt, width: number, theme: Theme): Shown {
  const code = codeOfChange(state, prompt);
  if (code === undefined) return NOTHING;
  const members = membersOf(state, prompt).map((member): Line => {
    const here = member === prompt.member;
    const words = `${here ? theme.signs.cursor : ' '} ${fit(NAMES[member], 12)}${memberWords(state, prompt, code, member)}`;
    return spans([fit(words, width, theme.signs.ellipsis), here ? 'picked' : 'plain']);
  });
  return {
    title: `${code.code} · list ${prompt.list}`,
    lines: [...members, ...checkLines(state, prompt, width)],
    foot: [typedLine(prompt.draft, theme), line(hintOf(prompt.member, code), 'faint')],
  };
}

function memberWords(state: State, { list }: ChangePrompt, code: Code, member: CodeMember): string {
  const codes = state.project.schema.lists[list]?.codes ?? [];
  if (member === 'after') return codes[codes.indexOf(code) - 1]?.code ?? 'first';
  if (member === 'provisional') return 'added on the rig, not agreed with camp yet';
  return code[member] ?? (member === 'retiredSince' ? 'no' : 'none');
}

function hintOf(member: CodeMember, code: Code): string {
  const enter = {
    label: 'Enter saves it.',
    look: 'Enter saves it.',
    pair: 'Enter saves it; empty takes it away.',
    key: 'Enter saves it; empty takes it away.',
    retiredSince:
      code.retiredSince === undefined ? 'Enter retires it from today, or a date.' : 'Enter uses it again.',
    provisional: 'Enter: camp has agreed to it.',
    after: 'Type a code, or - for first; Enter moves it there.',
  }[member];
  return `↑ ↓ another part. ${enter} Esc leaves it.`;
}

const TONES: Readonly<Record<Finding['severity'], Tone>> = { fault: 'alert', warning: 'warn', note: 'faint' };

function checkLines(state: State, prompt: ChangePrompt, width: number): readonly Line[] {
  const read = readChange(state, prompt);
  if (!read.ok) return wrap(read.problem, width, 'warn');
  const found = foundInChange(state, prompt, read.change);
  if (found.length === 0) return [line('check: nothing found', 'good')];
  return found.flatMap((each) => wrap(`${each.severity}: ${each.problem}`, width, TONES[each.severity]));
}
