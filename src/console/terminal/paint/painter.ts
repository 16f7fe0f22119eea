import { lineChange } from './line-change.ts';

/** The size of a terminal in cells. */
export interface Size {
  readonly columns: number;
  readonly rows: number;
}

/**
 * What Ink takes for its stdout: in debug mode it writes each whole frame, synchronously, and reads `columns` for its layout. It isn't
 * given resize events: its answer to one is to write cursor movements, and a new render does what is needed.
 */
interface FrameStream {
  readonly columns: number;
  readonly rows: number;
  readonly isTTY: false;
  write(frame: string): boolean;
  on(): void;
  off(): void;
}

/** Turns whole frames into the fewest bytes that make the terminal show them. */
export interface Painter {
  /** Give this to Ink as its stdout. */
  readonly stream: FrameStream;
  /** The terminal has a new size, or its content was lost: the next frame is painted whole. */
  reset(size: Size): void;
  /** Frames are ignored from now on: the screen has been left. */
  close(): void;
  /** Bytes written so far. */
  bytesWritten(): number;
}

/** Synchronised update (DEC private mode 2026): the terminal shows all of it at once; one that doesn't know it ignores it. */
const together = (text: string) => `\x1b[?2026h${text}\x1b[?2026l`;

/** The lines that may be shown: no more than the screen has, and the last cell of the last row never written (it would scroll). */
function visible(frame: string, rows: number): readonly string[] {
  return frame.split('\n').slice(0, rows);
}

/** What to write to turn the screen from one list of lines into another. */
function changes(before: readonly string[], after: readonly string[], { columns, rows }: Size): string {
  let text = '';
  for (let row = 0; row < Math.max(before.length, after.length); row++) {
    const old = before[row] ?? '';
    const now = after[row] ?? '';
    if (old === now) continue;
    const change = lineChange(old, now, row === rows - 1 ? columns - 1 : columns);
    if (change !== undefined) text += `\x1b[${row + 1};${change.column + 1}H${change.text}`;
  }
  return text;
}

/** A painter on a terminal of this size. `write` gets what the terminal is to be sent, once a frame and only when something changed. */
export function createPainter(initial: Size, write: (text: string) => void): Painter {
  let size = initial;
  /** What the screen shows; undefined when that isn't known. */
  let shown: readonly string[] | undefined;
  let closed = false;
  let bytes = 0;

  const paint = (frame: string) => {
    // Ink writes an empty string when it has nothing to say; a frame of ours always has lines.
    if (closed || frame === '') return;
    const lines = visible(frame, size.rows);
    const text = (shown === undefined ? '\x1b[0m\x1b[2J' : '') + changes(shown ?? [], lines, size);
    shown = lines;
    if (text === '') return;
    const framed = together(text);
    bytes += Buffer.byteLength(framed);
    write(framed);
  };

  return {
    stream: {
      get columns() {
        return size.columns;
      },
      get rows() {
        return size.rows;
      },
      isTTY: false,
      write(frame) {
        paint(frame);
        return true;
      },
      on: () => undefined,
      off: () => undefined,
    },
    reset(next) {
      size = next;
      shown = undefined;
    },
    close() {
      closed = true;
    },
    bytesWritten: () => bytes,
  };
}
