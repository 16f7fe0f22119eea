import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatLine } from '../../src/files/journal-line.ts';
import { done, opened, projectWithHole } from './support/project.ts';
import { HOLE, rowLogged, seededRandom } from './support/values.ts';

describe('numbers of the journal that a file says', () => {
  it.each([
    ['generation', /"generation": \d+/],
    ['sequence', /"sequence": \d+/],
  ] as const)(
    'a %s as large as a file may hold: rows saved after it are read at the next opening',
    async (name, said) => {
      const { folder } = await projectWithHole();
      const file = join(folder, 'holes/ZQRC001.json');
      writeFileSync(file, readFileSync(file, 'utf8').replace(said, `"${name}": ${2 ** 40 - 1}`));
      for (const metre of [3, 4, 5]) {
        const desk = await opened(folder, { random: seededRandom(60 + metre), idleMs: 100_000 });
        expect((await done(desk, HOLE, [rowLogged(desk.newId(), metre)])).ok).toBe(true);
        // The console is gone without closing: only the journal holds the row.
        const again = await opened(folder, { takeOver: true, random: seededRandom(70 + metre) });
        expect(Object.keys(again.get(HOLE)?.tables.rows ?? {})).toHaveLength(metre + 1);
        expect((await again.close()).ok).toBe(true);
        await desk.close({ abandon: true });
      }
    },
  );

  it('a generation whose next one no opening would read: nothing is called saved', async () => {
    const { folder } = await projectWithHole();
    const last = 999_999_999_999;
    const begins = { generation: last, next: 1, documents: ['hole/ZQRC001'] };
    writeFileSync(join(folder, `journal/${last}.jsonl`), formatLine({ begins }));
    const desk = await opened(folder, { after: () => () => {} });
    expect(await done(desk, HOLE, [rowLogged(desk.newId(), 3)])).toEqual({
      ok: false,
      problem: "the journal can't go on from generation 999999999999: its numbers are used up",
    });
    await desk.close({ abandon: true });
  });
});
