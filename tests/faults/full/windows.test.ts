import { win32 } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { openDesk } from '../../../src/desk/desk.ts';
import { errorCode } from '../../../src/files/disk.ts';
import { makeFiles } from '../../../src/files/make-files.ts';
import { HOLE, holeMade, rowLogged } from '../../desk/support/values.ts';
import { operationsOfSitting, seededNumbers, sweep, type Tally } from '../runs.ts';
import { SCENARIOS } from '../scenarios.ts';
import { faultOptions, freshProject } from '../sitting.ts';
import { windowsDisk } from '../windows-disk.ts';

// The program joins paths as it does under Windows: one that is put together by hand shows.
vi.mock('node:path', async (original) => {
  const { win32: windows } = await original<typeof import('node:path')>();
  return { ...windows, default: windows };
});

const SEED = Number(process.env.OFFSIDER_SEED ?? 20260314);
const PROJECTS = ['C:\\work\\project', '\\\\camp\\rig7\\project'];

const tally: Tally = { points: 0, failures: [] };

describe(`the long fault run on a disk as Windows has it, seed ${SEED}`, () => {
  it.each(SCENARIOS)('keeps what was shown as saved, and says what was not: %s', async (name, begin) => {
    expect(win32.sep).toBe('\\');
    for (const [index, project] of PROJECTS.entries()) {
      const before = tally.points;
      const start = await begin(windowsDisk(project));
      await sweep(
        start,
        { cuts: 6, cutsAFault: 4, pairs: 100, every: 1 + index * 3 },
        seededNumbers(SEED),
        tally,
      );
      console.log(`${tally.points - before} fault points in ${project}: ${name}`);
      expect(tally.failures.slice(0, 5)).toEqual([]);
    }
  });

  it('tried at least ten thousand fault points', () => {
    console.log(`${tally.points} fault points, ${tally.failures.length} lost or unsaid, seed ${SEED}`);
    expect(tally.points).toBeGreaterThanOrEqual(10_000);
  });
});

describe('the disk as Windows has it', () => {
  const project = 'D:\\rig\\project';
  const disk = async (readOnly: readonly string[] = []) =>
    windowsDisk(project, new Set(readOnly))(await freshProject(), () => undefined);

  it('takes a name in any case for the same, and refuses names of devices and odd endings', async () => {
    const on = await disk();
    expect(await on.list('d:\\RIG\\Project')).toEqual(['project.json']);
    const code = (path: string) => on.create(path).then(() => 'made', errorCode);
    expect(await code(`${project}\\PROJECT.JSON`)).toBe('EEXIST');
    for (const name of ['con', 'NUL.json', 'com1.txt', 'a.', 'b ', 'a:b', 'a?'])
      expect(await code(`${project}\\${name}`), name).toBe('EINVAL');
    expect(await code('E:\\elsewhere')).toBe('ENOENT');
  });

  it('has no folder sync, and a project on a drive that is not there is refused and not looked for for ever', async () => {
    const start = { medium: await freshProject(), seen: (await SCENARIOS[0]?.[1]())?.seen as never };
    const operations = await operationsOfSitting({ ...start, makeDisk: windowsDisk(project) });
    expect(operations.some(({ name }) => name === 'syncFolder')).toBe(false);
    const made = makeFiles(await disk(), 'E:\\rig', [], { folders: [], files: [] });
    expect(await made.then(() => 'made', errorCode)).toBe('ENOENT');
  });

  it('refuses a rename over a file for a while, which the program waits out', async () => {
    const on = await disk();
    const file = await on.create(`${project}\\new`);
    await file.close();
    await on.rename(`${project}\\new`, `${project}\\project.json`);
    expect(await on.list(project)).toEqual(['project.json']);
  });

  it('a file marked read-only is said with its reason, rows stay in the journal, and nothing is lost', async () => {
    const on = await disk(['ZQRC001.json']);
    const options = {
      ...faultOptions(on, 1),
      machine: { host: 'rig', process: 1, boot: 'b', isRunning: () => false },
    };
    const opened = await openDesk(options);
    if (!opened.ok) throw new Error(opened.findings[0]?.problem);
    const desk = opened.value;
    const submit = async (what: string, changes: ReturnType<typeof holeMade>): Promise<void> => {
      const done = desk.submit({ what, parts: [{ document: HOLE, changes }] });
      expect(done.ok && (await done.durable).ok).toBe(true);
    };
    await submit('made', holeMade());
    // The first time there is no file to be marked.
    expect(await desk.snapshot()).toEqual({ ok: true });
    await submit('logged', [rowLogged(desk.newId(), 0)]);
    const written = await desk.snapshot();
    expect(written).toMatchObject({ ok: false, problem: expect.stringMatching(/may not write there/) });
    await desk.close();
    const again = await openDesk({ ...options, ...faultOptions(on, 2) });
    expect(again.ok && Object.keys(again.value.get(HOLE)?.tables.rows ?? {})).toHaveLength(1);
  });
});
