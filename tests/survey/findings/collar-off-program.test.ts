import { expect, test } from 'vitest';
import { checkCollarOnProgram } from '../../../src/survey/checks/collar-off-program.ts';
import { type Grid, gridByCode, type MapPosition } from '../../../src/survey/norths/grids.ts';
import { AT, problemsOf, remediesOf } from '../build.ts';

const GRID = gridByCode(7850) as Grid;
const PROGRAM = [
  { eastM: 745_000, northM: 6_500_000 },
  { eastM: 745_200, northM: 6_500_000 },
];
const check = (at: MapPosition) => checkCollarOnProgram(at, PROGRAM, GRID, { programReachM: 20_000 }, AT);

test('a collar inside the reach of the program raises nothing', () => {
  expect(check({ eastM: 745_400, northM: 6_500_100 })).toEqual([]);
});

test('east and north swapped is named, with how near the program it then lies', () => {
  const findings = check({ eastM: 6_500_000, northM: 745_210 });
  expect(problemsOf(findings)[0]).toContain('km from the nearest planned one');
  expect(remediesOf(findings)).toEqual([
    'Likely east and north swapped: so taken it is 10 m from it. Check and type it again.',
  ]);
});

test('coordinates of the next zone are named', () => {
  // 745,000 E in zone 50 lies at 119.6°E, 0.4° short of zone 51: read in zone 51 it is 174 km east of its central meridian.
  const findings = check({ eastM: 178_000, northM: 6_500_000 });
  expect(remediesOf(findings)[0]).toContain('Likely zone 51, not zone 50');
});

test('feet given for metres are named with the factor', () => {
  const findings = check({ eastM: 745_000 / 0.3048, northM: 6_500_000 / 0.3048 });
  expect(remediesOf(findings)[0]).toContain('Likely feet (× 0.3048)');
});

test('what nothing explains says what to check', () => {
  expect(remediesOf(check({ eastM: 745_000, northM: 6_700_000 }))).toEqual([
    'Check every digit, the grid and the zone against the GPS.',
  ]);
});

test('without a program there is nothing to hold it against', () => {
  expect(checkCollarOnProgram({ eastM: 1, northM: 1 }, [], GRID, { programReachM: 20_000 }, AT)).toEqual([]);
});
