import { describe, expect, it } from 'vitest';
import { activity } from '../../src/commands/activity.ts';
import { check } from '../../src/commands/check.ts';
import { shift } from '../../src/commands/shift.ts';
import { copyOfSample, hear } from './support/outside.ts';

const ID = 'RC7_2026-03-13_DAY';

/** The evening after the sample was left. */
const evening = { nowMs: () => Date.UTC(2026, 2, 14, 11), offsetMin: () => 480 };

async function run(folder: string, lines: string | readonly string[], shiftName = ID) {
  const heard = hear(typeof lines === 'string' ? '' : lines.join('\n'));
  const line = typeof lines === 'string' ? lines : '';
  const code = await activity(
    { ...heard.outside, clock: evening },
    { folder, line, shift: shiftName, keepGoing: true },
  );
  return { code, out: heard.out(), err: heard.err() };
}

describe('offsider activity', () => {
  it('amends an earlier shift by one line, as F8 does', async () => {
    const folder = copyOfSample();
    const { code, out } = await run(folder, 'standby 12:10-12:20 by Ines Falk: no water');
    expect([code, out]).toEqual([
      0,
      expect.stringContaining(`${ID}: Standby 12:10–12:20 on MBRC002A, then crib again`),
    ]);
    const heard = hear();
    await shift(heard.outside, { folder, shift: ID, json: false });
    expect(heard.out()).toMatch(/12:10 +0:10 h +Standby/);
  });

  it('takes lines from a pipe, goes on behind one that is not taken, and gives 1 for it', async () => {
    const { code, out, err } = await run(copyOfSample(), [
      '# evening',
      'crew Bo Hale',
      'lunch 12:00',
      '',
      'end 17:30',
    ]);
    expect(code).toBe(1);
    expect(out.trimEnd().split('\n')).toEqual([
      `${ID}: crew Bo Hale`,
      expect.stringContaining('shift ended at 17:30'),
    ]);
    expect(err).toContain('lunch is not an activity');
  });

  it('names the shifts where it knows none of that name', async () => {
    const { code, err } = await run(copyOfSample(), 'crew Bo', 'RC7_2025-01-01_DAY');
    expect([code, err]).toEqual([2, expect.stringContaining('RC7_2026-03-14_DAY')]);
  });
});

describe('offsider check', () => {
  it('asks for the end of a shift that was left open, until it is recorded', async () => {
    const folder = copyOfSample();
    const found = async () => {
      const heard = hear();
      await check({ ...heard.outside, clock: evening }, { folder, json: false });
      return heard.out();
    };
    expect(await found()).toContain('its end was not recorded: 18:00 is presumed');
    await run(folder, 'end 17:45', 'RC7_2026-03-14_DAY');
    expect(await found()).not.toContain('presumed');
  });
});
