import { type KeyEvent, keyPress } from './keys.ts';
import { pastedText, takePaste } from './paste.ts';
import { brokenCharacter, type DecoderState, nothingHeld, stepOf, typed } from './steps.ts';

export { type DecoderState, nothingHeld } from './steps.ts';

/** What bytes became, and what is held back until more of it comes. */
export interface Decoded {
  readonly events: readonly KeyEvent[];
  readonly state: DecoderState;
}

/**
 * Turns terminal input into key events, in order. Pure: reads may end anywhere (inside a character, a sequence, a paste),
 * and the events are the same as if all had come at once. Any bytes are allowed; what is no key makes no event.
 */
export function decode(state: DecoderState, bytes: Uint8Array): Decoded {
  const events: KeyEvent[] = [];
  const emit = (event: KeyEvent) => void events.push(event);
  let now = state;
  let index = 0;
  while (index < bytes.length) {
    if (now.at !== 'paste') {
      now = stepOf(now)(bytes[index]!, emit);
      index++;
      continue;
    }
    const taken = takePaste(now, bytes, index);
    if (taken.end !== undefined) emit(pastedText(taken.paste));
    now = taken.end === undefined ? taken.paste : nothingHeld;
    index = taken.end ?? bytes.length;
  }
  return { events, state: now };
}

/**
 * What held-back input means when nothing follows it: a lone Escape is the Escape key, `ESC [` is Alt with `[`;
 * a sequence that was broken off means nothing; a paste without its end is handed on, marked as cut.
 */
export function flush(state: DecoderState): Decoded {
  return { events: leftOver(state), state: nothingHeld };
}

function leftOver(state: DecoderState): readonly KeyEvent[] {
  const lone = keyPress('escape');
  switch (state.at) {
    case 'ground':
    case 'report':
      return [];
    case 'escape':
      return state.twice ? [lone, lone] : [lone];
    case 'csi':
    case 'ss3': {
      const opener = state.at === 'csi' ? '[' : 'O';
      const held = typed(opener, true);
      return state.parameters === '' && held ? [...(state.alt ? [lone] : []), held] : [];
    }
    case 'string': {
      const held = typed(state.opener, true);
      return state.empty && held ? [held] : [];
    }
    case 'character':
      return [brokenCharacter];
    case 'paste':
      return [{ ...pastedText(state), cut: true }];
  }
}

/**
 * How long to wait for more, in milliseconds, before `flush` is right; undefined when nothing is held back.
 * 25 ms tells a lone Escape from the start of a sequence; a paste may stall far longer on a slow link, and must not
 * turn into keys half-way.
 */
export function waitFor(state: DecoderState): number | undefined {
  if (state.at === 'ground') return state.afterReturn ? 25 : undefined;
  return state.at === 'paste' ? 3000 : 25;
}
