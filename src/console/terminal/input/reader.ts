import { decode, flush, nothingHeld, waitFor } from './decode.ts';
import type { KeyEvent } from './keys.ts';

/** The part of a terminal's input stream that the reader uses: `process.stdin`, or a stand-in for it. */
export interface InputStream {
  readonly isTTY?: boolean;
  setRawMode?(raw: boolean): unknown;
  on(event: 'data', listener: (bytes: Uint8Array) => void): unknown;
  on(event: 'end' | 'close' | 'error', listener: () => void): unknown;
  off(event: 'data', listener: (bytes: Uint8Array) => void): unknown;
  off(event: 'end' | 'close' | 'error', listener: () => void): unknown;
  pause(): unknown;
  resume(): unknown;
}

/** What the reader is given and whom it tells. */
export interface ReaderOptions {
  readonly stdin: InputStream;
  /** All events of one read, in order, once. Never called with none. */
  readonly onEvents: (events: readonly KeyEvent[]) => void;
  /** The terminal is gone: no more input will come. */
  readonly onEnd: () => void;
}

/** The one reader of the terminal's input. */
export interface Reader {
  /** Raw mode on, bytes flow. */
  start(): void;
  /** Raw mode off, and anything half-read forgotten. May be started again. */
  stop(): void;
}

/**
 * Reads keys from a terminal in raw mode. A held-back Escape is believed after 25 ms.
 * Bracketed paste is switched on and off with the screen (paint/terminal.ts), so that a crash switches it off too.
 */
export function createReader({ stdin, onEvents, onEnd }: ReaderOptions): Reader {
  let state = nothingHeld;
  let timer: NodeJS.Timeout | undefined;
  let running = false;

  // A terminal that has gone fails raw mode with an 'error' event, which Node throws when no one listens.
  stdin.on('error', () => undefined);

  const publish = (events: readonly KeyEvent[]) => {
    if (events.length > 0) onEvents(events);
  };
  const settle = () => {
    const left = flush(state);
    state = left.state;
    publish(left.events);
  };
  const onData = (bytes: Uint8Array) => {
    clearTimeout(timer);
    const read = decode(state, bytes);
    state = read.state;
    const wait = waitFor(state);
    if (wait !== undefined) timer = setTimeout(settle, wait);
    publish(read.events);
  };

  return {
    start() {
      if (running) return;
      running = true;
      stdin.setRawMode?.(true);
      stdin.on('data', onData);
      for (const event of ['end', 'close', 'error'] as const) stdin.on(event, onEnd);
      stdin.resume();
    },
    stop() {
      if (!running) return;
      running = false;
      clearTimeout(timer);
      state = nothingHeld;
      stdin.off('data', onData);
      for (const event of ['end', 'close', 'error'] as const) stdin.off(event, onEnd);
      stdin.setRawMode?.(false);
      stdin.pause();
    },
  };
}
