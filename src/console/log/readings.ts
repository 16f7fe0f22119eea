import { recordReading } from '../../acts/readings/typed-reading.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document, Id } from '../../record/document.ts';
import type { NumberField } from '../../schema/logging-schema.ts';
import { columnFields, hasReading, nextReading, readingRows } from '../../standing/reading-rows.ts';
import type { Row } from '../../value/row.ts';
import { EMPTY_DRAFT, edited } from '../draft.ts';
import { undoOrRedo } from '../lists/history.ts';
import { leaveList } from '../lists/lists.ts';
import { holeInHand, rowLeft, type Screen, type State, schemaInHand } from '../state.ts';
import { type Step, saying, sayingFinding, still, submitting, type World } from '../step.ts';
import type { KeyEvent } from '../terminal/input/keys.ts';

/** A column of readings as it is typed down the metres: its rows, and the one in hand. */
export interface ReadingsInHand {
  readonly screen: Extract<Screen, { readonly name: 'readings' }>;
  readonly hole: Document;
  readonly field: NumberField;
  readonly rows: readonly (readonly [Id, Row])[];
  /** Where the row in hand stands among them. */
  readonly at: number;
}

/** What is in hand on the screen of readings; undefined on every other, and where no row can be read any more. */
export function readingsInHand(state: State): ReadingsInHand | undefined {
  const { screen } = state;
  const hole = holeInHand(state);
  if (screen.name !== 'readings' || hole === undefined) return undefined;
  const schema = schemaInHand(state);
  const field = columnFields(schema).find(({ name }) => name === screen.field);
  if (field === undefined) return undefined;
  const rows = readingRows(schema, hole, field);
  const id = rows.some(([each]) => each === screen.cursor) ? screen.cursor : nextReading(rows, field);
  const at = rows.findIndex(([each]) => each === id);
  return at === -1 ? undefined : { screen, hole, field, rows, at };
}

/** Why readings can't be typed now; undefined where they can. */
export function readingsHindered(state: State): string | undefined {
  const hole = holeInHand(state);
  const schema = schemaInHand(state);
  const [first] = columnFields(schema);
  if (first === undefined) return 'the log sheet has no column of readings (a number with "column": true)';
  if (hole === undefined) return 'open a hole first';
  return columnFields(schema).every((field) => readingRows(schema, hole, field).length === 0)
    ? 'no metre is logged yet, and a reading goes with what was seen'
    : undefined;
}

/** Opens the readings of the hole in hand, at the first metre without one; a field is named by its name or the start of its label. */
export function openReadings(state: State, named = ''): Step {
  const hole = holeInHand(state);
  const hindrance = readingsHindered(state);
  if (hole === undefined || hindrance !== undefined)
    return still(saying(state, `readings: ${hindrance}.`, 'warn'));
  const fields = columnFields(schemaInHand(state));
  const wanted = named.trim().toLowerCase();
  const field = fields.find(({ name, label }) => name === wanted || label.toLowerCase().startsWith(wanted));
  if (field === undefined)
    return still(
      saying(state, `No column is called ${named}: ${fields.map(({ name }) => name).join(', ')}.`, 'warn'),
    );
  return still(onColumn(state, hole, field));
}

function onColumn(state: State, hole: Document, field: NumberField): State {
  const cursor = nextReading(readingRows(schemaInHand(state), hole, field), field);
  const from = rowLeft(state.screen);
  return {
    ...state,
    screen: { name: 'readings', hole: hole.id, field: field.name, cursor, typed: EMPTY_DRAFT, from },
    message: undefined,
  };
}

/** The next column of readings. What is typed and not entered is left behind with a word. */
export function nextColumn(state: State): Step {
  const hand = readingsInHand(state);
  const fields = columnFields(schemaInHand(state));
  const at = fields.findIndex(({ name }) => name === hand?.field.name);
  const next = fields[(at + 1) % fields.length];
  if (hand === undefined || next === undefined || next === hand.field)
    return still(saying(state, 'There is no other column of readings.'));
  if (hand.screen.typed.text.trim() !== '')
    return still(saying(state, 'Enter or empty what is typed first.', 'warn'));
  return still(onColumn(state, hand.hole, next));
}

/** Some metres further down, or up; what is typed and not entered stays, and says so. */
export function moveReading(state: State, by: number): Step {
  const hand = readingsInHand(state);
  if (hand === undefined) return still(state);
  if (hand.screen.typed.text.trim() !== '')
    return still(saying(state, 'Enter takes what is typed; Esc empties it.', 'warn'));
  return still({ ...state, ...movedTo(hand, hand.at + by), message: undefined });
}

function movedTo({ screen, rows }: ReadingsInHand, at: number): Pick<State, 'screen'> {
  const cursor = rows[Math.max(0, Math.min(rows.length - 1, at))]?.[0];
  return { screen: { ...screen, cursor, typed: EMPTY_DRAFT } };
}

/** A character of the reading. */
export function typeReading(state: State, event: KeyEvent): Step {
  const { screen } = state;
  if (screen.name !== 'readings') return still(state);
  const typed = edited(screen.typed, event);
  return still(typed === undefined ? state : { ...state, screen: { ...screen, typed }, message: undefined });
}

/** Escape: empties what is typed, else goes back to the log. */
export function leaveReadings(state: State): Step {
  const { screen } = state;
  if (screen.name !== 'readings' || screen.typed.text === '') return leaveList(state);
  return still({ ...state, screen: { ...screen, typed: EMPTY_DRAFT }, message: undefined });
}

/** Enter: the reading is taken and the next metre comes up; nothing typed skips it. What can't be taken stays, with the reason. */
export function enterReading(state: State, world: World): Step {
  const hand = readingsInHand(state);
  if (hand === undefined) return still(state);
  const text = hand.screen.typed.text.trim();
  if (text === '') return still({ ...state, ...afterRow(hand) });
  if (text.startsWith(';')) return command(state, hand, text);
  const row = hand.rows[hand.at] as readonly [Id, Row];
  const made = recordReading(schemaInHand(state), hand.hole, row[0], hand.field, text);
  if (!made.ok)
    return still({
      ...(made.findings[0] === undefined ? state : sayingFinding(state, made.findings[0])),
      holding: world.ahead,
    });
  const after: State = { ...state, ...afterRow(hand), held: [] };
  const replay = state.held.length === 0 ? [] : [{ do: 'replay' as const, events: state.held }];
  if (made.value.changes.length === 0)
    return [saying(after, `${formatInterval(row[1])} says that already.`), replay];
  const [next, effects] = submitting(after, hand.hole, made.value);
  // Where nothing may be changed, the reading stays as it is typed.
  return effects.length === 0 ? still({ ...next, screen: state.screen }) : [next, [...effects, ...replay]];
}

/** The next metre in hand; below the last one it stays, and says so. */
function afterRow(hand: ReadingsInHand): Pick<State, 'screen' | 'message'> {
  const isLast = hand.at === hand.rows.length - 1;
  const message = {
    text: 'That was the last logged metre. Esc goes back to the log.',
    tone: 'plain',
  } as const;
  return { ...movedTo(hand, hand.at + 1), message: isLast ? message : undefined };
}

/** `;u` and `;r`: the metre above comes up again where it is its reading that is taken back. */
function command(state: State, hand: ReadingsInHand, text: string): Step {
  const which = { ';u': 'undo', ';r': 'redo' }[text] as 'undo' | 'redo' | undefined;
  if (which === undefined)
    return still(
      saying(state, `Here ;u undoes and ;r does it again. ${text}: Esc twice, then type it there.`, 'warn'),
    );
  const above = hand.rows[hand.at - 1]?.[1];
  const back = which === 'undo' && above !== undefined && hasReading(above, hand.field);
  return undoOrRedo({ ...state, ...movedTo(hand, back ? hand.at - 1 : hand.at) }, which);
}
