import type { Draft } from '../draft.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';

/** What a prompt shows: its title, its lines, and the foot: what is typed and the keys. Where room is short, lines give way and the foot stands. */
export interface Shown {
  readonly title: string;
  readonly lines: readonly Line[];
  readonly foot?: readonly Line[];
}

/** A prompt of which nothing can be shown. */
export const NOTHING: Shown = { title: '', lines: [] };

/** The keys of most prompts. */
export const GO_ON = line('Enter goes on. Esc changes nothing.', 'faint');

/** A question that is answered by typing. */
export function typedShown(
  title: string,
  words: readonly string[],
  draft: Draft,
  width: number,
  theme: Theme,
): Shown {
  return { title, lines: words.flatMap((each) => wrap(each, width)), foot: [typedLine(draft, theme), GO_ON] };
}

/** What is typed in a prompt, with its cursor. */
export function typedLine(draft: Draft, theme: Theme): Line {
  return [...spans([`${theme.signs.cursor} `, 'accent']), ...draftSpans(draft)];
}

/** A line being typed, with its cursor shown as the picked cell. */
export function draftSpans(draft: Draft): Line {
  const at = draft.text.slice(draft.at, draft.at + 1);
  return spans(
    draft.text.slice(0, draft.at),
    [at === '' ? ' ' : at, 'picked'],
    draft.text.slice(draft.at + 1),
  );
}
