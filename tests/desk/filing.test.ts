import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { done, newProject, opened } from './support/project.ts';
import { HOLE, holeMade, rowLogged } from './support/values.ts';

it('a hole’s file is written when a rod is done, or after a minute without an edit; the journal has every row meanwhile', async () => {
  const folder = newProject();
  const waits: number[] = [];
  const desk = await opened(folder, {
    after: (ms) => {
      waits.push(ms);
      return () => {};
    },
  });
  const tables = () => JSON.parse(readFileSync(join(folder, 'holes/ZQRC001.json'), 'utf8')).tables;
  await done(desk, HOLE, holeMade());
  await done(desk, HOLE, [rowLogged(desk.newId(), 0)]);
  expect(waits).toEqual(waits.map(() => 60_000));
  expect(waits.length).toBeGreaterThan(0);
  expect(tables).toThrow('ENOENT');
  const rod = { at: '2026-03-14T08:20:00+08:00', rod: 1, depthMm: 6000 };
  await done(desk, HOLE, [{ put: ['rods', desk.newId()], thing: rod }]);
  await vi.waitFor(() => expect(Object.keys(tables().rods)).toHaveLength(1));
  expect(Object.keys(tables().rows)).toHaveLength(1);
  await desk.close();
});
