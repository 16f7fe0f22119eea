import { type Held, type KeyEvent, keyPress } from './keys.ts';
import { emptyPaste, type PasteState } from './paste.ts';
import { csiKey, ss3Key } from './sequences.ts';

/** What has arrived of something that isn't whole yet. Bytes in, never more than a fixed number kept. */
export type DecoderState =
  | { readonly at: 'ground'; readonly afterReturn?: true }
  | { readonly at: 'escape'; readonly twice: boolean }
  | { readonly at: 'csi' | 'ss3'; readonly parameters: string; readonly alt: boolean }
  | { readonly at: 'report'; readonly left: number }
  | { readonly at: 'string'; readonly opener: string; readonly empty: boolean; readonly escaped: boolean }
  | {
      readonly at: 'character';
      readonly bytes: readonly number[];
      readonly needed: number;
      readonly alt: boolean;
    }
  | PasteState;

/** Where a decoder starts. */
export const nothingHeld: DecoderState = { at: 'ground' };

/** How many parameter characters of a sequence are kept; a longer one is still swallowed to its end. */
export const parameterLimit = 64;

/** One byte in, events out, and the state after it. */
type Step = (byte: number, emit: (event: KeyEvent) => void) => DecoderState;

const escapeByte = 0x1b;
/** Ctrl with the keys right of the letters: bytes 0x1c to 0x1f. */
const controlPunctuation = ['\\', ']', '^', '_'];

/** The key press of a control byte (0x00 to 0x1f, 0x7f) other than Escape. Ctrl-I, Ctrl-M, Ctrl-J and Ctrl-H can't be told from their keys. */
function controlKey(byte: number, held: Held): KeyEvent {
  if (byte === 0x0d || byte === 0x0a) return keyPress('enter', held);
  if (byte === 0x09) return keyPress('tab', held);
  if (byte === 0x08 || byte === 0x7f) return keyPress('backspace', held);
  const name =
    byte === 0 ? 'space' : byte < 27 ? String.fromCharCode(96 + byte) : controlPunctuation[byte - 0x1c]!;
  return keyPress(name, { ctrl: true, ...held });
}

/** A typed character, or a key press when Alt (an Escape in front) was held. C1 controls type nothing. */
export function typed(text: string, alt: boolean): KeyEvent | undefined {
  const code = text.codePointAt(0)!;
  if (code >= 0x80 && code < 0xa0) return undefined;
  if (!alt) return { kind: 'text', text };
  return keyPress(text === ' ' ? 'space' : text, { alt: true });
}

/** How many bytes a UTF-8 character has that starts with this byte; 0 when none can (RFC 3629). */
function characterLength(lead: number): number {
  if (lead >= 0xc2 && lead <= 0xdf) return 2;
  if (lead >= 0xe0 && lead <= 0xef) return 3;
  return lead >= 0xf0 && lead <= 0xf4 ? 4 : 0;
}

/** What stands for bytes that are no character: shown, so that a wrong terminal encoding isn't lost in silence. */
export const brokenCharacter: KeyEvent = { kind: 'text', text: '\ufffd' };
const lenient = new TextDecoder('utf-8', { ignoreBOM: true });

/** A byte at the start of something: a key, a character, or the beginning of a sequence. */
function ground(afterReturn: boolean, alt: boolean): Step {
  return (byte, emit) => {
    if (byte === escapeByte) return { at: 'escape', twice: false };
    if (byte < 0x20 || byte === 0x7f) {
      // CR LF is one Enter, also when a read ends between them.
      if (!(byte === 0x0a && afterReturn)) emit(controlKey(byte, alt ? { alt: true } : {}));
      return byte === 0x0d ? { at: 'ground', afterReturn: true } : nothingHeld;
    }
    if (byte < 0x7f) {
      emit(typed(String.fromCharCode(byte), alt)!);
      return nothingHeld;
    }
    const needed = characterLength(byte);
    if (needed > 0) return { at: 'character', bytes: [byte], needed, alt };
    emit(brokenCharacter);
    return nothingHeld;
  };
}

/** A byte after Escape: Alt with a key, or the opener of a sequence. A second Escape waits too: some terminals put it before Alt with an arrow. */
function afterEscape(twice: boolean): Step {
  return (byte, emit) => {
    const character = String.fromCharCode(byte);
    if (byte === escapeByte) {
      if (twice) emit(keyPress('escape'));
      return { at: 'escape', twice: true };
    }
    if (character === '[') return { at: 'csi', parameters: '', alt: twice };
    if (character === 'O') return { at: 'ss3', parameters: '', alt: twice };
    if (twice) emit(keyPress('escape'));
    if (']P_^X'.includes(character)) return { at: 'string', opener: character, empty: true, escaped: false };
    return ground(false, true)(byte, emit);
  };
}

/** The event of a finished sequence, with Alt added when a second Escape stood in front. */
function withAlt(event: KeyEvent | undefined, alt: boolean): KeyEvent | undefined {
  return alt && event?.kind === 'key' ? { ...event, alt: true } : event;
}

/** A byte inside CSI or SS3: a parameter, the final character, or the sign that the sequence was broken off. */
function insideSequence(state: Extract<DecoderState, { at: 'csi' | 'ss3' }>): Step {
  const { at, parameters, alt } = state;
  return (byte, emit) => {
    const character = String.fromCharCode(byte);
    const isCsi = at === 'csi';
    const linuxConsole = isCsi && parameters === '' && character === '[';
    const rxvtShift = isCsi && character === '$' && /^\d+$/.test(parameters);
    const isParameter = isCsi ? byte >= 0x20 && byte < 0x40 : byte >= 0x30 && byte < 0x3c;
    if (linuxConsole || (isParameter && !rxvtShift))
      return { ...state, parameters: (parameters + character).slice(0, parameterLimit) };
    if (byte < 0x20 || byte > 0x7e) return ground(false, false)(byte, emit);
    if (isCsi && character === 'M' && parameters === '') return { at: 'report', left: 3 };
    if (isCsi && character === '~' && parameters === '200') return emptyPaste;
    const whole = parameters.length < parameterLimit;
    const event = whole ? (isCsi ? csiKey : ss3Key)(parameters, character) : undefined;
    const emitted = withAlt(event, alt);
    if (emitted !== undefined) emit(emitted);
    return nothingHeld;
  };
}

/** A byte of a terminal's reply (OSC, DCS, APC, PM, SOS): swallowed up to BEL, ST, or a cancel. */
function insideString(state: Extract<DecoderState, { at: 'string' }>): Step {
  return (byte, emit) => {
    if (state.escaped && byte !== 0x5c) return afterEscape(false)(byte, emit);
    if (state.escaped || byte === 0x07 || byte === 0x18 || byte === 0x1a) return nothingHeld;
    return { ...state, empty: false, escaped: byte === escapeByte };
  };
}

/** A byte after the lead of a UTF-8 character. */
function insideCharacter(state: Extract<DecoderState, { at: 'character' }>): Step {
  return (byte, emit) => {
    if ((byte & 0xc0) !== 0x80) {
      emit(brokenCharacter);
      return ground(false, false)(byte, emit);
    }
    const bytes = [...state.bytes, byte];
    if (bytes.length < state.needed) return { ...state, bytes };
    const text = lenient.decode(Uint8Array.from(bytes));
    const isOne = [...text].length === 1;
    const event = isOne ? typed(text, state.alt) : brokenCharacter;
    if (event !== undefined) emit(event);
    return nothingHeld;
  };
}

/** What the next byte does in this state, outside a paste. */
export function stepOf(state: Exclude<DecoderState, PasteState>): Step {
  switch (state.at) {
    case 'ground':
      return ground(state.afterReturn === true, false);
    case 'escape':
      return afterEscape(state.twice);
    case 'csi':
    case 'ss3':
      return insideSequence(state);
    case 'report':
      return () => (state.left > 1 ? { at: 'report', left: state.left - 1 } : nothingHeld);
    case 'string':
      return insideString(state);
    case 'character':
      return insideCharacter(state);
  }
}
