import { headerOf } from '../../hole/hole.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import { lineUpHindered, openLineUp } from '../line-up/line-up.ts';
import { moveHole, openHole, pickedHole } from '../lists/holes.ts';
import { leave } from '../lists/leaving.ts';
import { askNumbers } from '../samples/number-bags.ts';
import type { State } from '../state.ts';
import { type Step, still } from '../step.ts';
import type { Binding } from './binding.ts';

const needsHole = (state: State): string | undefined =>
  pickedHole(state) === undefined ? 'there is no hole under the cursor' : undefined;

const needsState =
  (wanted: readonly string[], words: string) =>
  (state: State): string | undefined => {
    const hole = pickedHole(state);
    if (hole === undefined) return 'there is no hole under the cursor';
    return wanted.includes(headerOf(hole).state) ? undefined : words;
  };

const promptFor =
  (kind: 'suspended' | 'abandoned' | 'redrill' | 'reopen') =>
  (state: State): Step => {
    const hole = pickedHole(state);
    if (hole === undefined) return still(state);
    const asked = { hole: hole.id, draft: EMPTY_DRAFT };
    const prompt =
      kind === 'redrill' || kind === 'reopen'
        ? { kind, ...asked }
        : ({ kind: 'state', to: kind, ...asked } as const);
    return still({ ...state, prompt, message: undefined });
  };

/** Keys of the list of holes. */
export const HOLES_KEYS: readonly Binding[] = [
  {
    name: 'open the hole',
    on: ['holes'],
    keys: ['enter'],
    hint: 'open',
    help: 'Open the log; a planned hole starts drilling',
    hindered: needsHole,
    act: openHole,
  },
  {
    name: 'hole above',
    on: ['holes'],
    keys: ['up'],
    help: 'The hole above',
    act: (state) => moveHole(state, -1),
  },
  {
    name: 'hole below',
    on: ['holes'],
    keys: ['down'],
    help: 'The hole below',
    act: (state) => moveHole(state, 1),
  },
  {
    name: 'new hole',
    on: ['holes'],
    keys: ['n'],
    hint: 'new hole',
    help: 'Make a hole that is not in the program',
    act: (state) => still({ ...state, prompt: { kind: 'new hole', draft: EMPTY_DRAFT }, message: undefined }),
  },
  {
    name: 'leave',
    on: ['holes'],
    keys: ['q'],
    hint: 'leave',
    help: 'Leave; with rows not saved it says which, and waits',
    act: leave,
  },
  {
    name: 'line up the hole',
    on: ['holes'],
    keys: ['l'],
    hint: 'line up',
    help: 'Line the rig up on the hole before it is begun',
    hindered: lineUpHindered,
    act: openLineUp,
  },
  {
    name: 'number bags',
    on: ['holes'],
    keys: ['b'],
    hint: 'number bags',
    help: 'Number the bags of a hole the evening before; then its bag run, to tick off',
    hindered: needsState(['planned', 'drilling', 'suspended'], 'it is over: no bag comes'),
    act: askNumbers,
  },
  {
    name: 'suspend',
    on: ['holes'],
    keys: ['s'],
    hint: 'suspend',
    help: 'Suspend the hole, with the reason',
    hindered: needsState(['drilling'], 'only a hole that is drilling is suspended'),
    act: promptFor('suspended'),
  },
  {
    name: 'abandon',
    on: ['holes'],
    keys: ['a'],
    help: 'Abandon the hole, with the reason',
    hindered: needsState(['planned', 'drilling', 'suspended'], 'it is over already'),
    act: promptFor('abandoned'),
  },
  {
    name: 'redrill',
    on: ['holes'],
    keys: ['r'],
    help: 'Redrill an abandoned hole beside it',
    hindered: needsState(['abandoned'], 'only an abandoned hole is redrilled'),
    act: promptFor('redrill'),
  },
  {
    name: 'reopen',
    on: ['holes'],
    keys: ['o'],
    help: 'Reopen a closed hole, with the reason',
    hindered: needsState(['complete'], 'it is not closed'),
    act: promptFor('reopen'),
  },
];
