import { headerOf } from '../hole/hole.ts';
import { completeLine } from './actions/complete.ts';
import { askEnding } from './actions/ending.ts';
import { enterLine, moveRow, toHead } from './actions/entry.ts';
import { openForm } from './actions/fields.ts';
import { undoOrRedo } from './actions/history.ts';
import { moveHole, openHole, pickedHole } from './actions/holes.ts';
import { goBack, goOn, lineUpHindered, openLineUp, scrollStep } from './actions/line-up.ts';
import { moveList, openHelp, openHoles, openList } from './actions/lists.ts';
import { askRod } from './actions/rod.ts';
import { askActivity } from './actions/shift.ts';
import { askRejection, moveShot, openSurvey, rejectionHindered, viewSurvey } from './actions/survey.ts';
import { askRun } from './actions/survey-run.ts';
import { askShot } from './actions/survey-shot.ts';
import { EMPTY_DRAFT } from './draft.ts';
import type { Screen, State } from './state.ts';
import { type Step, saying, still, type World } from './step.ts';

/** A screen by its name. */
export type ScreenName = Screen['name'];

/** One thing that a key does: the dispatcher, the hint bar, the help and the README's list are all read off these. */
export interface Binding {
  readonly name: string;
  /** Screens it works on; `any` for all. */
  readonly on: readonly ScreenName[] | 'any';
  /** Key presses by chord (`f2`, `ctrl-c`, `up`) or a single character typed. */
  readonly keys: readonly string[];
  /** The word behind `;` that does the same from the entry line, for keyboards without the key. */
  readonly word?: string;
  /** For the hint bar, a word or two; none keeps it out of the bar. */
  readonly hint?: string;
  readonly help: string;
  /** Why it can't be done now; undefined where it can. It stays listed either way. */
  readonly hindered?: (state: State) => string | undefined;
  readonly act: (state: State, world: World) => Step;
}

const LISTS = ['bags', 'advice', 'history', 'codes', 'shift', 'row', 'help'] as const;
const HOLE_SCREENS = ['log', 'fields', 'survey', 'line-up', ...LISTS] as const;

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

/** Every key of the console, in the order of the help. A key that stands twice for one screen fails a test. */
export const KEYS: readonly Binding[] = [
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
    help: 'Make a hole that nobody planned',
    act: (state) => still({ ...state, prompt: { kind: 'new hole', draft: EMPTY_DRAFT }, message: undefined }),
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
    hint: 'abandon',
    help: 'Abandon the hole, with the reason',
    hindered: needsState(['planned', 'drilling', 'suspended'], 'it is over already'),
    act: promptFor('abandoned'),
  },
  {
    name: 'redrill',
    on: ['holes'],
    keys: ['r'],
    hint: 'redrill',
    help: 'Redrill an abandoned hole beside it',
    hindered: needsState(['abandoned'], 'only an abandoned hole is redrilled'),
    act: promptFor('redrill'),
  },
  {
    name: 'reopen',
    on: ['holes'],
    keys: ['o'],
    hint: 'reopen',
    help: 'Reopen a closed hole, with the reason',
    hindered: needsState(['complete'], 'it is not closed'),
    act: promptFor('reopen'),
  },
  {
    name: 'leave',
    on: ['holes'],
    keys: ['q'],
    hint: 'leave',
    help: 'Leave; everything shown as saved is safe',
    act: (state) => [state, [{ do: 'leave' }]],
  },
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
    name: 'back',
    on: [...LISTS, 'survey'],
    keys: ['escape'],
    hint: 'back',
    help: 'Back to the log',
    act: backToLog,
  },
  {
    name: 'shot',
    on: ['survey'],
    keys: ['n'],
    hint: 'shot',
    help: 'Record a shot: depth, dip, azimuth as the driller reads them',
    act: (state) => askShot(state),
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
    name: 'azimuth not used',
    on: ['survey'],
    keys: ['a'],
    hint: 'reject azimuth',
    help: 'Reject the azimuth of the shot alone (its dip stands), or use it again',
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
    name: 'survey run',
    on: ['survey'],
    keys: ['r'],
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
  {
    name: 'go on',
    on: ['line-up'],
    keys: ['enter'],
    hint: 'go on',
    help: 'Take what is typed and go on; at the end decide on the line-up',
    act: goOn,
  },
  {
    name: 'step back',
    on: ['line-up'],
    keys: ['escape', 'up'],
    hint: 'step back',
    help: 'Back a step, from the first one to the log; nothing is lost',
    act: goBack,
  },
  {
    name: 'words down',
    on: ['line-up'],
    keys: ['page-down'],
    hint: 'more words',
    help: 'Words of the step that are below',
    act: scrollStep(5),
  },
  {
    name: 'words up',
    on: ['line-up'],
    keys: ['page-up'],
    help: 'Words of the step that are above',
    act: scrollStep(-5),
  },
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
    name: 'shift',
    on: HOLE_SCREENS,
    keys: ['f8'],
    word: 'shift-record',
    hint: 'shift',
    help: 'The shift record: what the rig does, since when',
    act: openList('shift'),
  },
  {
    name: 'history',
    on: HOLE_SCREENS,
    keys: ['f9'],
    word: 'history',
    hint: 'history',
    help: 'What was done on this hole: who, when, before and after',
    act: openList('history'),
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
    name: 'activity',
    on: HOLE_SCREENS,
    keys: ['ctrl-a'],
    word: 'activity',
    help: 'What the rig does from now on: drilling, standby, move …',
    act: askActivity,
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
    help: "Undo this sitting's latest edit of the hole (on an empty line)",
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
  {
    name: 'help',
    on: 'any',
    keys: ['f1'],
    word: 'help',
    hint: 'help',
    help: 'Keys and commands',
    act: openHelp,
  },
  {
    name: 'repaint',
    on: 'any',
    keys: ['ctrl-l'],
    help: 'Paint the screen anew',
    act: (state) => [state, [{ do: 'repaint' }]],
  },
  {
    name: 'how to leave',
    on: 'any',
    keys: ['ctrl-c'],
    help: 'Says how to leave; it never leaves by itself',
    act: (state) =>
      still(
        saying(
          state,
          state.screen.name === 'holes'
            ? 'Everything shown as saved is safe; q leaves.'
            : 'Everything shown as saved is safe; ;q leaves.',
        ),
      ),
  },
];

function leaveLine(state: State): Step {
  if (state.screen.name !== 'log') return still(state);
  if (state.screen.cursor !== 'head') return still(toHead(state));
  return still({ ...state, draft: EMPTY_DRAFT, message: undefined });
}

function backToLog(state: State): Step {
  const { screen } = state;
  const hole = screen.name === 'holes' ? undefined : screen.hole;
  return still({
    ...state,
    screen: hole === undefined ? { name: 'holes', cursor: 0 } : { name: 'log', hole, cursor: 'head' },
    message: undefined,
  });
}

/** The binding of a key on a screen, or undefined. */
export function bindingFor(screen: ScreenName, key: string): Binding | undefined {
  return KEYS.find(
    (binding) => (binding.on === 'any' || binding.on.includes(screen)) && binding.keys.includes(key),
  );
}

/** The binding that a word behind `;` names, on the log. */
export function bindingForWord(word: string): Binding | undefined {
  return KEYS.find(
    (binding) => binding.word === word && (binding.on === 'any' || binding.on.includes('log')),
  );
}
