import { writeSync } from 'node:fs';

/** Alternate screen, cursor hidden, bracketed paste. */
export const enterScreen = '\x1b[?1049h\x1b[?25l\x1b[?2004h';
/** The way back. Ends a half-written synchronised update first: some terminals show nothing until then. */
export const leaveScreen = '\x1b[?2026l\x1b[0m\x1b[?2004l\x1b[?25h\x1b[?1049l';

/** Writes at once, also while the process is dying. A terminal that has gone is not an error; a full one is given 200 ms. */
export function writeNow(fd: number, text: string): void {
  let left = Buffer.from(text);
  for (let tries = 0; left.length > 0 && tries < 100; tries++)
    try {
      left = left.subarray(writeSync(fd, left));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') return;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2);
    }
}
