import { spawn, spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { thisMachine } from '../../src/files/machine.ts';

it('says that a process is running while it runs and no longer when it has ended', async () => {
  const machine = thisMachine();
  const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);
  const id = child.pid ?? 0;
  expect(machine.isRunning(process.pid)).toBe(true);
  expect(machine.isRunning(id)).toBe(true);
  const ended = new Promise((done) => child.once('close', done));
  child.kill('SIGKILL');
  await ended;
  expect(machine.isRunning(id)).toBe(false);
});

it.runIf(process.platform === 'linux')(
  'says that a process which has ended and was not looked after is not running',
  () => {
    const script = 'sh -c "exit 0" & echo $!; exec sleep 0.4';
    const child = spawn('sh', ['-c', script]);
    return new Promise<void>((done) => {
      child.stdout.once('data', (data) => {
        spawnSync('sleep', ['0.1']);
        expect(thisMachine().isRunning(Number(String(data)))).toBe(false);
        child.kill();
        done();
      });
    });
  },
);

it('names its computer, its process and the same start each time it is asked', () => {
  expect(thisMachine()).toMatchObject({ process: process.pid, boot: thisMachine().boot });
  expect(thisMachine().host).not.toBe('');
});
