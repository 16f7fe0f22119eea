import { lineUpHindered, openLineUp } from '../line-up/line-up.ts';
import { openEarlier, undoOrRedo } from '../lists/history.ts';
import { openHoles, openList } from '../lists/lists.ts';
import { askEnding } from '../log/ending.ts';
import { openSurvey } from '../survey/survey.ts';
import { type Binding, HOLE_SCREENS } from './binding.ts';

/** Keys of every screen of a hole: the other screens, and what can be done from any of them. */
export const HOLE_SCREEN_KEYS: readonly Binding[] = [
  {
    name: 'bags',
    on: HOLE_SCREENS,
    keys: ['f3'],
    word: 'bags',
    hint: 'bags',
    help: 'Bags: what comes, ready to tick off',
    act: openList('bags'),
  },
  {
    name: 'advice',
    on: HOLE_SCREENS,
    keys: ['f5'],
    word: 'advice',
    hint: 'advice',
    help: 'Advice on ending the hole, rule by rule',
    act: openList('advice'),
  },
  {
    name: 'survey',
    on: HOLE_SCREENS,
    keys: ['f6'],
    word: 'survey',
    hint: 'survey',
    help: 'Shots, and where the hole goes',
    act: openSurvey,
  },
  {
    name: 'line-up',
    on: HOLE_SCREENS,
    keys: ['ctrl-y'],
    word: 'line-up',
    help: 'Line the rig up: cautions, checks, direction as set against the plan',
    hindered: lineUpHindered,
    act: openLineUp,
  },
  {
    name: 'codes',
    on: HOLE_SCREENS,
    keys: ['f7'],
    word: 'codes',
    hint: 'codes',
    help: 'Codes and what types them',
    act: openList('codes'),
  },
  {
    name: 'history',
    on: HOLE_SCREENS,
    keys: ['f9'],
    word: 'history',
    hint: 'history',
    help: 'What was done on this hole: who, when, before and after',
    act: openList('history'),
    told: openEarlier,
  },
  {
    name: 'end of hole',
    on: HOLE_SCREENS,
    keys: ['f12'],
    word: 'end',
    hint: 'end of hole',
    help: 'End the hole: final depth, what is open, collar, decision',
    act: askEnding,
  },
  {
    name: 'holes',
    on: HOLE_SCREENS,
    keys: ['f10'],
    word: 'holes',
    hint: 'holes',
    help: 'The list of holes',
    act: openHoles,
  },
  {
    name: 'undo',
    on: HOLE_SCREENS,
    keys: ['ctrl-u'],
    word: 'u',
    help: "Undo this sitting's latest edit, of whatever document (on an empty line)",
    act: (state) => undoOrRedo(state, 'undo'),
  },
  {
    name: 'redo',
    on: HOLE_SCREENS,
    keys: ['ctrl-r'],
    word: 'r',
    help: 'Redo what was undone',
    act: (state) => undoOrRedo(state, 'redo'),
  },
];
