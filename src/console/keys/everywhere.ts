import { openAgainInHand, openCheck, signOffInHand } from '../lists/check.ts';
import { askElsewhere, askedFolder, goElsewhere } from '../lists/elsewhere.ts';
import { openHelp, openOver } from '../lists/lists.ts';
import { saying, still } from '../step.ts';
import { type Binding, HOLE_SCREENS } from './binding.ts';

/** Keys of every screen. */
export const EVERYWHERE_KEYS: readonly Binding[] = [
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
    name: 'found',
    on: 'any',
    keys: ['ctrl-f'],
    word: 'found',
    help: 'What was found on opening the project: what is wrong, what to do, what was kept',
    act: openOver('found'),
  },
  {
    name: 'check',
    on: 'any',
    keys: ['ctrl-o'],
    word: 'check',
    help: 'What check finds of this hole, or from the list of holes of the project: go there, accept it with the reason',
    act: openCheck,
  },
  {
    name: 'sign off',
    on: HOLE_SCREENS,
    keys: [],
    word: 'sign-off',
    help: 'Camp signs the hole off: it is checked and takes no change any more; a remark may follow the word',
    act: (state, world) => signOffInHand(state, '', world),
    told: signOffInHand,
  },
  {
    name: 'open again',
    on: HOLE_SCREENS,
    keys: [],
    word: 'open-again',
    help: 'Open a hole that was signed off: ;open-again bags 40 to 46 are wrong',
    act: (state, world) => openAgainInHand(state, '', world),
    told: openAgainInHand,
  },
  {
    name: 'questions',
    on: HOLE_SCREENS,
    keys: [],
    word: 'questions',
    help: 'Cells that two copies changed differently, in every hole and shift: ours or theirs',
    act: openOver('questions'),
  },
  {
    name: 'questions of all holes',
    on: ['holes'],
    keys: ['w'],
    help: 'Cells that two copies changed differently, in every hole and shift: ours or theirs',
    act: openOver('questions'),
  },
  {
    name: 'repaint',
    on: 'any',
    keys: ['ctrl-l'],
    help: 'Redraw the screen',
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
  {
    name: 'go elsewhere',
    on: 'any',
    keys: ['ctrl-e'],
    word: 'elsewhere',
    help: 'Write everything to another folder and go on there, where this disk takes no more',
    act: askElsewhere,
    told: (state, text) => goElsewhere(askedFolder(state, text)),
  },
];
