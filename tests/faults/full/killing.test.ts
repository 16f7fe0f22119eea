import { expect, it } from 'vitest';
import { killAgainAndAgain } from '../killing.ts';
import { seededNumbers } from '../runs.ts';

const KILLS = 200;

it('a real process that is killed outright two hundred times loses no row that it had said is saved', {
  timeout: 900_000,
}, async () => {
  const { saved, refusals, faults } = await killAgainAndAgain(KILLS, seededNumbers(200));
  console.log(`${KILLS} kills, ${saved} rows said to be saved, ${faults.length} faults`);
  expect([...faults, ...refusals]).toEqual([]);
  expect(saved).toBeGreaterThan(KILLS);
});
