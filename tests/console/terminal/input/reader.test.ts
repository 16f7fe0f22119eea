import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { KeyEvent } from '../../../../src/console/terminal/input/keys.ts';
import { createReader } from '../../../../src/console/terminal/input/reader.ts';

/** A stand-in for a terminal's input that remembers raw mode. */
function stand() {
  const raw: boolean[] = [];
  const stdin = Object.assign(new PassThrough(), { setRawMode: (on: boolean) => raw.push(on) });
  const batches: (readonly KeyEvent[])[] = [];
  const ended = vi.fn();
  const reader = createReader({ stdin, onEvents: (events) => batches.push(events), onEnd: ended });
  return {
    stdin,
    raw,
    batches,
    ended,
    reader,
    send: (text: string) => stdin.emit('data', Buffer.from(text)),
  };
}

describe('reading the terminal', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('publishes the events of one read together, once', () => {
    const { reader, batches, send } = stand();
    reader.start();
    send('12\r');
    expect(batches.map((batch) => batch.length)).toEqual([3]);
  });
  it('believes a lone Escape after 25 ms, not before', () => {
    const { reader, batches, send } = stand();
    reader.start();
    send('\x1b');
    vi.advanceTimersByTime(24);
    expect(batches).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(batches).toEqual([[{ kind: 'key', name: 'escape' }]]);
  });
  it('joins a sequence whose second half comes within that time', () => {
    const { reader, batches, send } = stand();
    reader.start();
    send('\x1b');
    vi.advanceTimersByTime(20);
    send('[A');
    vi.advanceTimersByTime(100);
    expect(batches).toEqual([[{ kind: 'key', name: 'up' }]]);
  });
  it('turns raw mode on at start and off at stop, once each, and forgets what was half-read', () => {
    const { reader, raw, batches, send } = stand();
    reader.start();
    reader.start();
    send('\x1b[');
    reader.stop();
    reader.stop();
    send('x');
    vi.advanceTimersByTime(100);
    expect(raw).toEqual([true, false]);
    expect(batches).toEqual([]);
  });
  it('reads on after a stop and a new start', () => {
    const { reader, batches, send } = stand();
    reader.start();
    reader.stop();
    reader.start();
    send('a');
    expect(batches).toHaveLength(1);
  });
  it('says that the terminal is gone when its input ends or fails, and survives a failure after stop', () => {
    const { reader, stdin, ended } = stand();
    reader.start();
    stdin.emit('error', new Error('EIO'));
    expect(ended).toHaveBeenCalledTimes(1);
    reader.stop();
    stdin.emit('error', new Error('EIO'));
    expect(ended).toHaveBeenCalledTimes(1);
  });
});
