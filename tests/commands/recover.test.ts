import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { openDesk } from '../../src/desk/desk.ts';
import { formatLine } from '../../src/files/journal-line.ts';
import { deskOptions } from '../desk/support/project.ts';
import { freshFolder, hear, SAMPLE } from './support/outside.ts';

async function run(...argv: readonly string[]): Promise<{ readonly said: string; readonly code: number }> {
  const heard = hear('');
  const code = await runCommandLine(argv, { outside: heard.outside, openConsole: async () => 0 });
  return { said: heard.out() + heard.err(), code };
}

const HOLE = { kind: 'hole', id: 'MBRC003' };
const FILE = 'holes/MBRC003.json';

/** A copy of the sample as a console left it that was killed after one more edit; the file of its hole is gone since. */
async function withoutOne(): Promise<string> {
  const folder = join(freshFolder(), 'west');
  cpSync(SAMPLE, folder, { recursive: true });
  const desk = await openDesk(deskOptions(folder, { idleMs: 100_000 }));
  if (!desk.ok) throw new Error('must open');
  const row = desk.value.submit({
    what: 'a remark',
    parts: [{ document: HOLE, changes: [{ patch: ['hole', 'hole'], set: { state: 'suspended' } }] }],
  });
  expect(row.ok && (await row.durable).ok).toBe(true);
  const left = join(freshFolder(), 'west');
  cpSync(folder, left, { recursive: true });
  await desk.value.close();
  rmSync(join(left, 'journal/lock.json'));
  rmSync(join(left, FILE));
  return left;
}

describe('offsider recover', () => {
  it('lists files that are gone with what the journal holds of each; none is fine', async () => {
    const folder = await withoutOne();
    expect(await run('recover', '--project', folder)).toEqual({
      said: `${FILE} is missing\n  a remark\n`,
      code: 1,
    });
    const { said } = await run('recover', '--json', '--project', folder);
    expect(JSON.parse(said)).toEqual([{ name: HOLE, file: FILE, held: ['a remark'] }]);
    expect(await run('recover', '--project', SAMPLE)).toEqual({ said: 'No file is missing.\n', code: 0 });
  });

  it('lets one go with the reason, for good', async () => {
    const folder = await withoutOne();
    const { said, code } = await run('recover', 'mbrc003', '--let-go', 'never drilled', '--project', folder);
    expect({ said, code }).toEqual({
      said: `${FILE} is given up. What the journal had of it is kept in journal/kept/holes-MBRC003.json.let-go.1\n`,
      code: 0,
    });
    expect(readFileSync(join(folder, 'journal/kept/holes-MBRC003.json.let-go.1'), 'utf8')).toContain(
      'a remark',
    );
    expect((await run('recover', '--project', folder)).code).toBe(0);
  });

  it('takes a copy in with receive, and the edit of the journal is on it', async () => {
    const folder = await withoutOne();
    const { said, code } = await run('receive', join(SAMPLE, FILE), '--project', folder);
    expect(said).toContain('hole MBRC003: new here, taken in');
    expect(code).toBe(0);
    const hole = JSON.parse(readFileSync(join(folder, FILE), 'utf8')) as {
      readonly tables: { readonly hole: { readonly hole: { readonly state: string } } };
    };
    expect(hole.tables.hole.hole.state).toBe('suspended');
  });

  it('makes it again only where the journal holds a thing that stands by itself, and says what to do instead', async () => {
    const folder = await withoutOne();
    const { said, code } = await run('recover', FILE, '--restore', '--project', folder);
    expect(said).toContain('the journal holds nothing of MBRC003');
    expect(said).toContain('take a copy of it in with receive');
    expect(code).toBe(2);
  });

  it.each([
    [['recover', 'MBRC001', '--restore'], 'this file is not missing'],
    [['recover', 'MBRC003'], 'what to do with it is missing'],
    [['recover', 'MBRC003', '--restore', '--let-go', 'x'], 'what to do with it is missing'],
    [['recover', 'MBRC003', '--let-go', ''], 'give the reason to give it up'],
  ])('changes nothing for %j: %s', async (argv, problem) => {
    const folder = await withoutOne();
    const { said, code } = await run(...argv, '--project', folder);
    expect(said).toContain(problem);
    expect(code).toBe(2);
    expect((await run('recover', '--project', folder)).code).toBe(1);
  });

  it('says of a file that is older than what was saved in it what can be done, and goes on from it with a reason', async () => {
    const folder = join(freshFolder(), 'west');
    cpSync(SAMPLE, folder, { recursive: true });
    mkdirSync(join(folder, 'journal'), { recursive: true });
    const begins = {
      generation: 1,
      next: 1,
      documents: ['hole/MBRC003'],
      heads: { 'hole/MBRC003': 'f'.repeat(20) },
    };
    writeFileSync(join(folder, 'journal/000001.jsonl'), formatLine({ begins }));
    expect((await run('recover', '--project', folder)).said).toContain(
      `${FILE} is older than when it was last written`,
    );
    for (const option of [[], ['--restore']])
      expect((await run('recover', FILE, ...option, '--project', folder)).said).toContain('--let-go and why');
    const done = await run('recover', FILE, '--let-go', 'the later one was a test', '--project', folder);
    expect([done.code, done.said]).toEqual([0, expect.stringContaining('work goes on from this copy')]);
    expect((await run('recover', '--project', folder)).said).toContain('No file is missing.');
  });
});
