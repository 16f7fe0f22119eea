import type { PastedText } from './keys.ts';

/** A bracketed paste that hasn't ended: its bytes, how much of the end mark has matched, whether it ran over the limit. */
export interface PasteState {
  readonly at: 'paste';
  readonly bytes: Uint8Array;
  readonly matched: number;
  readonly cut: boolean;
}

/** The most bytes of one paste that are kept; the rest is swallowed up to the end mark, and the event says so. */
export const pasteLimit = 64 * 1024;

/** A paste of which only the start mark has come. */
export const emptyPaste: PasteState = { at: 'paste', bytes: new Uint8Array(), matched: 0, cut: false };

const endMark = [...'\u001b[201~'].map((character) => character.charCodeAt(0));
const lenient = new TextDecoder('utf-8', { ignoreBOM: true });

/** The event of a paste: line ends become `\n`, bytes that are not UTF-8 become U+FFFD. */
export function pastedText({ bytes, cut }: PasteState): PastedText {
  const text = lenient.decode(bytes).replaceAll(/\r\n?/g, '\n');
  return { kind: 'paste', text, ...(cut ? { cut } : {}) };
}

/**
 * Takes a paste's bytes from `from` on. `end` is where the paste ended (after its end mark), or undefined when it goes on.
 * Nothing in it but the end mark means anything.
 */
export function takePaste(
  paste: PasteState,
  input: Uint8Array,
  from: number,
): { readonly paste: PasteState; readonly end?: number } {
  const kept: number[] = [];
  let { matched, cut } = paste;
  const keep = (byte: number) => {
    if (paste.bytes.length + kept.length < pasteLimit) kept.push(byte);
    else cut = true;
  };
  for (let index = from; index < input.length; index++) {
    const byte = input[index]!;
    if (byte === endMark[matched]) {
      matched++;
      if (matched === endMark.length) return { paste: joined(paste, kept, 0, cut), end: index + 1 };
      continue;
    }
    // Escape stands only at the mark's start, so a broken match can begin again only at this byte.
    endMark.slice(0, matched).forEach(keep);
    matched = byte === endMark[0] ? 1 : 0;
    if (matched === 0) keep(byte);
  }
  return { paste: joined(paste, kept, matched, cut) };
}

function joined(paste: PasteState, kept: readonly number[], matched: number, cut: boolean): PasteState {
  const bytes = new Uint8Array(paste.bytes.length + kept.length);
  bytes.set(paste.bytes);
  bytes.set(kept, paste.bytes.length);
  return { at: 'paste', bytes, matched, cut };
}
