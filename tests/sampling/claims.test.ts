import { expect, test } from 'vitest';
import { LONG_RUN, runs } from '../support/long-run.ts';
import type { Judged } from './claims.ts';
import { days } from './second-rig-day.ts';
import { drill } from './simulator.ts';
import { SLIPS } from './slips.ts';

/** The first seeds of holes that no weight was ever set by. */
const FIRST = { simulator: 31_000_000, 'second rig': 77_000_000 } as const;
const HOLES = runs(2400, 120);

const SAID: Readonly<Record<keyof typeof FIRST, readonly (Judged & { readonly of: string })[]>> = {
  simulator: Array.from({ length: HOLES }, (_, index) =>
    drill(FIRST.simulator + index, SLIPS[index % SLIPS.length] ?? 'none'),
  ).flatMap(({ said = [], slip, seed }) => said.map((each) => ({ ...each, of: `${slip} ${seed}` }))),
  'second rig': (['digits', 'digits and count'] as const)
    .flatMap((reading) => days(FIRST['second rig'], HOLES, reading))
    .flatMap(({ said = [], truth, seed }) => said.map((each) => ({ ...each, of: `${truth} ${seed}` }))),
};
const all = [...SAID.simulator, ...SAID['second rig']];

const untrue = (said: readonly (Judged & { readonly of: string })[]) =>
  said.filter(({ isTrue }) => !isTrue).map(({ code, of }) => `${code}, in truth ${of}`);

test('every sentence on whose a number is, said as good as surely, is true in the world of the simulation', () => {
  const facts = all.filter(({ isFact, tenths }) => isFact && tenths >= 9);
  expect(facts.length).toBeGreaterThan(HOLES / 6);
  expect(untrue(facts)).toEqual([]);
});

test('of sentences said as over 9 in 10, none is untrue there', () => {
  const sure = all.filter(({ tenths }) => tenths >= 9);
  if (LONG_RUN) console.log(`over 9 in 10: ${sure.length}, untrue: ${untrue(sure).join('; ')}`);
  expect(sure.length).toBeGreaterThan(HOLES);
  // The long run takes other holes each time: a slip rarer than any kind supposes may be among thousands of them.
  expect(untrue(sure)).toEqual([]);
});

test('what is said as so many in ten is true at least so often, to three sigma of the count', () => {
  for (let tenths = 1; tenths < 9; tenths++) {
    const said = all.filter((each) => each.tenths === tenths);
    if (said.length < 20) continue;
    const share = said.filter(({ isTrue }) => isTrue).length / said.length;
    if (LONG_RUN) console.log(`${tenths} in 10: ${said.length} said, ${(100 * share).toFixed(1)} % true`);
    const least = tenths / 10 - 3 * Math.sqrt(((tenths / 10) * (1 - tenths / 10)) / said.length);
    expect(share, `${tenths} in 10`).toBeGreaterThanOrEqual(least);
  }
});
