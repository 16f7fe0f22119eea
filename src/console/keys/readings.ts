import {
  enterReading,
  leaveReadings,
  moveReading,
  nextColumn,
  openReadings,
  readingsHindered,
} from '../log/readings.ts';
import { type Binding, HOLE_SCREENS } from './binding.ts';

/** Keys of the columns of instrument readings, and the way to them. */
export const READING_KEYS: readonly Binding[] = [
  {
    name: 'readings',
    on: HOLE_SCREENS,
    keys: [],
    word: 'readings',
    help: 'Instrument readings, typed down the logged metres; ;readings arsenic opens that column',
    hindered: readingsHindered,
    act: (state) => openReadings(state),
    told: (state, text) => openReadings(state, text),
  },
  {
    name: 'take the reading',
    on: ['readings'],
    keys: ['enter'],
    hint: 'take',
    help: 'Take the reading and go to the next metre; with nothing typed skip it',
    act: enterReading,
  },
  {
    name: 'metre above',
    on: ['readings'],
    keys: ['up'],
    hint: 'back',
    help: 'The metre above',
    act: (state) => moveReading(state, -1),
  },
  {
    name: 'metre below',
    on: ['readings'],
    keys: ['down'],
    help: 'The metre below',
    act: (state) => moveReading(state, 1),
  },
  {
    name: 'metres up',
    on: ['readings'],
    keys: ['page-up'],
    help: 'Ten metres up',
    act: (state) => moveReading(state, -10),
  },
  {
    name: 'metres down',
    on: ['readings'],
    keys: ['page-down'],
    help: 'Ten metres down',
    act: (state) => moveReading(state, 10),
  },
  {
    name: 'next column',
    on: ['readings'],
    keys: ['tab'],
    hint: 'next column',
    help: 'The next column of readings',
    act: nextColumn,
  },
  {
    name: 'leave readings',
    on: ['readings'],
    keys: ['escape'],
    hint: 'log',
    help: 'Empty what is typed, else back to the log',
    act: leaveReadings,
  },
];
