import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { openPty, type Pty, type PtyOptions } from '../e2e/support/pty.ts';

/** A program to be measured in a real pseudo-terminal, and how to see that it is up. */
export interface Measured extends PtyOptions {
  readonly ready: (screen: readonly string[]) => boolean;
}

/** The echo program that every key-to-paint figure is beside. */
export const bareEcho: Measured = {
  command: process.execPath,
  args: [join(import.meta.dirname, 'echo.mjs')],
  ready: (screen) => screen[0] === 'ready',
};

/** The value below which this share of the sorted values lies (nearest rank). */
function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

/** Opens a program, waits until it is up, hands it over, and ends it. */
export async function withProgram<T>(program: Measured, use: (pty: Pty) => Promise<T>): Promise<T> {
  const pty = openPty(program);
  try {
    await pty.waitFor(program.ready, `${program.command} ready`);
    return await use(pty);
  } finally {
    pty.kill();
    await pty.exited;
  }
}

/** Presses a key and waits for the first bytes that come back: how long that took, in ms. */
export function pressAndWait(pty: Pty, key: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(
      () => reject(new Error(`nothing was painted for ${JSON.stringify(key)}`)),
      10_000,
    );
    const start = performance.now();
    const undo = pty.onData(() => {
      const took = performance.now() - start;
      clearTimeout(timer);
      undo();
      resolve(took);
    });
    pty.press(key);
  });
}

/** Key to paint: milliseconds, and what a key costs in bytes. */
export interface KeyToPaint {
  readonly p50: number;
  readonly p95: number;
  readonly p99: number;
  readonly bytesAKey: number;
  /** Bytes from the start until the program was up: its first full frame. */
  readonly firstFrameBytes: number;
}

/** Keys pressed before the figures count, so that the compiler has seen the code. */
const warmUp = 100;

/**
 * From a key written to the pseudo-terminal to the first bytes of its paint, for each of `keys` in turn (every one must paint), 5 ms
 * apart, after 100 uncounted ones of the same.
 */
export function keyToPaint(program: Measured, keys: readonly string[]): Promise<KeyToPaint> {
  return withProgram(program, async (pty) => {
    const firstFrameBytes = pty.bytesReceived();
    const press = async (key: string) => {
      const took = await pressAndWait(pty, key);
      await pause(5);
      return took;
    };
    for (let index = 0; index < warmUp; index++) await press(keys[index % keys.length]!);
    const before = pty.bytesReceived();
    const times: number[] = [];
    for (const key of keys) times.push(await press(key));
    const bytesAKey = (pty.bytesReceived() - before) / keys.length;
    const sorted = times.toSorted((a, b) => a - b);
    const [p50, p95, p99] = [0.5, 0.95, 0.99].map((share) => quantile(sorted, share));
    return { p50: p50!, p95: p95!, p99: p99!, bytesAKey, firstFrameBytes };
  });
}

/** CPU time of a process so far, in ms: user and system, from /proc, in ticks of 10 ms; undefined where there is no /proc. */
function cpuMs(pid: number): number | undefined {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
    return (Number(fields[11]) + Number(fields[12])) * 10;
  } catch {
    return undefined;
  }
}

/** What a program that is left alone writes and burns in `ms` milliseconds, from 2 s after it is up. V8 tidies its heap once in the first 30 s (30 ms). */
export function idle(
  program: Measured,
  ms: number,
): Promise<{ readonly bytes: number; readonly cpuMs: number | undefined }> {
  return withProgram(program, async (pty) => {
    await pause(2000);
    const bytes = pty.bytesReceived();
    const cpu = cpuMs(pty.pid);
    await pause(ms);
    const after = cpuMs(pty.pid);
    const burnt = cpu === undefined || after === undefined ? undefined : after - cpu;
    return { bytes: pty.bytesReceived() - bytes, cpuMs: burnt };
  });
}

/** Median milliseconds from starting a program to its first screen, and of a bare `node -e 0` started in turn with it. */
export async function firstPaint(
  program: Measured,
  rounds = 15,
): Promise<{
  readonly paintMs: number;
  readonly bareMs: number;
  readonly ratio: number;
  readonly least: number;
}> {
  const paints: number[] = [];
  const bares: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const bareStart = performance.now();
    await openPty({ ...program, command: process.execPath, args: ['-e', '0'] }).exited;
    bares.push(performance.now() - bareStart);
    const start = performance.now();
    await withProgram(program, async () => void paints.push(performance.now() - start));
  }
  const median = (values: readonly number[]) =>
    quantile(
      values.toSorted((a, b) => a - b),
      0.5,
    );
  const paintMs = median(paints);
  const bareMs = median(bares);
  return { paintMs, bareMs, ratio: paintMs / bareMs, least: Math.min(...paints) / Math.min(...bares) };
}
