import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { keepCode } from '../../src/code-cache.ts';
import { freshFolder, SAMPLE } from '../commands/support/outside.ts';
import { offsiderBundle } from './support/program.ts';
import { openPty } from './support/pty.ts';

let built: string;
beforeAll(async () => {
  built = await offsiderBundle();
});

const codeIn = (folder: string): string[] => readdirSync(folder).filter((file) => file.endsWith('.code'));

/** Opens the sample project with a program until this is true, and leaves it. */
async function sitting(dist: string, home: string, until: () => boolean): Promise<void> {
  const pty = openPty({
    command: process.execPath,
    args: [join(dist, 'offsider.js'), '--read-only', SAMPLE],
    env: { HOME: home, XDG_CACHE_HOME: undefined },
  });
  await pty.waitForText('▸');
  for (let tries = 0; tries < 300 && !until(); tries += 1) await pause(100);
  pty.type(';q\r');
  expect(await pty.exited).toMatchObject({ exitCode: 0 });
}

/** A copy of the program in a folder of its own, with its compiled code, and the name of that. */
function installed(): { readonly dist: string; readonly name: string } {
  const dist = freshFolder();
  cpSync(dirname(built), dist, { recursive: true });
  return { dist, name: codeIn(dist)[0] ?? 'none' };
}

/** Whether V8 takes the compiled code in a file for the program beside `dist`, as Node runs it. */
function isAccepted(dist: string, file: string): boolean {
  const script = `
    const { readFileSync } = require('node:fs');
    const [program, file] = process.argv.slice(1);
    const source = require('node:module').wrap(readFileSync(program, 'latin1'));
    const { cachedDataRejected } = new (require('node:vm').Script)(source, { cachedData: readFileSync(file).subarray(32) });
    console.log(cachedDataRejected);`;
  const { stdout } = spawnSync(process.execPath, ['-e', script, join(dist, 'program.js'), file], {
    encoding: 'utf8',
  });
  return stdout.trim() === 'false';
}

describe('the program’s compiled code', () => {
  it('is made beside the program by the first sitting, and made again where it is damaged', async () => {
    const [{ dist, name }, home] = [installed(), freshFolder()];
    const file = join(dist, name);
    rmSync(file);
    await sitting(dist, home, () => codeIn(dist).length > 0);
    expect(isAccepted(dist, file)).toBe(true);
    const damaged = readFileSync(file);
    damaged.fill(0x5a, 1000, 200_000);
    writeFileSync(file, damaged);
    await sitting(dist, home, () => !readFileSync(file).equals(damaged));
    expect(readFileSync(file).equals(damaged)).toBe(false);
    expect(isAccepted(dist, file)).toBe(true);
    expect(readdirSync(home)).toEqual([]);
  });

  it('is made again where V8 refuses it, as after a change of its flags', async () => {
    const [{ dist, name }, home] = [installed(), freshFolder()];
    keepCode([dist], name, Buffer.from('whole, and of another V8'));
    expect(isAccepted(dist, join(dist, name))).toBe(false);
    await sitting(dist, home, () => statSync(join(dist, name)).size > 1_000_000);
    expect(isAccepted(dist, join(dist, name))).toBe(true);
  });

  it('is in the user’s cache folder where the program’s own can’t be written', async () => {
    const [{ dist, name }, home] = [installed(), freshFolder()];
    rmSync(join(dist, name));
    // A folder in the place of the file: not even root can write there.
    mkdirSync(join(dist, name, 'something'), { recursive: true });
    const cache = join(home, '.cache', 'offsider');
    await sitting(dist, home, () => existsSync(join(cache, name)));
    expect(isAccepted(dist, join(cache, name))).toBe(true);
  });
});
