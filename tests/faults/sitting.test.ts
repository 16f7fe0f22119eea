import { describe, expect, it } from 'vitest';
import { LONG_RUN, part } from '../support/long-run.ts';
import {
  canHappen,
  cutsFor,
  dayAfterACrash,
  FAULTS,
  firstDay,
  momentsOfSitting,
  operationsOfSitting,
  runFaults,
  runPowerCuts,
  type Start,
  seededCut,
  seededNumbers,
  type Tally,
} from './runs.ts';

const STARTS: readonly (readonly [string, () => Promise<Start>])[] = [
  ['a new project', firstDay],
  ['a project whose last console was killed', dayAfterACrash],
];

describe.each(STARTS)('a sitting at the rig, on %s', (_, begin) => {
  it('keeps every row shown as saved when the power goes after any operation', async () => {
    const tally: Tally = { points: 0, failures: [] };
    const random = seededNumbers(20260314);
    const { seen, moments } = await momentsOfSitting(await begin());
    for (const moment of part(moments, 12))
      await runPowerCuts(moment, seen, cutsFor(moment.medium, 2, random), tally);
    expect(tally.failures).toEqual([]);
    expect(tally.points).toBeGreaterThan(LONG_RUN ? 300 : 25);
    expect(seen.saved.length).toBeGreaterThan(10);
  });

  it.each(FAULTS)('keeps every row shown as saved through one %s at any operation', async (fault) => {
    const tally: Tally = { points: 0, failures: [] };
    const random = seededNumbers(7);
    const start = await begin();
    const operations = await operationsOfSitting(start);
    for (const operation of part(
      operations.filter((each) => canHappen(fault, each)),
      8,
    )) {
      const cuts = [operation.number % 2 === 0 ? () => 'drop' as const : seededCut(random, 12)];
      await runFaults(start, new Map([[operation.number, fault]]), cuts, tally);
    }
    expect(tally.failures).toEqual([]);
    expect(tally.points).toBeGreaterThan(LONG_RUN ? 20 : 2);
  });
});
