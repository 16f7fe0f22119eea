import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { against, median } from './aim.ts';
import type { Measured } from './terminal.ts';
import { pressAndWait, withProgram } from './terminal.ts';

/** Milliseconds of Up on an empty line, in the middle. */
export function up(program: Measured): Promise<number> {
  return withProgram(program, async (pty) => {
    const times: number[] = [];
    for (let press = 0; press < 40; press += 1) {
      times.push(await pressAndWait(pty, 'up'));
      await pause(5);
    }
    return median(times);
  });
}

/** Milliseconds from Enter on a row to its first paint, of fifty. */
export function enterToPainted(program: Measured): Promise<{ readonly p50: number; readonly least: number }> {
  return withProgram(program, async (pty) => {
    const times: number[] = [];
    for (let row = 0; row < 50; row += 1) {
      for (const key of `py${1 + (row % 3)}`) await pressAndWait(pty, key);
      await pause(20);
      times.push(await pressAndWait(pty, 'enter'));
      await pause(40);
    }
    return { p50: median(times), least: Math.min(...times) };
  });
}

/** Peak memory in MB of a sitting after so many rows; undefined where there is no /proc. */
function peakMb(pid: number): number | undefined {
  const found = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return found === undefined ? undefined : Number(found) / 1024;
}

/** Memory at its peak after 10 rows, and after 2,000 in one sitting. */
export function memory(program: Measured): Promise<void> {
  return withProgram(program, async (pty) => {
    let first: number | undefined;
    for (let row = 1; row <= 2000; row += 1) {
      pty.type(`py${1 + (row % 3)}`);
      await pressAndWait(pty, 'enter');
      if (row === 10) first = peakMb(pty.pid);
    }
    const last = peakMb(pty.pid);
    if (first === undefined || last === undefined) throw new Error('no /proc to read it from');
    console.log(`  peak ${first.toFixed(0)} MB after 10 rows, ${last.toFixed(0)} MB after 2,000`);
    against('peak after 2,000 rows', last, 130, ' MB');
    against('over the peak after 10', last / first, 1.3);
  });
}
