/**
 * What a piece of text is for; the theme says how that looks. Nothing is told by tone alone: every tone that carries a
 * meaning is beside a word or a sign that carries it too.
 */
export type Tone = 'plain' | 'faint' | 'strong' | 'good' | 'warn' | 'alert' | 'accent' | 'picked';

/** SGR codes that start and end each tone. The sixteen colours only, so that the user's own palette (sun, night) rules. */
const SGR: { readonly [tone in Tone]: readonly [on: string, off: string] } = {
  plain: ['', ''],
  faint: ['\x1b[2m', '\x1b[22m'],
  strong: ['\x1b[1m', '\x1b[22m'],
  good: ['\x1b[32m', '\x1b[39m'],
  warn: ['\x1b[33m', '\x1b[39m'],
  alert: ['\x1b[1;31m', '\x1b[22;39m'],
  accent: ['\x1b[36m', '\x1b[39m'],
  picked: ['\x1b[7m', '\x1b[27m'],
};

/** Signs and borders, with plain ASCII for consoles that misalign the rest. */
export interface Signs {
  readonly topLeft: string;
  readonly topRight: string;
  readonly bottomLeft: string;
  readonly bottomRight: string;
  readonly across: string;
  readonly down: string;
  readonly teeLeft: string;
  readonly teeRight: string;
  readonly cursor: string;
  readonly here: string;
  readonly up: string;
  readonly downward: string;
  readonly dash: string;
  readonly ellipsis: string;
  readonly full: string;
  readonly empty: string;
  readonly tick: string;
  /** Stands before the first row of a new rock. */
  readonly contact: string;
}

const DRAWN: Signs = {
  topLeft: '┌',
  topRight: '┐',
  bottomLeft: '└',
  bottomRight: '┘',
  across: '─',
  down: '│',
  teeLeft: '├',
  teeRight: '┤',
  cursor: '▸',
  here: '▌',
  up: '▲',
  downward: '▼',
  dash: '–',
  ellipsis: '…',
  full: '█',
  empty: '░',
  tick: '√',
  contact: '═',
};

const ASCII: Signs = {
  topLeft: '+',
  topRight: '+',
  bottomLeft: '+',
  bottomRight: '+',
  across: '-',
  down: '|',
  teeLeft: '+',
  teeRight: '+',
  cursor: '>',
  here: '>',
  up: '^',
  downward: 'v',
  dash: '-',
  ellipsis: '~',
  full: '#',
  empty: '.',
  tick: '+',
  contact: '=',
};

/** How the console looks: decided once, from the environment. */
export interface Theme {
  readonly colour: boolean;
  readonly ascii: boolean;
  readonly signs: Signs;
}

/** The theme for a terminal that shows colour or not, and more than ASCII or not. */
export function themeFor(looks: { readonly colour: boolean; readonly ascii: boolean }): Theme {
  return { ...looks, signs: looks.ascii ? ASCII : DRAWN };
}

/** A text in a tone. Without colour `picked` and `strong` stay (they are not colours), the others are plain. */
export function toned(text: string, tone: Tone, theme: Theme): string {
  if (tone === 'plain' || text === '') return text;
  if (!theme.colour && tone !== 'picked' && tone !== 'strong') return text;
  const [on, off] = SGR[tone];
  return `${on}${text}${off}`;
}
