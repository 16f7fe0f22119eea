import { setTimeout as pause } from 'node:timers/promises';
import { beforeAll, expect, it } from 'vitest';
import { offsiderBundle } from '../../e2e/support/program.ts';
import { newRig } from '../../e2e/support/rig.ts';
import { WHOLE_HOLE_PROJECT } from '../../support/whole-hole/files.ts';

/** Within a minute: the clock of the header moves once in one. */
const ALONE_MS = 20_000;

let program: string;
beforeAll(async () => {
  program = await offsiderBundle();
});

it('a console that is left alone writes not a byte to the terminal within a minute', async () => {
  const rig = newRig(program, WHOLE_HOLE_PROJECT);
  const pty = rig.open();
  await pty.waitForText('No holes yet');
  await pause(2000);
  const before = pty.bytesReceived();
  await pause(ALONE_MS);
  expect(pty.bytesReceived()).toBe(before);
  await rig.remove();
});
