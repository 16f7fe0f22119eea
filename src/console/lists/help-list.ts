import { WHAT_IT_IS_NOT } from '../../finding/what-it-is-not.ts';
import { AT_FORM, COMMANDS, RANGE_FORM } from '../../shorthand/commands.ts';
import { type Binding, KEYS, type ScreenName } from '../keys.ts';
import { keyName } from '../screens/bottom.ts';
import { inOwn, type State } from '../state.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import type { Listed, ListSection } from './listed.ts';

/** What an entry line is made of, each with its meaning. */
const LINE_FORMS: readonly (readonly [form: string, does: string])[] = [
  ['ba py2', 'A rock by its pair, a mineral by its pair with its amount; what you leave out stays as above'],
  ['p3', 'A mineral of the row above by its one key; p0 takes it out, p, is a trace'],
  ["rock'BAS", 'Any field by its name and its code, for what has no pair'],
  ['.', 'The same as above'],
  ['nr', 'No return: nothing came up'],
  ['py2 /words', 'A remark behind the row'],
  ['py9=', 'Insist on what was asked; = alone settles the oldest row marked ?'],
  [RANGE_FORM.form, RANGE_FORM.does],
  [AT_FORM.form, AT_FORM.does],
];

const SECTIONS: readonly (readonly [title: string, screen: ScreenName])[] = [
  ['on the log', 'log'],
  ['on the list of holes', 'holes'],
  ['on the survey', 'survey'],
  ['on the line-up', 'line-up'],
  ['on the other screens', 'bags'],
];

/** Cells of the column that holds what is typed. */
const TYPED = 24;

/** Every key and every command: read off the tables that the console goes by, so that it can't be behind them. The screen that help was asked on comes first. */
export function helpList(state: State, asked: ScreenName, width: number): Listed {
  const own = SECTIONS.find(([, screen]) => screen === asked) ?? SECTIONS[4];
  const screens = [...SECTIONS.filter((each) => each === own), ...SECTIONS.filter((each) => each !== own)];
  const keys = screens.map(([title, screen]) => keySection(state, title, screen, asked, width));
  const entry = section('the entry line', LINE_FORMS, width);
  const commands = section(
    'commands, on the entry line',
    COMMANDS.map(({ form, does }) => [inOwn(state, form), does]),
    width,
  );
  return {
    title: 'keys and commands',
    sections: [
      whatItIsNot(width),
      ...(asked === 'log' ? [entry, commands, ...keys] : [...keys, entry, commands]),
    ],
  };
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

function keySection(
  state: State,
  title: string,
  screen: ScreenName,
  asked: ScreenName,
  width: number,
): ListSection {
  const bindings = KEYS.filter((binding) => binding.on === 'any' || binding.on.includes(screen));
  return {
    head: [line(title, 'strong')],
    items: bindings.map((binding) => {
      const hindrance = asked === screen ? binding.hindered?.(state) : undefined;
      const not = hindrance === undefined ? '' : ` (not now: ${hindrance})`;
      return explained(typedWords(binding), `${inOwn(state, binding.help)}${not}`, width);
    }),
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
