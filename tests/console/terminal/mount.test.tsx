import { closeSync, openSync } from 'node:fs';
import { PassThrough } from 'node:stream';
import { Text } from 'ink';
import { afterEach, describe, expect, it } from 'vitest';
import type { KeyEvent } from '../../../src/console/terminal/input/keys.ts';
import { type Mounted, mount } from '../../../src/console/terminal/mount.tsx';
import type { Size } from '../../../src/console/terminal/paint/painter.ts';

const cleanUps: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0)) await cleanUp();
});

/** A screen on stand-ins for a 40×10 terminal; what the screen shows is `shown.text`. */
function stand() {
  const fd = openSync(process.platform === 'win32' ? 'NUL' : '/dev/null', 'w');
  const writes: string[] = [];
  const raw: boolean[] = [];
  const stdin = Object.assign(new PassThrough(), { setRawMode: (on: boolean) => raw.push(on) });
  const sink = new PassThrough();
  const stdout = Object.assign(sink, {
    fd,
    columns: 40,
    rows: 10,
    write: (text: string) => writes.push(text) > 0,
  });
  const shown: { text: string; error?: Error } = { text: 'first' };
  const frames: Size[] = [];
  const batches: (readonly KeyEvent[])[] = [];
  const mounted: Mounted = mount({
    stdin,
    stdout,
    render(frame) {
      frames.push(frame);
      if (shown.error !== undefined) throw shown.error;
      return <Text>{shown.text}</Text>;
    },
    onEvents: (events) => batches.push(events),
  });
  cleanUps.push(async () => {
    mounted.stop();
    await mounted.ended;
    mounted.release();
    closeSync(fd);
  });
  return { mounted, stdin, stdout, shown, frames, batches, writes, raw };
}

describe('a mounted screen', () => {
  it('is painted at once, for a frame of the terminal rows less one', () => {
    const { frames, writes } = stand();
    expect(frames).toEqual([{ columns: 40, rows: 9 }]);
    expect(writes.join('')).toContain('first');
  });
  it('has painted the state when rerender returns, and writes nothing when nothing changed', () => {
    const { mounted, shown, writes } = stand();
    shown.text = 'fir5t';
    mounted.rerender();
    expect(writes).toHaveLength(2);
    expect(writes[1]).toBe('\x1b[?2026h\x1b[1;4H5\x1b[?2026l');
    mounted.rerender();
    expect(writes).toHaveLength(2);
    expect(mounted.bytesWritten()).toBe(Buffer.byteLength(writes.join('')));
  });
  it('hands on the key events of one read together', () => {
    const { stdin, batches } = stand();
    stdin.emit('data', Buffer.from('p2\r'));
    expect(batches.map((batch) => batch.length)).toEqual([3]);
  });
  it('paints everything for a new size', () => {
    const { stdout, frames, writes } = stand();
    stdout.columns = 30;
    stdout.emit('resize');
    expect(frames.at(-1)).toEqual({ columns: 30, rows: 9 });
    expect(writes.at(-1)).toContain('first');
  });
  it('ends once, with raw mode off, and paints no more', async () => {
    const { mounted, raw, shown, writes } = stand();
    mounted.stop();
    mounted.stop();
    expect(await mounted.ended).toEqual({ kind: 'stopped' });
    shown.text = 'late';
    mounted.rerender();
    expect(raw).toEqual([true, false]);
    expect(writes).toHaveLength(1);
  });
  it('ends with the error when rendering throws', async () => {
    const { mounted, shown } = stand();
    shown.error = new Error('broken');
    mounted.rerender();
    expect(await mounted.ended).toEqual({ kind: 'error', error: shown.error });
  });
  it('ends as lost when the terminal takes no more output or gives no more input', async () => {
    const deaf = stand();
    deaf.stdout.emit('error', new Error('EIO'));
    expect(await deaf.mounted.ended).toEqual({ kind: 'lost' });
    const mute = stand();
    mute.stdin.emit('end');
    expect(await mute.mounted.ended).toEqual({ kind: 'lost' });
  });
  it('holds signals after it has ended until it is released, and leaves no listener behind then', async () => {
    const events = ['SIGTERM', 'SIGHUP', 'SIGINT', 'SIGTSTP', 'SIGCONT', 'uncaughtException'] as const;
    const count = () => events.map((event) => process.listenerCount(event as 'SIGTERM'));
    const before = count();
    const { mounted } = stand();
    expect(count()).not.toEqual(before);
    mounted.stop();
    await mounted.ended;
    const held = ['SIGTERM', 'SIGHUP', 'SIGINT', 'uncaughtException'] as const;
    for (const event of held)
      expect(process.listenerCount(event as 'SIGTERM')).toBeGreaterThan(before[events.indexOf(event)] ?? 0);
    expect(mounted.release()).toBeUndefined();
    expect(count()).toEqual(before);
  });
});
