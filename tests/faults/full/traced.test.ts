import { expect, it } from 'vitest';
import { killAgainAndAgain } from '../killing.ts';
import { seededNumbers } from '../runs.ts';

const RUNS = 30;
const CALLS = ['fsync:error=EIO', 'fsync:error=ENOSPC', 'rename:error=EIO', 'unlink:error=EIO'] as const;

/**
 * The real program on the real disk with real system calls that fail: strace makes every so many of them fail, in the
 * child and all its threads. Needs strace, and fails where it is not there.
 */
it.each(CALLS)(
  'a real process whose system calls fail (%s), then killed, loses no row that it had said is saved',
  {
    timeout: 900_000,
  },
  async (call) => {
    const random = seededNumbers(call.length);
    const { saved, refusals, faults } = await killAgainAndAgain(RUNS, random, (run) => [
      'strace',
      '-f',
      '-qq',
      '-o',
      '/dev/null',
      '-e',
      `trace=${call.split(':')[0]}`,
      '-e',
      `inject=${call}:when=${3 + (run % 7)}+${4 + (run % 5)}`,
    ]);
    console.log(
      `${RUNS} runs with ${call}: ${saved} rows said to be saved, ${refusals.length} refusals, ${faults.length} faults`,
    );
    expect(faults).toEqual([]);
    // A call that fails while the project is being opened may have it refused, in words and with nothing changed.
    for (const refusal of refusals) expect(refusal).toMatch(/cannot be (written|opened)/);
    expect(saved).toBeGreaterThan(0);
  },
);
