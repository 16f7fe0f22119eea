import { faultsUnderRows } from '../../desk/change-logging.ts';
import type { Finding } from '../../finding/finding.ts';
import type { CodeChange } from '../../schema/change/edit-code.ts';
import { newlyFound, withCode } from '../../schema/change/preview-change.ts';
import type { Code } from '../../schema/logging-schema.ts';
import { takesOf } from '../../schema/strokes.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { CodeMember, Prompt } from '../prompt.ts';
import type { State } from '../state.ts';
import { type Step, saying, sayingFinding, still, type World } from '../step.ts';
import type { KeyEvent } from '../terminal/input/keys.ts';
import { chordOf } from '../terminal/input/keys.ts';
import { codeInHand } from './codes-list.ts';

/** The question that changes a code. */
export type ChangePrompt = Extract<Prompt, { readonly kind: 'change code' }>;

/** What is typed for a member of a code, as a change of it; or why it can't be. */
export type ChangeRead =
  | { readonly ok: true; readonly change: CodeChange }
  | { readonly ok: false; readonly problem: string };

/** Opens the change of the code in hand on the screen of codes. */
export function askChange(state: State): Step {
  const found = state.screen.name === 'codes' ? codeInHand(state) : undefined;
  if (found === undefined)
    return still(
      saying(state, 'Enter changes a code. Levels of a scale are changed in logging.json.', 'warn'),
    );
  const { list, code } = found;
  const draft = draftOf(code.label);
  return still({
    ...state,
    prompt: { kind: 'change code', list, code: code.code, member: 'label', draft, adding: false },
    message: undefined,
  });
}

/** The code that a change is about, as it stands. */
export function codeOfChange({ project }: State, { list, code }: ChangePrompt): Code | undefined {
  return project.schema.lists[list]?.codes.find((each) => each.code === code);
}

/** What can be changed of a code: a key only where an amount stands behind it, the provisional mark only where it is set. */
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
  if (member === 'retiredSince' || member === 'provisional') return EMPTY_DRAFT;
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
  }
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
    ([member, value]) => (code?.[member as CodeMember] ?? null) === value,
  );
  if (same) return still(saying(state, 'It says that already.'));
  const fault = foundInChange(state, prompt, read.change).find(({ severity }) => severity === 'fault');
  if (fault !== undefined) return still(sayingFinding(state, fault));
  return [
    { ...state, prompt: { ...prompt, adding: true }, message: undefined },
    [{ do: 'change code', list: prompt.list, code: prompt.code, change: read.change }],
  ];
}
