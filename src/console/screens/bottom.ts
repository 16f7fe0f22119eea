import { type Binding, KEYS, type ScreenName } from '../keys.ts';
import type { State } from '../state.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { fitHeight, type Line, lineWidth, spans, wrap } from '../widgets/line.ts';

/** Lines that one message may take: more would leave nothing of the screen that it is about. */
const LONGEST_MESSAGE = 12;

/** What the last key led to: the cautions of a row that was logged, then its words, each in full: the way out of a refusal is at its end. */
export function saidLines({ message }: State, width: number): readonly Line[] {
  if (message === undefined) return [];
  const cautions = (message.cautions ?? []).flatMap((each) => wrap(each, width - 2, 'alert'));
  const words =
    message.text === '' ? [] : wrap(message.text, width - 2, message.tone).slice(0, LONGEST_MESSAGE);
  return [...cautions, ...words];
}

/** What the last key led to, else the banner of what is not safe. */
export function messageLines(state: State, width: number): readonly Line[] {
  const said = saidLines(state, width);
  return said.length > 0 ? said : bannerLines(state, width);
}

/** The same as the foot of a screen: two lines, or as many as it takes. */
export function messageFoot(state: State, width: number): readonly Line[] {
  const lines = messageLines(state, width).map((each): Line => [{ text: '  ' }, ...each]);
  return fitHeight(lines, Math.max(2, lines.length));
}

/** The size that is left for a screen whose message takes more than its two lines. */
export function sizeAbove(state: State, size: Size): Size {
  return { ...size, rows: size.rows - (messageFoot(state, size.columns).length - 2) };
}

/** Which edits are in memory only and what to do about it; none while all is safe. At most two lines. */
export function bannerLines({ health }: State, width: number): readonly Line[] {
  const { unsafe } = health;
  if (unsafe === undefined) return [];
  const what = unsafe.what.length === 0 ? 'nothing more from here' : someOf(unsafe.what);
  const next = unsafe.isForGood ? ';elsewhere goes' : 'offsider tries again; ;elsewhere saves';
  const words = `NOT SAVED: ${what}. ${next} on in another folder. ${unsafe.reason}`;
  return wrap(words, width - 2, 'alert').slice(0, 2);
}

/** All where they are few; else the first, how many, and the last. */
function someOf(what: readonly string[]): string {
  return what.length <= 3 ? what.join(', ') : `${what[0]} … ${what.at(-1)}, ${what.length} in all`;
}

/** The keys of a screen, as many as fit, each with its word. Help always stands, last: it names the others. */
export function hintLine(screen: ScreenName, width: number, theme: Theme): Line {
  const hinted = KEYS.filter(
    (binding) => binding.hint !== undefined && (binding.on === 'any' || binding.on.includes(screen)),
  );
  const help = hinted.filter(({ name }) => name === 'help').flatMap((each) => hintSpans(each, theme));
  const bar: Line[] = [];
  let room = width - lineWidth(help);
  for (const binding of hinted.filter(({ name }) => name !== 'help')) {
    const hint = hintSpans(binding, theme);
    room -= lineWidth(hint);
    if (room < 0) break;
    bar.push(hint);
  }
  return [...bar, help].flat();
}

function hintSpans({ keys, hint }: Binding, theme: Theme): Line {
  const key = keyName(keys[0] ?? '');
  const arrows: { readonly [name: string]: string } = theme.ascii ? {} : { Up: '↑', Down: '↓' };
  return spans(' ', [arrows[key] ?? key, 'strong'], ` ${hint ?? ''} `);
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
