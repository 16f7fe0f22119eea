import { askAccept, goToFinding, turnCheck, whyNoFinding } from '../lists/check.ts';
import { stepThrough } from '../lists/history.ts';
import { leaveList, moveList } from '../lists/lists.ts';
import { askMissing, whyNothingToSettle } from '../lists/missing.ts';
import { settleInHand, whyNoQuestion, whyNotSplit } from '../lists/questions.ts';
import { askChange } from '../log/change-code.ts';
import { tickInHand } from '../samples/bags-list.ts';
import { type Binding, LISTS } from './binding.ts';

/** Keys of the screens that are lists. */
export const LIST_KEYS: readonly Binding[] = [
  { name: 'up', on: LISTS, keys: ['up'], help: 'A line up', act: (state) => moveList(state, -1) },
  { name: 'down', on: LISTS, keys: ['down'], help: 'A line down', act: (state) => moveList(state, 1) },
  { name: 'page up', on: LISTS, keys: ['page-up'], help: 'A page up', act: (state) => moveList(state, -10) },
  {
    name: 'page down',
    on: LISTS,
    keys: ['page-down'],
    help: 'A page down',
    act: (state) => moveList(state, 10),
  },
  {
    name: 'an edit earlier',
    on: ['history'],
    keys: ['left'],
    hint: 'an edit earlier',
    help: 'The hole one edit earlier',
    act: (state) => stepThrough(state, -1),
  },
  {
    name: 'an edit later',
    on: ['history'],
    keys: ['right'],
    help: 'The hole one edit later',
    act: (state) => stepThrough(state, 1),
  },
  {
    name: 'settle',
    on: ['found'],
    keys: ['enter'],
    hint: 'decide on a file that is gone',
    help: 'Decide on a file that is gone: restore it from the journal, or let it go with the reason',
    hindered: whyNothingToSettle,
    act: askMissing,
  },
  {
    name: 'go to it',
    on: ['check'],
    keys: ['enter'],
    hint: 'go there',
    help: 'Go to the row, the shots, the bags or the shift that it is of; Ctrl-O leads back',
    hindered: whyNoFinding,
    act: goToFinding,
  },
  {
    name: 'accept',
    on: ['check'],
    keys: ['right'],
    hint: 'accept, or not',
    help: 'Accept the finding as it is, with the reason; of one that is accepted take that back',
    hindered: (state) => whyNoFinding(state) ?? state.readOnly,
    act: askAccept,
  },
  {
    name: 'order',
    on: ['check'],
    keys: ['tab'],
    hint: 'by hole',
    help: 'From the worst first to hole by hole, and back',
    act: turnCheck,
  },
  {
    name: 'keep ours',
    on: ['questions'],
    keys: ['left'],
    hint: 'ours, first',
    help: 'Settle the question in hand: keep ours, which is there now; of two rows or rods keep the first',
    hindered: whyNoQuestion,
    act: (state, world) => settleInHand(state, 'first', world),
  },
  {
    name: 'take theirs',
    on: ['questions'],
    keys: ['right'],
    hint: 'theirs, second',
    help: 'Settle the question in hand: take theirs; of two rows or rods keep the second',
    hindered: whyNoQuestion,
    act: (state, world) => settleInHand(state, 'second', world),
  },
  {
    name: 'keep both',
    on: ['questions'],
    keys: ['ctrl-b'],
    hint: 'both, split',
    help: 'Settle two rows over the same metres: both are kept, the metre split between them',
    hindered: whyNotSplit,
    act: (state, world) => settleInHand(state, 'both', world),
  },
  {
    name: 'back',
    on: [...LISTS, 'survey'],
    keys: ['escape'],
    hint: 'back',
    help: 'Back to the log; where something is searched for, ends that first',
    act: leaveList,
  },
  {
    name: 'tick off',
    on: ['bags'],
    keys: ['enter'],
    hint: 'tick off',
    help: 'Tick off this bag, or take the tick away',
    act: tickInHand,
  },
  {
    name: 'change the code',
    on: ['codes'],
    keys: ['enter'],
    hint: 'change',
    help: 'Change this code or field: words, pair, key, place, retired; checked as you type',
    act: askChange,
  },
];
