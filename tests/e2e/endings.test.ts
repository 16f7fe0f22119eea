import { constants } from 'node:os';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { WHOLE_HOLE_PROJECT } from '../support/whole-hole/files.ts';
import { offsiderBundle } from './support/program.ts';
import type { Pty } from './support/pty.ts';
import { newRig, type Rig } from './support/rig.ts';

let program: string;
let rig: Rig;
beforeAll(async () => {
  program = await offsiderBundle();
});
beforeEach(() => {
  rig = newRig(program, WHOLE_HOLE_PROJECT);
});
afterEach(() => rig.remove());

/** A console on the log of a hole with a row, all of it saved. */
async function logging(): Promise<Pty> {
  const pty = rig.open();
  await pty.waitForText('No holes yet');
  for (const [keys, seen] of [
    ['n', 'a hole that is not in the program'],
    ['MBRC020\r', 'MBRC020 made.'],
    ['\r', ' 0–1 ▸'],
    ['cdwx6ox3\r', ' 1–2 ▸'],
  ] as const) {
    pty.type(keys);
    await pty.waitForText(seen);
  }
  await pty.waitFor(([header = '']) => header.includes('saved '), '"saved" in the header');
  return pty;
}

function expectGivenBack(pty: Pty): void {
  expect(pty.buffer()).toBe('normal');
  expect(pty.modes()).toEqual({ cursorShown: true, bracketedPaste: false });
}

describe('the terminal is given back and every saved row is in the hole file', () => {
  const rowsInFile = () => Object.keys(JSON.parse(rig.read('holes/MBRC020.json')).tables.rows).length;

  it('on ;q, with exit code 0', async () => {
    const pty = await logging();
    pty.type(';q\r');
    expect(await pty.exited).toEqual({ exitCode: 0, signal: 0 });
    expectGivenBack(pty);
    expect(rowsInFile()).toBe(1);
  });

  it('on SIGTERM, with exit code 143', async () => {
    const pty = await logging();
    pty.kill('SIGTERM');
    expect(await pty.exited).toEqual({ exitCode: 143, signal: 0 });
    expectGivenBack(pty);
    expect(rowsInFile()).toBe(1);
  });

  it('on SIGHUP, of which the program then dies', async () => {
    const pty = await logging();
    pty.kill('SIGHUP');
    expect(await pty.exited).toEqual({ exitCode: 0, signal: constants.signals.SIGHUP });
    expectGivenBack(pty);
    expect(rowsInFile()).toBe(1);
  });

  it('after a throw of its own, with exit code 70 and the fault on the normal screen', async () => {
    const pty = await logging();
    // A clock that can't be read is no one's expected fault: the next key that stamps something throws.
    rig.breakClock();
    pty.type('cl1\r');
    expect(await pty.exited).toEqual({ exitCode: 70, signal: 0 });
    expectGivenBack(pty);
    expect(pty.screen().join('\n')).toContain('Rows shown as saved are safe');
  });
});
