import {
  byControlCode,
  byLetter,
  byNumber,
  consoleFunctionKeys,
  keypadCharacters,
  keypadNames,
  keypadText,
  rxvtEndings,
  shiftedByNumber,
  smallArrows,
} from './key-tables.ts';
import { type Held, type KeyEvent, keyPress } from './keys.ts';

/**
 * Modifiers as xterm counts them: 1 + shift 1 + alt 2 + ctrl 4; the CSI u form adds super 8, hyper 16, meta 32, caps lock 64, num lock 128.
 * Undefined when super or hyper is held: that is the window system's key, not ours.
 */
function heldOf(parameter: number | undefined): Held | undefined {
  const bits = Math.max(0, (parameter ?? 1) - 1);
  if ((bits & 24) !== 0) return undefined;
  return {
    ...((bits & 4) !== 0 ? { ctrl: true } : {}),
    ...((bits & 34) !== 0 ? { alt: true } : {}),
    ...((bits & 1) !== 0 ? { shift: true } : {}),
  };
}

/** A character from a form that names it by code: typed text, or a key press when Ctrl or Alt is held. */
function characterKey(code: number, shifted: number | undefined, held: Held): KeyEvent | undefined {
  const named = byControlCode[code] ?? keypadNames[code - 57417];
  if (named !== undefined) return keyPress(named, held);
  const keypad = keypadCharacters[code - 57399];
  const isText = code >= 32 && code < 0xd800 && !(code >= 0x7f && code < 0xa0);
  const plain = keypad ?? (isText ? String.fromCodePoint(code) : undefined);
  if (plain === undefined) return undefined;
  if (held.ctrl || held.alt) return keyPress(plain === ' ' ? 'space' : plain.toLowerCase(), held);
  if (!held.shift) return { kind: 'text', text: plain };
  const upper = shifted === undefined ? undefined : characterKey(shifted, undefined, {});
  return upper ?? { kind: 'text', text: plain.length === 1 ? plain.toUpperCase() : plain };
}

/** CSI u: `code[:shifted][;modifiers[:event]]`. Event 3 is a key let go. */
function unicodeKey(fields: readonly string[]): KeyEvent | undefined {
  const [code, shifted] = (fields[0] ?? '').split(':');
  const [modifiers, event] = (fields[1] ?? '').split(':');
  const held = heldOf(modifiers ? Number(modifiers) : undefined);
  if (event === '3' || held === undefined) return undefined;
  return characterKey(Number(code), shifted ? Number(shifted) : undefined, held);
}

/** CSI number ~, with xterm's modifiers, and the CSI 27 ; modifiers ; code ~ form of any key. */
function numberedKey(fields: readonly string[]): KeyEvent | undefined {
  const number = Number(fields[0]);
  const held = heldOf(fields[1] ? Number.parseInt(fields[1], 10) : undefined);
  if (held === undefined || fields[1]?.endsWith(':3')) return undefined;
  if (number === 27 && fields[2] !== undefined) return characterKey(Number(fields[2]), undefined, held);
  const shifted = shiftedByNumber[number];
  if (shifted !== undefined) return keyPress(shifted, { ...held, shift: true });
  const name = byNumber[number];
  return name === undefined ? undefined : keyPress(name, held);
}

/**
 * The key that a complete CSI sequence stands for: `parameters` between `ESC [` and the final character.
 * Undefined for everything that is not a key: mouse and focus reports, replies, what we don't know.
 * Sources: ECMA-48 (form), DEC VT220 and xterm control sequences (keys, modifiers), the Linux console, rxvt, the CSI u form.
 */
export function csiKey(parameters: string, final: string): KeyEvent | undefined {
  if (parameters.startsWith('[')) {
    const name = consoleFunctionKeys[final];
    return name === undefined ? undefined : keyPress(name);
  }
  const rxvt = rxvtEndings[final];
  if (rxvt !== undefined && /^\d+$/.test(parameters)) {
    const name = byNumber[Number(parameters)];
    return name === undefined ? undefined : keyPress(name, rxvt);
  }
  if (!/^[\d;:]*$/.test(parameters)) return undefined;
  const fields = parameters.split(';');
  if (final === '~') return numberedKey(fields);
  if (final === 'u') return unicodeKey(fields);
  if (final === 'Z') return keyPress('tab', { shift: true });
  const arrow = smallArrows[final];
  if (arrow !== undefined) return keyPress(arrow, { shift: true });
  const name = byLetter[final];
  // A key has no parameter, or 1 and its modifiers; anything else with the same ending is a report (row;column R).
  if (name === undefined || !['', '1'].includes(fields[0] ?? '') || fields[1]?.endsWith(':3'))
    return undefined;
  const held = heldOf(fields[1] ? Number.parseInt(fields[1], 10) : undefined);
  return held === undefined ? undefined : keyPress(name, held);
}

/** The key that a complete SS3 sequence stands for: `ESC O`, perhaps modifiers, and the final character. */
export function ss3Key(parameters: string, final: string): KeyEvent | undefined {
  const held = heldOf(parameters === '' ? undefined : Number(parameters.split(';').at(-1)));
  if (held === undefined) return undefined;
  if (final === 'M') return keyPress('enter', held);
  if (final === 'I') return keyPress('tab', held);
  const arrow = smallArrows[final];
  if (arrow !== undefined) return keyPress(arrow, { ctrl: true });
  const text = keypadText[final];
  if (text !== undefined) return { kind: 'text', text };
  const name = byLetter[final];
  return name === undefined ? undefined : keyPress(name, held);
}
