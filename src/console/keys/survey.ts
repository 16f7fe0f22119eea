import { askRejection, moveShot, rejectionHindered, viewSurvey } from '../survey/survey.ts';
import { askRun } from '../survey/survey-run.ts';
import { askShot } from '../survey/survey-shot.ts';
import type { Binding } from './binding.ts';

/** Keys of the survey. */
export const SURVEY_KEYS: readonly Binding[] = [
  {
    name: 'shot',
    on: ['survey'],
    keys: ['n'],
    hint: 'shot',
    help: 'Record a shot: depth, dip, azimuth as the driller reads them',
    act: (state) => askShot(state),
  },
  {
    name: 'azimuth not used',
    on: ['survey'],
    keys: ['a'],
    hint: 'reject azimuth',
    help: 'Reject only the azimuth of the shot (keep its dip), or use it again',
    hindered: rejectionHindered('azimuth'),
    act: askRejection('azimuth'),
  },
  {
    name: 'shot not used',
    on: ['survey'],
    keys: ['x'],
    hint: 'reject shot',
    help: 'Reject the whole shot, or use it again',
    hindered: rejectionHindered('shot'),
    act: askRejection('shot'),
  },
  {
    name: 'shots',
    on: ['survey'],
    keys: ['t'],
    help: 'The shots with their checks',
    act: viewSurvey('shots'),
  },
  {
    name: 'plan',
    on: ['survey'],
    keys: ['p'],
    hint: 'plan',
    help: 'The hole from above, and back to the shots',
    act: viewSurvey('plan'),
  },
  {
    name: 'section',
    on: ['survey'],
    keys: ['s'],
    hint: 'section',
    help: 'The hole from the side, and back to the shots',
    act: viewSurvey('section'),
  },
  {
    name: 'expected',
    on: ['survey'],
    keys: ['e'],
    hint: 'expected',
    help: 'Contacts and zones of the plan: where they should come, and how far off they were logged; and back',
    act: viewSurvey('expected'),
  },
  {
    name: 'survey run',
    on: ['survey'],
    keys: ['r'],
    word: 'run',
    hint: 'run',
    help: 'Begin a survey run: its tool and its north, once',
    act: (state) => askRun(state),
  },
  {
    name: 'shot above',
    on: ['survey'],
    keys: ['up'],
    help: 'The shot above',
    act: (state) => moveShot(state, -1),
  },
  {
    name: 'shot below',
    on: ['survey'],
    keys: ['down'],
    help: 'The shot below',
    act: (state) => moveShot(state, 1),
  },
  {
    name: 'shots up',
    on: ['survey'],
    keys: ['page-up'],
    help: 'Ten shots up',
    act: (state) => moveShot(state, -10),
  },
  {
    name: 'shots down',
    on: ['survey'],
    keys: ['page-down'],
    help: 'Ten shots down',
    act: (state) => moveShot(state, 10),
  },
];
