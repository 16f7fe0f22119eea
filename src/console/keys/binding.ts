import { HOLE_LISTS, LISTS_OVER, type Screen, type State } from '../state.ts';
import type { Step, World } from '../step.ts';

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
  /** The same, with what was typed behind the word. */
  readonly told?: (state: State, text: string, world: World) => Step;
}

/** Screens of a hole that are lists, and what is about no hole and is a list too. */
export const LISTS = [...HOLE_LISTS, ...LISTS_OVER, 'help'] as const;

/** Screens that are about one hole. */
export const HOLE_SCREENS = ['log', 'fields', 'survey', 'line-up', 'readings', ...LISTS] as const;
