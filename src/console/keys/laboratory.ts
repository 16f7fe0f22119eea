import { openOver } from '../lists/lists.ts';
import { askDispatch, askHandOn, whyNothingToHandOn, whyNothingToSend } from '../samples/dispatch.ts';
import { askResplit, askResplitWith } from '../samples/resplit.ts';
import { type Binding, HOLE_SCREENS } from './binding.ts';

/** Keys and words about what goes to the laboratory and what comes back. */
export const LABORATORY_KEYS: readonly Binding[] = [
  {
    name: 'make up',
    on: ['dispatch'],
    keys: ['enter'],
    hint: 'make a dispatch',
    help: 'Make a dispatch up of what waits, or of the bags scanned or typed',
    hindered: whyNothingToSend,
    act: askDispatch,
  },
  {
    name: 'hand over',
    on: HOLE_SCREENS,
    keys: ['ctrl-g'],
    word: 'hand-on',
    help: 'Hand over the sacks of a dispatch: who takes them, how many were counted',
    hindered: whyNothingToHandOn,
    act: askHandOn,
  },
  {
    name: 'dispatch',
    on: HOLE_SCREENS,
    keys: [],
    word: 'dispatch',
    help: 'Dispatch: bags that wait, sacks, who has them',
    act: openOver('dispatch'),
  },
  {
    name: 'results',
    on: HOLE_SCREENS,
    keys: [],
    word: 'results',
    help: 'Returned results: certificates, standards, blanks, pairs',
    act: openOver('results'),
  },
  {
    name: 'resplit',
    on: HOLE_SCREENS,
    keys: [],
    word: 'resplit',
    help: 'Single metres that returned composites ask for; with the first and last number labelled for them after the word',
    act: (state) => askResplit(state),
    told: askResplitWith,
  },
  {
    name: 'dispatches of all holes',
    on: ['holes'],
    keys: ['d'],
    hint: 'dispatch',
    help: 'Bags that wait to be sent, sacks, who has them',
    act: openOver('dispatch'),
  },
  {
    name: 'results of all holes',
    on: ['holes'],
    keys: ['v'],
    hint: 'results',
    help: 'What the laboratory returned',
    act: openOver('results'),
  },
];
