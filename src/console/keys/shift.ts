import { openOver } from '../lists/lists.ts';
import { activityTyped, amendInHand, askActivity, askHour, stepShift } from '../lists/shift.ts';
import type { Binding } from './binding.ts';

/** Keys of the shift record, and the two that reach it from every screen. */
export const SHIFT_KEYS: readonly Binding[] = [
  {
    name: 'amend the entry',
    on: ['shift'],
    keys: ['enter'],
    hint: 'amend',
    help: 'Amend the activity in hand as a line: time, activity, hole, who authorised it, remark',
    act: amendInHand,
  },
  {
    name: 'begin the shift',
    on: ['shift'],
    keys: ['ctrl-b'],
    hint: 'begin',
    help: 'Begin the shift, or amend when it began; the hour of its settings is offered',
    act: (state) => askHour(state, 'begin'),
  },
  {
    name: 'end the shift',
    on: ['shift'],
    keys: ['ctrl-x'],
    hint: 'end',
    help: 'End the shift; the hour of its settings is offered, once it has come',
    act: (state) => askHour(state, 'end'),
  },
  {
    name: 'shift before',
    on: ['shift'],
    keys: ['left'],
    hint: 'shift before',
    help: 'The shift before',
    act: (state) => stepShift(state, -1),
  },
  {
    name: 'shift after',
    on: ['shift'],
    keys: ['right'],
    help: 'The shift after',
    act: (state) => stepShift(state, 1),
  },
  {
    name: 'shift',
    on: 'any',
    keys: ['f8'],
    word: 'shift-record',
    hint: 'shift',
    help: 'The shift record: what the rig does, since when; what is typed on it is recorded',
    act: openOver('shift'),
  },
  {
    name: 'activity',
    on: 'any',
    keys: ['ctrl-a'],
    word: 'activity',
    help: 'What the rig does from now on, picked by its key; ;activity breakdown 14:20 hydraulic hose late',
    act: askActivity,
    told: activityTyped,
  },
];
