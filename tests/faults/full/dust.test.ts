import { expect, it } from 'vitest';
import { dust, dustLines } from '../../trust/keys/dust.ts';
import { seededNumbers } from '../runs.ts';

const SEED = Number(process.env.OFFSIDER_SEED ?? 20260314);
const KEYS = Number(process.env.OFFSIDER_KEYS ?? 105_000);

it(`${KEYS} keys by chance in windows of every size leave the console on its feet, and show what dust can do (seed ${SEED})`, {
  timeout: 1_800_000,
}, async () => {
  const done = await dust(KEYS, seededNumbers(SEED));
  console.log(
    [
      `${KEYS} keys, slowest ${Math.round(done.slowestMs)} ms, edits that they made:`,
      ...dustLines(done),
    ].join('\n'),
  );
  expect(done.reached.size).toBeGreaterThan(20);
  // A second of work is what a person would call a hang.
  expect(done.slowestMs).toBeLessThan(1000);
});
