import type { Held, NamedKey } from './keys.ts';

/** CSI and SS3 keys that end in a letter: DEC VT, xterm. */
export const byLetter: Readonly<Record<string, NamedKey>> = {
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
export const smallArrows: Readonly<Record<string, NamedKey>> = { a: 'up', b: 'down', c: 'right', d: 'left' };

/** CSI number ~ keys. 25 to 34 are F13 to F20, which the Linux console and rxvt send for Shift with F1 to F8. */
export const byNumber: Readonly<Record<number, NamedKey>> = {
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
export const shiftedByNumber: Readonly<Record<number, NamedKey>> = {
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
export const keypadText: Readonly<Record<string, string>> = {
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
export const consoleFunctionKeys: Readonly<Record<string, NamedKey>> = {
  A: 'f1',
  B: 'f2',
  C: 'f3',
  D: 'f4',
  E: 'f5',
};

/** Keys of the CSI u form that have a control code of their own. */
export const byControlCode: Readonly<Record<number, NamedKey>> = {
  8: 'backspace',
  9: 'tab',
  10: 'enter',
  13: 'enter',
  27: 'escape',
  127: 'backspace',
  57414: 'enter',
};

/** Keypad keys of the CSI u form, from 57399 (keypad 0) on and from 57417 (keypad left) on. */
export const keypadCharacters = '0123456789./*-+';
export const keypadNames: readonly NamedKey[] = [
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

/** rxvt ends a numbered key with `$` for Shift, `^` for Ctrl, `@` for both. */
export const rxvtEndings: Readonly<Record<string, Held>> = {
  $: { shift: true },
  '^': { ctrl: true },
  '@': { ctrl: true, shift: true },
};
