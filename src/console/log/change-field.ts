import { faultsUnderRows, rulesGoneBlind } from '../../desk/change-logging.ts';
import type { Finding } from '../../finding/finding.ts';
import { type FieldChange, fieldProblem, sheetOrder, withField } from '../../schema/change/edit-field.ts';
import { newlyFound } from '../../schema/change/preview-change.ts';
import type { Field } from '../../schema/logging-schema.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { FieldMember, Prompt } from '../prompt.ts';
import { NOTHING, type Shown, typedLine } from '../screens/shown.ts';
import type { State } from '../state.ts';
import { type Step, saying, sayingFinding, still, type World } from '../step.ts';
import { chordOf, type KeyEvent } from '../terminal/input/keys.ts';
import { fit } from '../terminal/paint/cells.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { columnsFor } from './panels/columns.ts';

type FieldPrompt = Extract<Prompt, { readonly kind: 'change field' }>;

const MEMBERS: readonly FieldMember[] = ['label', 'after', 'required', 'retiredSince'];
const NAMES: Readonly<Record<FieldMember, string>> = {
  label: 'called',
  after: 'comes after',
  required: 'required',
  retiredSince: 'retired',
};
/** Cells of the table in the preview: that of a log screen of 80 columns. */
const TABLE = 46;

/** Opens the change of a field of the log sheet. */
export function askFieldChange(state: State, field: Field): Step {
  return still({
    ...state,
    prompt: {
      kind: 'change field',
      field: field.name,
      member: 'label',
      draft: draftOf(field.label),
      adding: false,
    },
    message: undefined,
  });
}

function fieldOf({ project }: State, { field }: FieldPrompt): Field | undefined {
  return project.schema.fields.find(({ name }) => name === field);
}

/** A key in the question: another member; the rest is typed. */
export function changeFieldKey(
  state: State,
  event: KeyEvent,
  _world: World,
  prompt: FieldPrompt,
): Step | undefined {
  const by = { up: -1, down: 1 }[chordOf(event) ?? ''];
  if (by === undefined) return undefined;
  const at = MEMBERS.indexOf(prompt.member) + by;
  const member = MEMBERS[Math.max(0, Math.min(MEMBERS.length - 1, at))] ?? prompt.member;
  const draft = member === 'label' ? draftOf(fieldOf(state, prompt)?.label ?? '') : EMPTY_DRAFT;
  return still({ ...state, prompt: { ...prompt, member, draft }, message: undefined });
}

/** What is typed, as a change; undefined where it says nothing yet. Nothing typed retires from today, and turns required round. */
function changeTyped(state: State, prompt: FieldPrompt): FieldChange | undefined {
  const typed = prompt.draft.text.trim();
  const field = fieldOf(state, prompt);
  switch (prompt.member) {
    case 'label':
      return { label: typed };
    case 'after':
      return typed === '' ? undefined : { after: typed === '-' ? '' : typed };
    case 'required':
      return { required: field?.required !== true };
    case 'retiredSince':
      return { retiredSince: typed === '' ? state.now.slice(0, 10) : typed };
  }
}

function foundIn(state: State, prompt: FieldPrompt, change: FieldChange): readonly Finding[] {
  const { schema } = state.project;
  const after = withField(schema, prompt.field, change);
  return [
    ...newlyFound(schema, after),
    ...faultsUnderRows(schema, after, state.documents.values()),
    ...rulesGoneBlind(state.project, after),
  ];
}

/** Enter: the change is written to logging.json. One with a fault stays, with the reason. */
export function saveFieldChange(state: State): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'change field' || prompt.adding) return still(state);
  if (state.readOnly !== undefined)
    return still(saying(state, `Nothing is changed: ${state.readOnly}`, 'alert'));
  const change = changeTyped(state, prompt);
  if (change === undefined)
    return still(saying(state, 'Type the field that it comes after, or - for first.', 'warn'));
  const problem = fieldProblem(state.project.schema, prompt.field, change);
  if (problem !== undefined) return still(saying(state, `Not changed: ${problem}.`, 'warn'));
  if (change.label === fieldOf(state, prompt)?.label) return still(saying(state, 'It says that already.'));
  const fault = foundIn(state, prompt, change).find(({ severity }) => severity === 'fault');
  if (fault !== undefined) return still(sayingFinding(state, fault));
  return [
    { ...state, prompt: { ...prompt, adding: true }, message: undefined },
    [{ do: 'change field', field: prompt.field, change }],
  ];
}

/** A field with what can be changed of it, and the log sheet and its table as they would be. */
export function changeFieldShown(state: State, prompt: FieldPrompt, width: number, theme: Theme): Shown {
  const field = fieldOf(state, prompt);
  if (field === undefined) return NOTHING;
  const { fields } = state.project.schema;
  const values: Readonly<Record<FieldMember, string>> = {
    label: field.label,
    after: fields[fields.indexOf(field) - 1]?.name ?? 'first',
    required: field.required ? 'yes' : 'no',
    retiredSince: 'no',
  };
  const members = MEMBERS.map((member): Line => {
    const here = member === prompt.member;
    const words = `${here ? theme.signs.cursor : ' '} ${fit(NAMES[member], 12)}${values[member]}`;
    return spans([fit(words, width, theme.signs.ellipsis), here ? 'picked' : 'plain']);
  });
  return {
    title: `field ${field.name}`,
    lines: [...members, ...previewLines(state, prompt, width)],
    foot: [typedLine(prompt.draft, theme), line(hintOf(prompt.member, field), 'faint')],
  };
}

function previewLines(state: State, prompt: FieldPrompt, width: number): readonly Line[] {
  const { schema } = state.project;
  const change = changeTyped(state, prompt);
  if (change === undefined) return [];
  const problem = fieldProblem(schema, prompt.field, change);
  if (problem !== undefined) return wrap(problem, width, 'warn');
  const after = withField(schema, prompt.field, change);
  const table = columnsFor(after, TABLE)
    .map(({ title }) => title)
    .join(' ');
  const found = foundIn(state, prompt, change);
  return [
    ...wrap(`log sheet: ${sheetOrder(after)}`, width),
    ...wrap(`table at 80 columns: ${table}`, width),
    ...(found.length === 0
      ? [line('check: nothing found', 'good')]
      : found.flatMap((each) => wrap(`${each.severity}: ${each.problem}`, width, 'warn'))),
  ];
}

function hintOf(member: FieldMember, field: Field): string {
  const enter = {
    label: 'Enter saves it.',
    after: 'Type a field, or - for first; Enter moves it there.',
    required: field.required ? 'Enter: not required any more.' : 'Enter: required from now on.',
    retiredSince: 'Enter retires it from today, or a date.',
  }[member];
  return `↑ ↓ another part. ${enter} Esc leaves it.`;
}
