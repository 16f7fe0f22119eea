// A small full-screen program on the console's terminal layer: what the tests of that layer and the benchmark run.
import { writeFileSync } from 'node:fs';
import { chordOf, type KeyEvent } from '../../../src/console/terminal/input/keys.ts';
import { setupColour } from '../../../src/console/terminal/paint/colour.ts';
import type { FixtureState } from './fixture-screen.tsx';

setupColour(process.env);
const { mount } = await import('../../../src/console/terminal/mount.tsx');
const { describeEnding } = await import('../../../src/console/terminal/paint/ending.ts');
const { FixtureScreen } = await import('./fixture-screen.tsx');

let state: FixtureState = { line: '', done: [], broken: false };

function reduce(now: FixtureState, event: KeyEvent): FixtureState {
  if (event.kind === 'text') return { ...now, line: now.line + event.text };
  if (event.kind === 'paste') return { ...now, done: [...now.done, `pasted ${event.text}`] };
  const chord = chordOf(event);
  if (chord === 'enter') return { ...now, line: '', done: [...now.done, `entered ${now.line}`] };
  if (chord === 'backspace') return { ...now, line: now.line.slice(0, -1) };
  if (chord === 'ctrl-t') return { ...now, broken: true };
  return { ...now, done: [...now.done, chord ?? ''] };
}

const screen = mount({
  stdin: process.stdin,
  stdout: process.stdout,
  render: (frame) => <FixtureScreen state={state} frame={frame} />,
  onEvents(events) {
    for (const event of events) {
      const chord = chordOf(event);
      if (chord === 'ctrl-q') screen.stop();
      if (chord === 'ctrl-z') screen.suspend();
      if (chord === 'ctrl-e') throw new Error('the fixture was told to fail');
      if (chord === 'ctrl-r') void Promise.reject(new Error('the fixture was told to reject'));
      state = reduce(state, event);
    }
    screen.rerender();
  },
});
const ending = await screen.ended;
// What a console does that keeps rows of a full disk elsewhere before it ends.
const kept = process.env.FIXTURE_KEEPS;
if (kept !== undefined) {
  writeFileSync(kept, 'begun');
  await new Promise((done) => setTimeout(done, 300));
  writeFileSync(kept, 'kept');
}
screen.release();
const { exitCode, message, raise } = describeEnding(ending);
if (message !== undefined) process.stderr.write(`${message}\n`);
if (raise !== undefined) process.kill(process.pid, raise);
else process.exit(exitCode);
