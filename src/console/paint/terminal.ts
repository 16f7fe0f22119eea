import { writeSync } from 'node:fs';
import type { Ending } from './ending.ts';
import type { Size } from './painter.ts';

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
  /** Gives the screen back and stops the process, as Ctrl-Z does for others; continues where it was. */
  suspend(): void;
  /** The size now; 80×24 where the terminal doesn't say. */
  size(): Size;
}

const enterScreen = '\x1b[?1049h\x1b[?25l\x1b[?2004h';
/** Ends a half-written synchronised update first: some terminals show nothing until then. */
const leaveScreen = '\x1b[?2026l\x1b[0m\x1b[?2004l\x1b[?25h\x1b[?1049l';

/** Writes at once, also while the process is dying. A terminal that has gone is no error; a full one is given 200 ms. */
function writeNow(fd: number, text: string): void {
  let left = Buffer.from(text);
  for (let tries = 0; left.length > 0 && tries < 100; tries++)
    try {
      left = left.subarray(writeSync(fd, left));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') return;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2);
    }
}

const endingSignals = ['SIGTERM', 'SIGHUP', 'SIGINT'] as const;

/** A process that isn't stopped by SIGTSTP within this time, in ms, can't be: nobody is there to continue it. */
const stopGrace = 250;

/**
 * Owns the terminal's screen. Leaving is synchronous and happens on `leave`, on SIGTERM, SIGHUP and SIGINT, on an uncaught error, on a
 * failed write, and at the latest when the process exits.
 */
export function createTerminal(options: TerminalOptions): Terminal {
  const { stdout, onEnd, onResize, onSuspend, onResume } = options;
  let place: 'out' | 'in' | 'suspended' = 'out';

  const leave = () => {
    if (place === 'out') return;
    if (place === 'in') writeNow(stdout.fd, leaveScreen);
    place = 'out';
    // Later: other listeners of a signal (Ink's) kill the process at once when they find that they are alone.
    setImmediate(unlisten);
  };
  const end = (ending: Ending) => {
    if (place === 'out') return;
    leave();
    onEnd(ending);
  };
  const suspend = () => {
    if (place !== 'in') return;
    place = 'suspended';
    onSuspend();
    writeNow(stdout.fd, leaveScreen);
    // The default action stops the process; a group without a shell to continue it ignores the signal, so come back by ourselves.
    process.off('SIGTSTP', suspend);
    process.kill(process.pid, 'SIGTSTP');
    setTimeout(resume, stopGrace);
  };
  const resume = () => {
    if (place !== 'suspended') return;
    place = 'in';
    process.on('SIGTSTP', suspend);
    writeNow(stdout.fd, enterScreen);
    onResume();
  };
  const continued = () => {
    // After a SIGSTOP nothing could be given back, but the shell may have changed every mode meanwhile.
    if (place === 'in') {
      onSuspend();
      process.off('SIGTSTP', suspend);
      place = 'suspended';
    }
    resume();
  };

  const onSignal = (signal: NodeJS.Signals) => end({ kind: 'signal', signal });
  const onUncaught = (error: unknown) => end({ kind: 'error', error });
  const onLost = () => end({ kind: 'lost' });
  const canSuspend = process.platform !== 'win32';
  const listen = () => {
    for (const signal of endingSignals) process.on(signal, onSignal);
    process.on('uncaughtException', onUncaught);
    process.on('exit', leave);
    stdout.on('resize', onResize);
    stdout.on('error', onLost);
    if (canSuspend) process.on('SIGTSTP', suspend).on('SIGCONT', continued);
  };
  const unlisten = () => {
    for (const signal of endingSignals) process.off(signal, onSignal);
    process.off('uncaughtException', onUncaught);
    process.off('exit', leave);
    stdout.off('resize', onResize);
    process.off('SIGTSTP', suspend).off('SIGCONT', continued);
    // `onLost` stays: a write that was still under way may fail later, and Node throws an error that nobody hears.
  };

  return {
    enter() {
      if (place !== 'out') return;
      place = 'in';
      listen();
      writeNow(stdout.fd, enterScreen);
    },
    leave,
    suspend: () => (canSuspend ? suspend() : undefined),
    size: () => ({ columns: stdout.columns || 80, rows: stdout.rows || 24 }),
  };
}
