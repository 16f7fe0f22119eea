import type { Ending } from './ending.ts';
import { watchEndings } from './endings-watch.ts';
import type { Size } from './painter.ts';
import { type Suspension, watchSuspension } from './suspension.ts';
import { enterScreen, leaveScreen, writeNow } from './write-now.ts';

/** The part of a terminal's output stream that is used: `process.stdout`, or a stand-in for it. */
export interface OutputStream {
  readonly fd: number;
  readonly columns?: number;
  readonly rows?: number;
  write(text: string): unknown;
  on(event: 'resize' | 'error', listener: () => void): unknown;
  off(event: 'resize' | 'error', listener: () => void): unknown;
}

/** What the terminal is given and whom it tells. */
export interface TerminalOptions {
  readonly stdout: OutputStream;
  /** The screen has just been left, for this reason. Told once. Not told after `leave()`. */
  readonly onEnd: (ending: Ending) => void;
  /** The terminal has another size. */
  readonly onResize: () => void;
  /** The screen is about to be left for a while: stop reading. */
  readonly onSuspend: () => void;
  /** The screen is ours again and empty: read on and paint everything. */
  readonly onResume: () => void;
}

/** The terminal as a full screen that is given back whatever happens. */
export interface Terminal {
  /** Takes the alternate screen, hides the cursor, asks for bracketed paste. */
  enter(): void;
  /** Gives the screen back, synchronously. Does nothing when it isn't ours. */
  leave(): void;
  /**
   * Lets signals and uncaught errors end the process again. Until then, after `leave` too, they are only noted: a terminal that is closed sends
   * SIGHUP more than once and fails every write, and whoever left may still be keeping rows that the disk has not taken. Gives the first
   * uncaught error that came after leaving.
   */
  release(): unknown;
  /** Gives the screen back and stops the process, as Ctrl-Z does for others; continues where it was. */
  suspend(): void;
  /** The size now; 80×24 where the terminal doesn't say. */
  size(): Size;
}

/**
 * Owns the terminal's screen. Leaving is synchronous and happens on `leave`, on SIGTERM, SIGHUP and SIGINT, on an uncaught error, on a
 * failed write, and at the latest when the process exits.
 */
export function createTerminal(options: TerminalOptions): Terminal {
  const { stdout, onEnd, onResize, onSuspend, onResume } = options;
  let suspension: Suspension | undefined;
  let unwatch: () => void = () => undefined;
  let late: unknown;

  const giveBack = () => {
    onSuspend();
    writeNow(stdout.fd, leaveScreen);
  };
  const takeAgain = () => {
    writeNow(stdout.fd, enterScreen);
    onResume();
  };
  const leave = () => {
    if (suspension === undefined) return;
    if (!suspension.isSuspended()) writeNow(stdout.fd, leaveScreen);
    suspension.stop();
    suspension = undefined;
    stdout.off('resize', onResize);
  };
  const end = (ending: Ending) => {
    if (suspension === undefined) {
      if (ending.kind === 'error') late ??= ending.error;
      return;
    }
    leave();
    onEnd(ending);
  };

  return {
    enter() {
      if (suspension !== undefined) return;
      suspension = watchSuspension({ giveBack, takeAgain });
      unwatch = watchEndings(end, leave);
      stdout.on('resize', onResize);
      // Never taken off: a write that was still under way may fail later, and Node throws an error that no one hears.
      stdout.on('error', () => end({ kind: 'lost' }));
      writeNow(stdout.fd, enterScreen);
    },
    leave,
    release() {
      leave();
      unwatch();
      return late;
    },
    suspend: () => suspension?.suspend(),
    size: () => ({ columns: stdout.columns || 80, rows: stdout.rows || 24 }),
  };
}
