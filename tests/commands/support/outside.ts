import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterEach } from 'vitest';
import { runCommandLine } from '../../../src/commands/command-line/run.ts';
import { bytesFrom } from '../../../src/commands/outside.ts';
import type { Outside } from '../../../src/desk/outside.ts';

/** The sample project as it is committed: never written to. */
export const SAMPLE = join(import.meta.dirname, '../../../sample-projects/mulgara-bend');

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** An empty folder of its own, taken away after the test. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-commands-'));
  made.push(folder);
  return folder;
}

/** A copy of the sample project, taken away after the test. */
export function copyOfSample(): string {
  const folder = join(freshFolder(), 'mulgara-bend');
  cpSync(SAMPLE, folder, { recursive: true });
  return folder;
}

/** A world of which everything said is kept. */
export interface Heard {
  readonly outside: Outside;
  readonly out: () => string;
  readonly err: () => string;
}

/** A world in which it is a minute after the sample was left; `stdin` is what comes in from the pipe. */
export function hear(stdin = ''): Heard {
  let out = '';
  let err = '';
  const writer = (take: (text: string) => void) =>
    ({
      write: (text: string) => {
        take(text);
        return true;
      },
    }) as unknown as NodeJS.WriteStream;
  return {
    outside: {
      clock: { nowMs: () => Date.UTC(2026, 2, 14, 1, 30), offsetMin: () => 480 },
      random: bytesFrom('a test'),
      env: {},
      stdin: Readable.from([stdin]) as unknown as NodeJS.ReadStream,
      stdout: writer((text) => {
        out += text;
      }),
      stderr: writer((text) => {
        err += text;
      }),
    },
    out: () => out,
    err: () => err,
  };
}

/** Runs a command line at a project, with what comes in from the pipe: its exit code and everything said. */
export async function runAt(folder: string, stdin: string, ...args: readonly string[]) {
  const heard = hear(stdin);
  const code = await runCommandLine([...args, '--project', folder], {
    outside: heard.outside,
    openConsole: async () => 0,
  });
  return { code, out: heard.out(), err: heard.err() };
}
