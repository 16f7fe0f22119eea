import { render as renderInk } from 'ink';
import { Component, type ReactElement, type ReactNode } from 'react';
import type { KeyEvent } from './input/keys.ts';
import { createReader, type InputStream } from './input/reader.ts';
import type { Ending } from './paint/ending.ts';
import { createPainter, type Painter, type Size } from './paint/painter.ts';
import { createTerminal, type OutputStream } from './paint/terminal.ts';

/** What the screen is made of. */
export interface MountOptions {
  readonly stdin: InputStream;
  readonly stdout: OutputStream;
  /** The whole screen for a frame of this size: the terminal's columns, and its rows less one. Called for every frame. */
  readonly render: (frame: Size) => ReactElement;
  /** All key events of one read, in order. Change the state, then call `rerender` once. */
  readonly onEvents: (events: readonly KeyEvent[]) => void;
}

/** A screen that is up. */
export interface Mounted {
  /** Paints the state as it is now. When it returns, the bytes are written. */
  rerender(): void;
  /** Paints everything again, whatever the terminal shows. */
  repaint(): void;
  /** Gives the terminal back. */
  stop(): void;
  /** Gives the terminal back until the shell continues us. */
  suspend(): void;
  /** Bytes painted so far. */
  bytesWritten(): number;
  /** Settles after the terminal has been given back, whatever the reason. Never rejects. The caller calls `release`, then ends the process. */
  readonly ended: Promise<Ending>;
  /** To be called once nothing is left to save: until then no signal and no error ends the process. Gives the first error that came since. */
  release(): unknown;
}

/** Catches what a screen throws. A class, since React has no other way to. */
class Boundary extends Component<
  { readonly onError: (error: unknown) => void; readonly children: ReactNode },
  { readonly failed: boolean }
> {
  static getDerivedStateFromError() {
    return { failed: true };
  }
  override state = { failed: false };
  override componentDidCatch(error: unknown) {
    this.props.onError(error);
  }
  override render() {
    return this.state.failed ? null : this.props.children;
  }
}

/**
 * Ink as a function from an element to a painted frame: debug mode hands each frame to the painter as soon as React has committed it. Ink
 * gets no real stdin (the reader owns it), no console patching, and no signals worth answering.
 */
function startInk(painter: Painter) {
  const unused = { isTTY: false } as NodeJS.ReadStream;
  const stdout = painter.stream as unknown as NodeJS.WriteStream;
  const options = { stdin: unused, stdout, debug: true, exitOnCtrlC: false, patchConsole: false };
  let instance: ReturnType<typeof renderInk> | undefined;
  return {
    show(element: ReactElement) {
      if (instance === undefined) instance = renderInk(element, options);
      else instance.rerender(element);
    },
    unmount: () => instance?.unmount(),
  };
}

/**
 * Puts a screen up: takes the terminal, reads its keys, paints frames, and gives it back whatever happens (a throw in `render` or in a
 * component, an uncaught error, a signal, a vanished terminal): see `ended`. `setupColour` must have run before this module is loaded.
 */
export function mount({ stdin, stdout, render, onEvents }: MountOptions): Mounted {
  const terminal = createTerminal({
    stdout,
    onEnd: (ending) => end(ending),
    onResize: () => repaint(),
    onSuspend: () => reader.stop(),
    onResume: () => {
      reader.start();
      repaint();
    },
  });
  const reader = createReader({ stdin, onEvents, onEnd: () => end({ kind: 'lost' }) });
  const painter = createPainter(terminal.size(), (text) => stdout.write(text));
  const ink = startInk(painter);
  const { promise: ended, resolve } = withResolver<Ending>();
  let isUp = true;

  const end = (ending: Ending) => {
    if (!isUp) return;
    isUp = false;
    painter.close();
    reader.stop();
    terminal.leave();
    // Not at once: the throw may come out of a commit that React is still in.
    setImmediate(() => {
      ink.unmount();
      resolve(ending);
    });
  };
  const rerender = () => {
    if (!isUp) return;
    const { columns, rows } = painter.stream;
    try {
      const frame = render({ columns, rows: rows - 1 });
      ink.show(<Boundary onError={(error) => end({ kind: 'error', error })}>{frame}</Boundary>);
    } catch (error) {
      end({ kind: 'error', error });
    }
  };
  const repaint = () => {
    painter.reset(terminal.size());
    rerender();
  };

  terminal.enter();
  reader.start();
  rerender();
  return {
    rerender,
    repaint,
    stop: () => end({ kind: 'stopped' }),
    suspend: terminal.suspend,
    bytesWritten: painter.bytesWritten,
    ended,
    release: terminal.release,
  };
}

/** A promise and the function that settles it (Node 20 has no `Promise.withResolvers`). */
function withResolver<T>() {
  let resolve: (value: T) => void = () => undefined;
  const promise = new Promise<T>((settle) => {
    resolve = settle;
  });
  return { promise, resolve };
}
