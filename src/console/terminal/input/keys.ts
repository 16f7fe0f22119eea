/** Keys that type nothing, by the name that the key table and the help use. */
export const namedKeys = [
  'enter',
  'tab',
  'backspace',
  'delete',
  'insert',
  'escape',
  'space',
  'up',
  'down',
  'left',
  'right',
  'home',
  'end',
  'page-up',
  'page-down',
  'f1',
  'f2',
  'f3',
  'f4',
  'f5',
  'f6',
  'f7',
  'f8',
  'f9',
  'f10',
  'f11',
  'f12',
] as const;

/** A key that types nothing. */
export type NamedKey = (typeof namedKeys)[number];

/** What is held down beside a key. Absent means not held (or a terminal that can't say). */
export interface Held {
  readonly ctrl?: true;
  readonly alt?: true;
  readonly shift?: true;
}

/**
 * A key press that types nothing: a named key, or a character held with Ctrl or Alt.
 * `name` is one of `namedKeys` or that one character; Ctrl with a letter is always the small letter.
 */
export interface KeyPress extends Held {
  readonly kind: 'key';
  readonly name: string;
}

/** One typed character. */
interface TypedText {
  readonly kind: 'text';
  readonly text: string;
}

/** A bracketed paste, whole: it is text to show, never keys to obey. Line ends are `\n`. `cut` says that its end is missing. */
export interface PastedText {
  readonly kind: 'paste';
  readonly text: string;
  readonly cut?: true;
}

/** What one thing done at the keyboard becomes. */
export type KeyEvent = TypedText | KeyPress | PastedText;

/** A key press with only those modifiers that are held. */
export function keyPress(name: NamedKey | string, held: Held = {}): KeyPress {
  return { kind: 'key', name, ...held };
}

/**
 * The one spelling of a key press that a key table is looked up with: `enter`, `ctrl-c`, `shift-f1`, `ctrl-alt-shift-up`.
 * The order is always ctrl, alt, shift. Typed characters and pastes have no chord: undefined.
 */
export function chordOf(event: KeyEvent): string | undefined {
  if (event.kind !== 'key') return undefined;
  const held = [event.ctrl && 'ctrl', event.alt && 'alt', event.shift && 'shift'].filter(Boolean);
  return [...held, event.name].join('-');
}
