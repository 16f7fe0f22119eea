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

it('edits that follow one another are filed after 200, in a long history after a tenth of it', async () => {
  const folder = newProject();
  const desk = await opened(folder, { after: () => () => {} });
  const filed = () => JSON.parse(readFileSync(join(folder, 'holes/ZQRC001.json'), 'utf8')).history.length;
  let metre = 0;
  const log = async (rows: number): Promise<void> => {
    const submitted = Array.from({ length: rows }, () => {
      const changes = [rowLogged(desk.newId(), metre++)];
      return desk.submit({ what: 'row logged', parts: [{ document: HOLE, changes }] });
    });
    for (const each of submitted) if (each.ok) await each.durable;
  };
  await done(desk, HOLE, holeMade());
  await log(198);
  expect(filed).toThrow('ENOENT');
  await log(1);
  await vi.waitFor(() => expect(filed()).toBe(200));
  await log(2800);
  await desk.snapshot();
  expect(filed()).toBe(3000);
  await log(290);
  await new Promise((turn) => setTimeout(turn, 50));
  expect(filed()).toBe(3000);
  await log(50);
  await vi.waitFor(() => expect(filed()).toBe(3340));
  await desk.close();
});
