import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { bundleOffsider, type Program } from '../../e2e/support/program.ts';
import { newRig } from '../../e2e/support/rig.ts';
import { WHOLE_HOLE_PROJECT } from '../../support/whole-hole/files.ts';

/** Within a minute: the clock of the header moves once in one. */
const ALONE_MS = 20_000;

let program: Program;
beforeAll(async () => {
  program = await bundleOffsider();
});
afterAll(() => program.remove());

it('a console that is left alone writes not a byte to the terminal within a minute', async () => {
  const rig = newRig(program.path, WHOLE_HOLE_PROJECT);
  const pty = rig.open();
  await pty.waitForText('No holes yet');
  await pause(2000);
  const before = pty.bytesReceived();
  await pause(ALONE_MS);
  expect(pty.bytesReceived()).toBe(before);
  await rig.remove();
});
