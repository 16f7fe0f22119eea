import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { copyOfSample, hear } from './support/outside.ts';

async function run(folder: string, ...args: readonly string[]) {
  const heard = hear();
  const code = await runCommandLine([...args, '--project', folder], {
    outside: heard.outside,
    openConsole: async () => 0,
  });
  return { code, out: heard.out(), err: heard.err() };
}

describe('offsider note', () => {
  it('for a swing begins with what was done since it began: since its first shift, or the day that is given', async () => {
    const folder = copyOfSample();
    expect((await run(folder, 'note')).out).not.toContain('Swing from');
    expect((await run(folder, 'note', '--swing')).out).toContain('Swing from 2026-03-12\n  3 shifts');
    expect((await run(folder, 'note', '--swing', '2026-03-13', '--html')).out).toContain(
      '<h2>Swing from 2026-03-13</h2><ul><li>2 shifts',
    );
    const { code, err } = await run(folder, 'note', '--swing', 'tomorrow');
    expect([code, err]).toEqual([2, expect.stringContaining('Give the first day of the swing: 2026-03-10.')]);
  });

  it('hands a swing over by its own word, and the next one begins behind it', async () => {
    const folder = copyOfSample();
    const made = await run(folder, 'note', 'complete', 'swing', '2026-03-12', 'gear', 'list');
    expect([made.code, made.out]).toEqual([
      0,
      expect.stringContaining('swing from 2026-03-12, completed by'),
    ]);
    expect((await run(folder, 'note')).out).toContain('Added\n  gear list');
    expect((await run(folder, 'note', 'acknowledge', '--by', 'MTA')).code).toBe(0);
  });
});
