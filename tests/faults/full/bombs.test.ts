import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { copyIn } from '../../../src/files/read-copy.ts';
import { SAMPLE } from '../../commands/support/outside.ts';
import { BOMBS, openAndClose, PLACES, projectWith } from '../../trust/places.ts';

/** Milliseconds of this processor: what else the machine does is not a fault of the program's. */
async function costOf(run: () => unknown): Promise<number> {
  const before = process.cpuUsage();
  await run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const sample = JSON.parse(readFileSync(join(SAMPLE, 'holes/MBRC003.json'), 'utf8'));
const entry = sample.history[3];
const row = Object.values(sample.tables.rows)[5] as object;
const many = <T>(count: number, make: (index: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, index) => make(index));
const nested = (depth: number): unknown => (depth === 0 ? 1 : { a: nested(depth - 1) });
const table = (count: number, make: (index: number) => unknown) =>
  Object.fromEntries(many(count, (index) => [`k3f9-${100_000 + index}`, make(index)]));
const withTables = (tables: object): string =>
  JSON.stringify({ ...sample, tables: { ...sample.tables, ...tables } });
const withHistory = (history: unknown): string => JSON.stringify({ ...sample, history });

/** Files made to keep whoever reads them busy. */
const FILES: Readonly<Record<string, () => string>> = {
  '40,000 misshapen rows': () =>
    withTables({ rows: table(40_000, (index) => ({ fromMm: 'x', odd: index })) }),
  '40,000 rows of another kind each': () => withTables({ rows: table(40_000, (index) => [index]) }),
  'a hole of 60 MB': () => withTables({ rows: table(90_000, () => row) }),
  'a hole as large as is read': () => withTables({ rows: table(34_000, () => row) }),
  '200,000 misshapen entries': () => withHistory(many(200_000, () => ({ x: 1 }))),
  'an entry that merges 500,000 misshapen ones': () =>
    withHistory([{ ...entry, merged: many(500_000, () => ({})) }]),
  'entries within entries, each misshapen': () => {
    const inner = (depth: number): object =>
      depth === 0 ? { x: 1 } : { ...entry, merged: many(40, () => inner(depth - 1)) };
    return withHistory([inner(3)]);
  },
  'changes that fit none of three shapes': () =>
    withHistory([{ ...entry, changes: many(400_000, () => ({ put: 1 })) }]),
  'nested to the limit, again and again': () => withTables({ rows: table(20_000, () => nested(58)) }),
  'nested past the limit': () => `${'['.repeat(8_000_000)}`,
  'a million names given twice': () => `{${many(1_000_000, () => '"a":1').join(',')}}`,
  'a million members that are not known': () =>
    JSON.stringify({ ...sample, ...table(1_000_000, (index) => index) }),
  'one name of 20 MB': () => JSON.stringify({ ...sample, ['x'.repeat(20_000_000)]: 1 }),
  'thirty million line feeds': () => `{}${'\n'.repeat(30_000_000)}x`,
};

describe('a file made to keep whoever reads it busy', () => {
  it.each(Object.keys(FILES))('is read or refused within two seconds: %s', async (name) => {
    const bytes = new TextEncoder().encode(FILES[name]?.() ?? '');
    const cost = await costOf(() => copyIn(bytes, 'holes/MBRC003.json'));
    console.log(`${Math.round(cost)} ms, ${Math.round(bytes.length / 1e6)} MB: ${name}`);
    expect(cost).toBeLessThan(2000);
  });
});

describe.each(PLACES)('in the place of %s', (place) => {
  it.each(Object.keys(BOMBS))('%s costs less than a second', async (what) => {
    for (const write of [false, true]) {
      const folder = projectWith(place, BOMBS[what] ?? (() => {}));
      expect(await costOf(() => openAndClose(folder, write))).toBeLessThan(1000);
    }
  });
});
