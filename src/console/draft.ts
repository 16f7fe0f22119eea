import type { KeyEvent } from './terminal/input/keys.ts';
import { chordOf } from './terminal/input/keys.ts';

/** A line being typed: its text, and the cursor as an index into it (UTF-16, always between characters). */
export interface Draft {
  readonly text: string;
  readonly at: number;
}

export const EMPTY_DRAFT: Draft = { text: '', at: 0 };

/** The longest line taken, in characters: a remark fits, a pasted file does not. */
const LONGEST = 500;

/** A draft of a text, with the cursor at its end. */
export function draftOf(text: string): Draft {
  return { text, at: text.length };
}

/** A text put in at the cursor; what would make the line too long is left out. */
function typed(draft: Draft, text: string): Draft {
  const room = LONGEST - draft.text.length;
  const taken = text.slice(0, Math.max(0, room));
  return {
    text: draft.text.slice(0, draft.at) + taken + draft.text.slice(draft.at),
    at: draft.at + taken.length,
  };
}

/** The draft after an editing key, or undefined where the key is none. Line ends in a paste become spaces: a paste never enters a line. */
export function edited(draft: Draft, event: KeyEvent): Draft | undefined {
  if (event.kind === 'text') return typed(draft, event.text);
  if (event.kind === 'paste') return typed(draft, event.text.replace(/\s+/g, ' ').trim());
  const { text, at } = draft;
  switch (chordOf(event)) {
    case 'backspace':
      return { text: text.slice(0, before(text, at)) + text.slice(at), at: before(text, at) };
    case 'delete':
      return { text: text.slice(0, at) + text.slice(after(text, at)), at };
    case 'left':
      return { text, at: before(text, at) };
    case 'right':
      return { text, at: after(text, at) };
    case 'home':
      return { text, at: 0 };
    case 'end':
      return { text, at: text.length };
    case 'ctrl-u':
      return EMPTY_DRAFT;
    default:
      return undefined;
  }
}

/** The index one character back: a surrogate pair is one character. */
function before(text: string, at: number): number {
  if (at === 0) return 0;
  return at >= 2 && text.codePointAt(at - 2)! > 0xffff ? at - 2 : at - 1;
}

function after(text: string, at: number): number {
  if (at >= text.length) return text.length;
  return text.codePointAt(at)! > 0xffff ? at + 2 : at + 1;
}
