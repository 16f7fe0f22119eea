import { COMMANDS } from '../../shorthand/commands.ts';
import { KEYS } from '../keys.ts';
import { type Line, line, wrap } from '../widgets/line.ts';

/** Every word behind `;` on the log with what it does: commands of the entry line, then screens and keys. */
const WORDS: readonly (readonly [word: string, does: string])[] = [
  ...COMMANDS.map(({ word, form, does }) => [word, `${form}: ${does}`] as const),
  ...KEYS.flatMap(({ word, on, help }) =>
    word !== undefined && (on === 'any' || on.includes('log')) && !COMMANDS.some((each) => each.word === word)
      ? [[word, `;${word}: ${help}`] as const]
      : [],
  ),
];

/**
 * The two lines above the entry line while a command's word is typed: what it does, or the words that begin so. Undefined
 * where the line is no command's word, or none begins so: then the line itself says why it is refused.
 */
export function commandEcho(text: string, width: number): readonly [Line, Line] | undefined {
  const typed = /^;([a-z-]*)$/.exec(text)?.[1];
  if (typed === undefined) return undefined;
  const begun = WORDS.filter(([word]) => word.startsWith(typed));
  if (begun.length === 0) return undefined;
  const exact = begun.find(([word]) => word === typed);
  const others = begun.filter((each) => each !== exact).map(([word]) => `;${word}`);
  const names = others.length === 0 ? [] : wrap(others.join('  '), width, 'faint');
  if (exact === undefined) return [names[0] ?? [], names[1] ?? []];
  const [first = [], second] = wrap(exact[1], width, 'accent');
  return [first, second ?? names[0] ?? line('')];
}
