import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesFrom, realOutside } from '../../src/commands/outside.ts';
import { freshFolder } from './support/outside.ts';

const world = (env: Record<string, string>) =>
  realOutside({ env, stdin: {}, stdout: {}, stderr: {} } as unknown as NodeJS.Process);

describe('the world around the program', () => {
  it('has a clock that is read at each look where a file stands in for it', () => {
    const file = join(freshFolder(), 'clock');
    const { clock } = world({ OFFSIDER_CLOCK_FILE: file });
    writeFileSync(file, '2026-03-14T07:42:10+08:00\n');
    expect([clock.nowMs(), clock.offsetMin()]).toEqual([Date.UTC(2026, 2, 13, 23, 42, 10), 480]);
    writeFileSync(file, '2026-03-14T07:43:10+08:00');
    expect(clock.nowMs()).toBe(Date.UTC(2026, 2, 13, 23, 43, 10));
  });

  it('has the real clock with its offset where none does', () => {
    const before = Date.now();
    const { clock } = world({});
    expect(clock.nowMs()).toBeGreaterThanOrEqual(before);
    expect(Object.is(clock.offsetMin(), -new Date().getTimezoneOffset() + 0)).toBe(true);
  });

  it('gives bytes that differ from run to run, unless a seed is set', () => {
    expect(world({}).random(16)).not.toEqual(world({}).random(16));
    expect(world({ OFFSIDER_SEED: 'a' }).random(16)).toEqual(world({ OFFSIDER_SEED: 'a' }).random(16));
  });
});

describe('bytes from a seed', () => {
  it('are as many as asked for, the same from the same seed, and not repeated', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 1, max: 100 }), (seed, bytes) => {
        const one = bytesFrom(seed);
        const other = bytesFrom(seed);
        const first = one(bytes);
        expect(first).toHaveLength(bytes);
        expect(other(bytes)).toEqual(first);
        expect(one(32)).not.toEqual(bytesFrom(seed)(32));
      }),
    );
  });
});
