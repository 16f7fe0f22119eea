import { type Held, type KeyEvent, keyPress, type NamedKey } from './keys.ts';

/** CSI and SS3 keys that end in a letter: DEC VT, xterm. */
const byLetter: Readonly<Record<string, NamedKey>> = {
  A: 'up',
  B: 'down',
  C: 'right',
  D: 'left',
  H: 'home',
  F: 'end',
  P: 'f1',
  Q: 'f2',
  R: 'f3',
  S: 'f4',
};

/** rxvt: small letters are arrows with a modifier (Shift after CSI, Ctrl after SS3). */
const smallArrows: Readonly<Record<string, NamedKey>> = { a: 'up', b: 'down', c: 'right', d: 'left' };

/** CSI number ~ keys. 25 to 34 are F13 to F20, which the Linux console and rxvt send for Shift with F1 to F8. */
const byNumber: Readonly<Record<number, NamedKey>> = {
  1: 'home',
  2: 'insert',
  3: 'delete',
  4: 'end',
  5: 'page-up',
  6: 'page-down',
  7: 'home',
  8: 'end',
  11: 'f1',
  12: 'f2',
  13: 'f3',
  14: 'f4',
  15: 'f5',
  17: 'f6',
  18: 'f7',
  19: 'f8',
  20: 'f9',
  21: 'f10',
  23: 'f11',
  24: 'f12',
};
const shiftedByNumber: Readonly<Record<number, NamedKey>> = {
  25: 'f1',
  26: 'f2',
  28: 'f3',
  29: 'f4',
  31: 'f5',
  32: 'f6',
  33: 'f7',
  34: 'f8',
};

/** Keypad in application mode (DEC VT100): what SS3 and this letter type. */
const keypadText: Readonly<Record<string, string>> = {
  ' ': ' ',
  X: '=',
  j: '*',
  k: '+',
  l: ',',
  m: '-',
  n: '.',
  o: '/',
  p: '0',
  q: '1',
  r: '2',
  s: '3',
  t: '4',
  u: '5',
  v: '6',
  w: '7',
  x: '8',
  y: '9',
};

/** The Linux console's F1 to F5: CSI [ and a letter. */
const consoleFunctionKeys: Readonly<Record<string, NamedKey>> = {
  A: 'f1',
  B: 'f2',
  C: 'f3',
  D: 'f4',
  E: 'f5',
};

/** Keys of the CSI u form that have a control code of their own. */
const byControlCode: Readonly<Record<number, NamedKey>> = {
  8: 'backspace',
  9: 'tab',
  10: 'enter',
  13: 'enter',
  27: 'escape',
  127: 'backspace',
  57414: 'enter',
};

/** Keypad keys of the CSI u form, from 57399 (keypad 0) on and from 57417 (keypad left) on. */
const keypadCharacters = '0123456789./*-+';
const keypadNames: readonly NamedKey[] = [
  'left',
  'right',
  'up',
  'down',
  'page-up',
  'page-down',
  'home',
  'end',
  'insert',
  'delete',
];

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

/** rxvt ends a numbered key with `$` for Shift, `^` for Ctrl, `@` for both. */
const rxvtEndings: Readonly<Record<string, Held>> = {
  $: { shift: true },
  '^': { ctrl: true },
  '@': { ctrl: true, shift: true },
};

/**
 * The key that a complete CSI sequence stands for: `parameters` between `ESC [` and the final character.
 * Undefined for everything that is no key: mouse and focus reports, replies, what we don't know.
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
