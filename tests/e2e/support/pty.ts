import { type IPty, spawn } from '@lydell/node-pty';
import headless, { type Terminal } from '@xterm/headless';
import { bytesOf } from './key-bytes.ts';

/** How a program is started in the terminal. */
export interface PtyOptions {
  readonly command: string;
  readonly args?: readonly string[];
  readonly cwd?: string;
  /** Laid over this process's environment; undefined takes a name out. CI is always taken out: Ink changes its ways under it. */
  readonly env?: Readonly<Record<string, string | undefined>>;
  readonly columns?: number;
  readonly rows?: number;
}

/** A program in a real pseudo-terminal, and the terminal's screen as a person sees it. */
export interface Pty {
  readonly pid: number;
  /** The lines of the screen, trailing spaces taken off. */
  screen(): readonly string[];
  /** The screen that is up: `alternate` while a full-screen program has it. */
  buffer(): 'normal' | 'alternate';
  /** What the terminal was told to do: cursor shown, bracketed paste asked for. */
  modes(): { readonly cursorShown: boolean; readonly bracketedPaste: boolean };
  /** Presses named keys (see key-bytes.ts), or types any other text as it is, each in a write of its own. */
  press(...keys: readonly string[]): void;
  /** Sends text in one write: a burst. */
  type(text: string): void;
  /** Waits until the screen satisfies the predicate; fails with the screen after `ms`. */
  waitFor(predicate: (screen: readonly string[]) => boolean, what: string, ms?: number): Promise<void>;
  /** Waits until the screen shows a text. */
  waitForText(text: string, ms?: number): Promise<void>;
  resize(columns: number, rows: number): void;
  /** Sends a signal to the program, if it still runs; SIGKILL unless told otherwise. */
  kill(signal?: NodeJS.Signals): void;
  /** Takes the terminal away from under the program, as a closed window or a lost connection does. */
  hangUp(): void;
  /** Settles when the program has ended and all it wrote is on the screen. */
  readonly exited: Promise<{ readonly exitCode: number; readonly signal: number }>;
  /** Bytes received so far. */
  bytesReceived(): number;
  /** Everything received so far, as text. */
  received(): string;
  /** Calls back with each piece as it arrives, before the screen has taken it in. Returns what undoes it. */
  onData(listener: (data: string) => void): () => void;
}

/** This process's environment with changes, without CI and colour wishes of the machine that runs the tests. */
function environment(changes: PtyOptions['env']): Record<string, string> {
  const wanted = {
    ...process.env,
    ...Object.fromEntries(
      ['CI', 'CONTINUOUS_INTEGRATION', 'NO_COLOR', 'FORCE_COLOR', 'NODE_OPTIONS'].map((name) => [
        name,
        undefined,
      ]),
    ),
    TERM: 'xterm-256color',
    ...changes,
  };
  return Object.fromEntries(
    Object.entries(wanted).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  );
}

const running = new Set<IPty>();
process.on('exit', () => {
  for (const child of running) child.kill('SIGKILL');
});

/** Modes that the headless terminal obeys and keeps no public record of. */
interface Modes {
  cursorShown: boolean;
  /** Inside a synchronised update (DEC 2026). */
  updating: boolean;
}

/** Keeps those modes as the terminal is told them. */
function followModes(terminal: Terminal): Modes {
  const modes: Modes = { cursorShown: true, updating: false };
  for (const [final, on] of [
    ['h', true],
    ['l', false],
  ] as const)
    terminal.parser.registerCsiHandler({ prefix: '?', final }, (parameters) => {
      if (parameters.includes(25)) modes.cursorShown = on;
      if (parameters.includes(2026)) modes.updating = on;
      return false;
    });
  return modes;
}

/** The lines on the screen, trailing spaces taken off. */
function screenOf(terminal: Terminal): readonly string[] {
  const { active } = terminal.buffer;
  return Array.from(
    { length: terminal.rows },
    (_, row) => active.getLine(active.baseY + row)?.translateToString(true) ?? '',
  );
}

/** A `waitFor` that looks again whenever the terminal has taken something in, and gives up when the program has ended. */
function waiter(terminal: Terminal, modes: Modes, ended: Promise<unknown>): Pty['waitFor'] {
  return (predicate, what, ms = 30_000) =>
    new Promise((resolve, reject) => {
      const done = () => {
        clearTimeout(timer);
        parsed.dispose();
      };
      const fail = (why: string) => {
        done();
        reject(new Error(`${why} without ${what}. The screen:\n${screenOf(terminal).join('\n')}`));
      };
      const look = () => {
        // A frame may arrive in pieces: a person sees nothing of it before its synchronised update ends.
        if (modes.updating || !predicate(screenOf(terminal))) return;
        done();
        resolve();
      };
      const parsed = terminal.onWriteParsed(look);
      const timer = setTimeout(() => fail(`${ms} ms passed`), ms);
      look();
      void ended.then(() => {
        look();
        fail('the program ended');
      });
    });
}

/** Starts a program in a pseudo-terminal (100×30 unless told otherwise). */
export function openPty(options: PtyOptions): Pty {
  const { command, args = [], cwd = process.cwd(), env, columns = 100, rows = 30 } = options;
  const terminal = new headless.Terminal({ cols: columns, rows, allowProposedApi: true, scrollback: 1000 });
  const child = spawn(command, [...args], { cols: columns, rows, cwd, env: environment(env) });
  running.add(child);
  const pieces: string[] = [];
  const listeners = new Set<(data: string) => void>();
  let bytes = 0;
  const modes = followModes(terminal);
  child.onData((data) => {
    bytes += Buffer.byteLength(data);
    pieces.push(data);
    for (const listener of listeners) listener(data);
    terminal.write(data);
  });
  const exited = new Promise<{ exitCode: number; signal: number }>((resolve) => {
    child.onExit(({ exitCode, signal }) => {
      running.delete(child);
      // An empty write calls back when everything before it is on the screen.
      terminal.write('', () => resolve({ exitCode, signal: signal ?? 0 }));
    });
  });

  const screen = () => screenOf(terminal);
  const waitFor = waiter(terminal, modes, exited);

  return {
    pid: child.pid,
    screen,
    buffer: () => terminal.buffer.active.type,
    modes: () => ({
      cursorShown: modes.cursorShown,
      bracketedPaste: terminal.modes.bracketedPasteMode,
    }),
    press(...keys) {
      for (const key of keys) child.write(bytesOf(key));
    },
    type: (text) => child.write(text),
    waitFor,
    waitForText: (text, ms) =>
      waitFor((lines) => lines.some((line) => line.includes(text)), `"${text}" on the screen`, ms),
    resize(newColumns, newRows) {
      terminal.resize(newColumns, newRows);
      child.resize(newColumns, newRows);
    },
    kill(signal = 'SIGKILL') {
      if (running.has(child)) process.kill(child.pid, signal);
    },
    hangUp: () => (child as IPty & { destroy(): void }).destroy(),
    exited,
    bytesReceived: () => bytes,
    received: () => pieces.join(''),
    onData(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
