import { expect, it } from 'vitest';
import { killAgainAndAgain } from './killing.ts';
import { seededNumbers } from './runs.ts';

it('a real process that is killed outright ten times loses no row that it had said is saved', async () => {
  const { kills, saved, refusals, faults } = await killAgainAndAgain(10, seededNumbers(10));
  expect([...faults, ...refusals]).toEqual([]);
  expect(kills).toBe(10);
  expect(saved).toBeGreaterThan(20);
});
