import { EMPTY_DRAFT } from '../draft.ts';
import { openList } from '../lists/lists.ts';
import { completeLine } from '../log/complete.ts';
import { enterLine, moveRow, toHead } from '../log/entry.ts';
import { openForm } from '../log/fields.ts';
import { askNewCode } from '../log/new-code.ts';
import { askRod } from '../samples/rod.ts';
import type { State } from '../state.ts';
import { type Step, still } from '../step.ts';
import { askShot } from '../survey/survey-shot.ts';
import type { Binding } from './binding.ts';

function leaveLine(state: State): Step {
  if (state.screen.name !== 'log') return still(state);
  if (state.screen.cursor !== 'head') return still(toHead(state));
  // Keys held behind a refused line wait for the next one; repeats of a row that was asked about go with it.
  const held = state.asked === '.' ? [] : state.held;
  return still({ ...state, draft: EMPTY_DRAFT, held, asked: undefined, message: undefined });
}

/** Keys of the log. */
export const LOG_KEYS: readonly Binding[] = [
  {
    name: 'log the row',
    on: ['log'],
    keys: ['enter'],
    hint: 'log',
    help: 'Log what is typed; on an empty line nothing happens',
    act: enterLine,
  },
  {
    name: 'rod done',
    on: ['log'],
    keys: ['f2'],
    word: 'rod',
    hint: 'rod done',
    help: 'Rod done: stamp time and depth, check the bags',
    act: (state, world) => askRod(state, world),
  },
  {
    name: 'row above',
    on: ['log'],
    keys: ['up'],
    hint: 'earlier row',
    help: 'Open the row above, as its own line',
    act: (state) => moveRow(state, -1),
  },
  {
    name: 'row below',
    on: ['log'],
    keys: ['down'],
    help: 'The row below; below the last one the line that waited',
    act: (state) => moveRow(state, 1),
  },
  {
    name: 'rows up',
    on: ['log'],
    keys: ['page-up'],
    help: 'Ten rows up',
    act: (state) => moveRow(state, -10),
  },
  {
    name: 'rows down',
    on: ['log'],
    keys: ['page-down'],
    help: 'Ten rows down',
    act: (state) => moveRow(state, 10),
  },
  {
    name: 'complete',
    on: ['log'],
    keys: ['tab'],
    hint: 'complete',
    help: 'Complete what is typed; on an empty line log by fields',
    act: completeLine,
  },
  {
    name: 'leave the line',
    on: ['log'],
    keys: ['escape'],
    help: 'Empty the line; from an earlier row back to the logged head',
    act: leaveLine,
  },
  {
    name: 'by fields',
    on: ['log'],
    keys: ['f4'],
    word: 'fields',
    hint: 'by fields',
    help: 'Log by fields, with pick lists',
    act: openForm,
  },
  {
    name: 'shot from the log',
    on: ['log'],
    keys: [],
    word: 'shot',
    help: 'Record a shot; ;shot 60 -59.5 271.2 does it at once',
    act: (state) => askShot(state),
  },
  {
    name: 'whole row',
    on: ['log'],
    keys: ['f11'],
    word: 'row',
    help: 'The whole row, every field',
    act: openList('row'),
  },
  {
    name: 'new code',
    on: ['log', 'codes'],
    keys: ['ctrl-k'],
    word: 'code',
    help: 'Add a code that the list lacks; what is typed on the line stays',
    act: askNewCode,
  },
];
