import type { Document } from '../../record/document.ts';
import { fieldApplies } from '../../schema/applies.ts';
import type { Field } from '../../schema/logging-schema.ts';
import { parseLine } from '../../shorthand/parse.ts';
import { draftOf, EMPTY_DRAFT, edited } from '../draft.ts';
import { type FieldsForm, holeInHand, type State, schemaInHand } from '../state.ts';
import { type Step, saying, still, type World } from '../step.ts';
import type { KeyEvent } from '../terminal/input/keys.ts';
import { chordOf } from '../terminal/input/keys.ts';
import { enterLine, entryContext } from './entry.ts';
import { matchingOptions, optionsOf, typedStrokes } from './field-options.ts';

/** Opens the fields of the row in hand. What was typed on the line is left behind: the form says a row of its own. */
export function openForm(state: State): Step {
  const { screen } = state;
  if (screen.name !== 'log') return still(state);
  const form: FieldsForm = { field: 0, typed: EMPTY_DRAFT, pick: 0, said: {} };
  return still({
    ...state,
    screen: { name: 'fields', hole: screen.hole, cursor: screen.cursor, form },
    message: undefined,
  });
}

/** The line that the form says so far: the strokes of its fields, one after the other. */
export function formLine(form: FieldsForm): string {
  return Object.values(form.said)
    .filter((strokes) => strokes !== '')
    .join(' ');
}

/** Fields that the row in hand asks, as far as it is said. */
export function formFields(state: State, hole: Document): readonly Field[] {
  const { screen, project } = state;
  if (screen.name !== 'fields') return [];
  const context = entryContext(state, hole, screen.cursor);
  const parsed = parseLine(formLine(screen.form), context);
  const cells = parsed.kind === 'row' ? parsed.row.cells : { ...(context.above?.cells ?? {}) };
  return project.schema.fields.filter(
    (field) =>
      !(field.kind === 'number' && field.column) &&
      (field.onlyWhen === undefined || fieldApplies(project.schema, cells, field)),
  );
}

/** A key in the form. Enter takes what is picked or typed and goes on; on the last field it logs the row. */
export function formKey(state: State, event: KeyEvent, world: World): Step {
  const { screen } = state;
  const hole = holeInHand(state);
  if (screen.name !== 'fields' || hole === undefined) return still(state);
  const { form } = screen;
  const fields = formFields(state, hole);
  const field = fields[Math.min(form.field, fields.length - 1)];
  if (field === undefined) return still(state);
  switch (chordOf(event)) {
    case 'escape':
      return still({
        ...state,
        screen: { name: 'log', hole: screen.hole, cursor: screen.cursor },
        draft: draftOf(formLine(form)),
      });
    case 'up':
      return still(withForm(state, { ...form, pick: Math.max(0, form.pick - 1) }));
    case 'down':
      return still(withForm(state, { ...form, pick: Math.min(lastPick(state, form, field), form.pick + 1) }));
    case 'tab':
      return still(withForm(state, toField(form, Math.min(fields.length - 1, form.field + 1))));
    case 'shift-tab':
      return still(withForm(state, toField(form, Math.max(0, form.field - 1))));
    case 'f4':
      return logForm(state, world);
    case 'enter':
      return take(state, form, field, fields.length, world);
    default: {
      const typed = edited(form.typed, event);
      return still(typed === undefined ? state : withForm(state, { ...form, typed, pick: 0 }));
    }
  }
}

/** The last thing that can be picked. Where nothing is typed, 0 picks nothing and the options follow from 1. */
function lastPick(state: State, form: FieldsForm, field: Field): number {
  const options = matchingOptions(optionsOf(schemaInHand(state), field), form.typed.text).length;
  return form.typed.text.trim() === '' ? options : Math.max(0, options - 1);
}

function take(state: State, form: FieldsForm, field: Field, count: number, world: World): Step {
  const schema = schemaInHand(state);
  const typed = form.typed.text;
  const strokes = typedStrokes(schema, field, typed);
  if (strokes !== undefined) return still(withForm(state, said(form, field, strokes, count)));
  if (typed.trim() === '' && form.pick === 0) {
    return form.field >= count - 1
      ? logForm(state, world)
      : still(withForm(state, toField(form, form.field + 1)));
  }
  const options = matchingOptions(optionsOf(schema, field), typed);
  const picked = options[typed.trim() === '' ? form.pick - 1 : Math.min(form.pick, options.length - 1)];
  if (picked === undefined)
    return still(saying(state, `Nothing in ${field.label} begins with ${typed}.`, 'warn'));
  if (picked.wantsAmount)
    return still(
      saying(
        withForm(state, { ...form, typed: draftOf(picked.strokes), pick: 0 }),
        `${picked.label}: now its amount.`,
      ),
    );
  if (picked.qualifies !== true) return still(withForm(state, said(form, field, picked.strokes, count)));
  const before = form.said[field.name] ?? '';
  if (before === '')
    return still(saying(state, `${picked.label} says more of ${field.label}: pick that first.`, 'warn'));
  const next = { ...form, said: { ...form.said, [field.name]: `${before} ${picked.strokes}` } };
  return still(withForm(state, toField(next, form.field)));
}

/** A field said; one that takes several codes stays in hand for the next, and a second rock with its share comes after the first. */
function said(form: FieldsForm, field: Field, strokes: string, count: number): FieldsForm {
  const several = ['levels', 'percents', 'codes', 'events'].includes(field.kind);
  const isSecond = field.kind === 'code' && field.second && SHARE.test(strokes);
  const before = several || isSecond ? (form.said[field.name] ?? '') : '';
  const next = {
    ...form,
    said: { ...form.said, [field.name]: before === '' ? strokes : `${before} ${strokes}` },
  };
  return several ? toField(next, form.field) : toField(next, Math.min(count - 1, form.field + 1));
}

/** A pair with the share of a second rock. */
const SHARE = /^[a-z]{2}[\d.]+$/;

function toField(form: FieldsForm, field: number): FieldsForm {
  return { ...form, field, typed: EMPTY_DRAFT, pick: 0 };
}

function withForm(state: State, form: FieldsForm): State {
  return state.screen.name === 'fields'
    ? { ...state, screen: { ...state.screen, form }, message: undefined }
    : state;
}

/** Logs what the form says through the entry line, and shows the line that would have done the same. */
function logForm(state: State, world: World): Step {
  const { screen } = state;
  if (screen.name !== 'fields') return still(state);
  const text = formLine(screen.form);
  if (text === '')
    return still(saying(state, 'Empty so far. On the line a single . repeats the row above.', 'warn'));
  const asLine: State = {
    ...state,
    screen: { name: 'log', hole: screen.hole, cursor: screen.cursor },
    draft: draftOf(text),
    formed: text,
  };
  return enterLine(asLine, world);
}
