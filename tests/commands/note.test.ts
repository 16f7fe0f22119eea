import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
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
    expect((await run(folder, 'note', '--swing')).out).toContain('Added\n  gear list');
    expect((await run(folder, 'note')).out).not.toContain('gear list');
    expect((await run(folder, 'note', 'acknowledge', '--by', 'MTA')).code).toBe(0);
  });

  it('keeps the note of the shift and that of the swing apart, and acknowledges both', async () => {
    const folder = copyOfSample();
    await run(folder, 'note', 'complete', 'rods left in the hole');
    await run(folder, 'note', 'complete', 'swing', '2026-03-12', 'gear list');
    for (const as of [[], ['--html']]) {
      const { out } = await run(folder, 'note', ...as);
      expect(out).toContain('rods left in the hole');
      expect(out).not.toContain('gear list');
    }
    const { out } = await run(folder, 'note', 'acknowledge', '--by', 'MTA');
    expect(out).toContain('note and swing note of RC7_2026-03-14_DAY acknowledged by MTA');
  });

  it('shows what was handed over to a geologist who has begun a shift first, and an earlier one by its shift', async () => {
    const folder = copyOfSample();
    await run(folder, 'note', 'complete', 'rods left in the hole');
    await run(folder, 'activity', 'end');
    const file = join(folder, 'project.json');
    const settings = JSON.parse(readFileSync(file, 'utf8'));
    const [day] = settings.shift.shifts;
    settings.shift.shifts = [
      { ...day, endsAt: '09:00' },
      { name: 'night', startsAt: '09:00', endsAt: '21:00' },
    ];
    writeFileSync(file, JSON.stringify(settings));
    expect((await run(folder, 'activity', 'begin', '--by', 'MTA')).out).toContain('RC7_2026-03-14_NIGHT');
    expect((await run(folder, 'note')).out).toMatch(
      /Completed by \w+ in RC7_2026-03-14_DAY.*rods left in the hole/s,
    );
    await run(folder, 'note', 'acknowledge', '--by', 'MTA');
    expect((await run(folder, 'note')).out).toContain('Draft: not completed yet.');
    const earlier = await run(folder, 'note', '--shift', 'RC7_2026-03-14_DAY');
    expect(earlier.out).toContain('acknowledged by MTA');
  });

  it.each([
    ['note', '--swing', '2026-02-30'],
    ['note', 'complete', 'swing', '2026-99-01', 'gear list'],
    ['plod', '--reconcile', '2026-13-01..2026-14-01'],
    ['plod', '--reconcile', '2026-02-30'],
  ])('knows no day that is not in the calendar: %s %s %s', async (...args) => {
    const { code, err } = await run(copyOfSample(), ...args);
    expect(code).toBeGreaterThan(0);
    expect(err).not.toBe('');
  });
});
