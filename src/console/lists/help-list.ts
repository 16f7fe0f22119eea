import { WHAT_IT_IS_NOT } from '../../finding/what-it-is-not.ts';
import { AT_FORM, COMMANDS, RANGE_FORM } from '../../shorthand/commands.ts';
import { type Binding, KEYS, type ScreenName } from '../keys.ts';
import { keyName } from '../screens/bottom.ts';
import { inOwn, type State, schemaInHand } from '../state.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import type { Listed, ListSection } from './listed.ts';
import { shiftForms } from './shift-prompts.ts';

/** What an entry line is made of, each with its meaning. */
const LINE_FORMS: readonly (readonly [form: string, does: string])[] = [
  ['ba py2', 'A rock by its pair, a mineral by its pair with its amount; what you leave out stays as above'],
  ['p3', 'A mineral of the row above by its one key; p0 takes it out, p, is a trace'],
  ["rock'BAS", 'Any field by its name and its code, for what has no pair'],
  ['.', 'The same as above'],
  ['nr', 'No return: nothing came up'],
  ['py2 /words', 'A remark after the row'],
  ['py9=', 'Insist on what was asked; = alone settles the oldest row marked ?'],
  [RANGE_FORM.form, RANGE_FORM.does],
  [AT_FORM.form, AT_FORM.does],
];

/** Screens that the help has a section of their own for; the rest are taken together. */
const SECTIONS: readonly ScreenName[] = ['log', 'holes', 'survey', 'line-up'];

/** What a screen is called in a heading; any other by its name. */
const SCREEN_WORDS: { readonly [name in ScreenName]?: string } = {
  log: 'the log',
  holes: 'the list of holes',
  survey: 'the survey',
  'line-up': 'the line-up',
  fields: 'the form',
  readings: 'the readings',
  shift: 'the shift record',
};

const screenWords = (screen: ScreenName): string => SCREEN_WORDS[screen] ?? `the screen: ${screen}`;

/** Cells of the column that holds what is typed. */
const TYPED = 24;

/**
 * Every key and every command: read off the tables that the console goes by, so that it can't be behind them. What can be done now on the
 * screen that help was asked on comes first, with what can be typed there.
 */
export function helpList(state: State, asked: ScreenName, width: number): Listed {
  const isLog = asked === 'log';
  const own = KEYS.filter(({ on, hindered }) => isOn(on, asked) && hindered?.(state) === undefined);
  const others = SECTIONS.filter((screen) => screen !== asked);
  const rest = KEYS.filter(({ on }) => on !== 'any' && ![asked, ...others].some((each) => isOn(on, each)));
  const keys = (title: string, bindings: readonly Binding[]) => keySection(state, title, bindings, width);
  const here = keys(`on ${screenWords(asked)}`, own);
  const typed = asked === 'shift' ? [section('typed on the shift record', shiftForms(state), width)] : [];
  const sections = [
    whatItIsNot(width),
    ...(isLog ? [...entryForms(state, width), here] : [here, ...typed]),
    keys(
      'on every screen',
      KEYS.filter(({ on }) => on === 'any'),
    ),
    ...others.map((screen) =>
      keys(
        `on ${screenWords(screen)}`,
        KEYS.filter(({ on }) => isOn(on, screen)),
      ),
    ),
    keys('on the other screens', rest),
    ...(isLog ? [] : entryForms(state, width)),
  ];
  return { title: 'keys and commands', sections: sections.filter(({ items }) => items.length > 0) };
}

const isOn = (on: Binding['on'], screen: ScreenName): boolean => on !== 'any' && on.includes(screen);

function entryForms(state: State, width: number): readonly ListSection[] {
  const own = ([form, does]: readonly [string, string]) => [inOwn(state, form), inOwn(state, does)] as const;
  const hasEvents = schemaInHand(state).fields.some(({ kind }) => kind === 'events');
  const forms = hasEvents ? LINE_FORMS : LINE_FORMS.filter(([form]) => form !== AT_FORM.form);
  const commands = COMMANDS.map(({ form, does }) => own([form, does]));
  return [
    section('the entry line', forms.map(own), width),
    section('commands, on the entry line', commands, width),
  ];
}

/** What offsider is not is above all that it can do. */
function whatItIsNot(width: number): ListSection {
  return { head: [], items: [wrap(WHAT_IT_IS_NOT, width, 'warn')] };
}

function section(
  title: string,
  forms: readonly (readonly [form: string, does: string])[],
  width: number,
): ListSection {
  return { head: [line(title, 'strong')], items: forms.map(([form, does]) => explained(form, does, width)) };
}

function keySection(state: State, title: string, bindings: readonly Binding[], width: number): ListSection {
  return {
    head: [line(title, 'strong')],
    items: bindings.map((binding) => explained(typedWords(binding), inOwn(state, binding.help), width)),
  };
}

/** `F2 or ;rod`. */
function typedWords({ keys, word }: Binding): string {
  return [...keys.map(keyName), ...(word === undefined ? [] : [`;${word}`])].join(' or ');
}

/** What is typed on the left, what it does on the right, going on under itself; a long form has a line of its own. */
function explained(form: string, does: string, width: number): readonly Line[] {
  const words = wrap(does, width - TYPED - 2);
  const indent = ' '.repeat(TYPED + 2);
  const under = (lines: readonly Line[]) => lines.map((each): Line => [{ text: indent }, ...each]);
  if (form.length >= TYPED)
    return [
      ...wrap(form, width - 2, 'accent').map((each): Line => [{ text: '  ' }, ...each]),
      ...under(words),
    ];
  const [first = [], ...rest] = words;
  return [[...spans([`  ${form.padEnd(TYPED)}`, 'accent']), ...first], ...under(rest)];
}
