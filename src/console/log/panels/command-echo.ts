import { lineWords } from '../../line-words.ts';
import { inOwn, type State } from '../../state.ts';
import { type Line, line, wrap } from '../../widgets/line.ts';

/**
 * The two lines above the entry line while a command's word is typed: what it does, or the words that begin so. Undefined
 * where the line is no command's word, or none begins so: then the line itself says why it is refused.
 */
export function commandEcho(state: State, text: string, width: number): readonly [Line, Line] | undefined {
  const typed = /^;([a-z-]*)$/.exec(text)?.[1];
  if (typed === undefined) return undefined;
  const begun = lineWords().filter(({ text: word }) => word.startsWith(typed));
  if (begun.length === 0) return undefined;
  const exact = begun.find(({ text: word }) => word === typed);
  const others = begun.filter((each) => each !== exact).map((each) => `;${each.text}`);
  const names = others.length === 0 ? [] : wrap(others.join('  '), width, 'faint');
  if (exact === undefined) return [names[0] ?? [], names[1] ?? []];
  const [first = [], second] = wrap(inOwn(state, exact.label), width, 'accent');
  return [first, second ?? names[0] ?? line('')];
}
