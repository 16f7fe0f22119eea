import type { Draft } from '../draft.ts';
import { KEYS, type ScreenName } from '../keys.ts';
import type { State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, lineWidth, spans, wrap } from '../widgets/line.ts';

/** What the last key led to, or the banner of what is not safe: at most two lines. */
export function messageLines(state: State, width: number): readonly Line[] {
  const { health, message } = state;
  if (health.unsafe !== undefined) {
    return wrap(
      `NOT SAVED: ${health.unsafe.reason}. Not safe: ${health.unsafe.what.join(', ')}. It is tried again by itself.`,
      width - 2,
      'alert',
    ).slice(0, 2);
  }
  return message === undefined ? [] : wrap(message.text, width - 2, message.tone).slice(0, 2);
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

/** The keys of a screen, as many as fit, each with its word; the one that can't be used now says so in the help. */
export function hintLine(screen: ScreenName, width: number, theme: Theme): Line {
  const words = KEYS.filter(
    (binding) => binding.hint !== undefined && (binding.on === 'any' || binding.on.includes(screen)),
  ).map((binding) => ({
    key: keyName(binding.keys[0] ?? ''),
    hint: binding.hint ?? '',
  }));
  let bar: Line = [];
  for (const { key, hint } of words) {
    const next = [...bar, ...spans(bar.length === 0 ? ' ' : '  ', [key, 'strong'], ` ${hint}`)];
    if (lineWidth(next) > width) break;
    bar = next;
  }
  return bar.length === 0 ? line(theme.signs.dash, 'faint') : bar;
}

/** A key as it is printed on a keyboard. */
export function keyName(chord: string): string {
  return chord
    .split('-')
    .map((part) => (part.length === 1 ? part : part.charAt(0).toUpperCase() + part.slice(1)))
    .join('-')
    .replace('Page-Up', 'PgUp')
    .replace('Page-Down', 'PgDn')
    .replace(/^Escape$/, 'Esc');
}
