import { describe, expect, it } from 'vitest';
import { recordingDisk } from './recording-disk.ts';
import { seededNumbers, sweep, type Tally } from './runs.ts';
import { SCENARIOS } from './scenarios.ts';

const HOW = { cuts: 0, cutsAFault: 1, pairs: 2 };

it.each(SCENARIOS.filter(([name]) => name.includes('by the command')))(
  '%s is said and saved where nothing fails',
  async (_, begin) => {
    const start = await begin();
    const before = start.seen.saved.length;
    await start.run?.(recordingDisk(start.medium), start.seen);
    expect(start.seen.saved).toHaveLength(before + 1);
    expect(start.seen.unsaid).toEqual([]);
  },
);

describe.each(SCENARIOS)('%s', (_, begin) => {
  it('loses nothing that was shown as saved and leaves nothing unsaid, whatever fails', async () => {
    const tally: Tally = { points: 0, failures: [] };
    await sweep(await begin(), { ...HOW, every: 17 }, seededNumbers(11), tally);
    expect(tally.failures).toEqual([]);
    expect(tally.points).toBeGreaterThan(15);
  });
});
