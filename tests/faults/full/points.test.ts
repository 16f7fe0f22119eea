import { describe, expect, it } from 'vitest';
import type { Fault } from '../recording-disk.ts';
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
  seededCut,
  seededNumbers,
  type Tally,
} from '../runs.ts';

const SEED = Number(process.env.OFFSIDER_SEED ?? 20260314);
const CUTS_A_FAULT = 8;
const PAIRS = 600;
const LONG = 1_800_000;

const tally: Tally = { points: 0, failures: [] };

describe(`the long fault run, seed ${SEED}`, () => {
  it.each([
    ['a new project', firstDay],
    ['a project whose last console was killed', dayAfterACrash],
  ])('keeps every row shown as saved on %s', { timeout: LONG }, async (_, begin) => {
    const random = seededNumbers(SEED);
    const start = await begin();
    const { seen, moments } = await momentsOfSitting(start);
    for (const moment of moments) await runPowerCuts(moment, seen, cutsFor(moment.medium, 12, random), tally);
    const operations = await operationsOfSitting(start);
    const cuts = () => Array.from({ length: CUTS_A_FAULT }, () => seededCut(random, 12));
    for (const operation of operations)
      for (const fault of FAULTS)
        if (canHappen(fault, operation))
          await runFaults(start, new Map([[operation.number, fault]]), cuts(), tally);
    for (let pair = 0; pair < PAIRS; pair += 1)
      await runFaults(start, twoFaults(random, operations.length), cuts().slice(0, 2), tally);
    expect(tally.failures).toEqual([]);
  });

  it('tried at least ten thousand fault points', () => {
    console.log(`${tally.points} fault points, ${tally.failures.length} with a loss, seed ${SEED}`);
    expect(tally.points).toBeGreaterThanOrEqual(10_000);
  });
});

/** A first fault that the program survives and a second of any kind after it. */
function twoFaults(random: () => number, operations: number): ReadonlyMap<number, Fault> {
  const pick = (from: readonly Fault[]): Fault => from[Math.floor(random() * from.length)] ?? 'EIO';
  const first = Math.floor(random() * operations);
  const second = first + 1 + Math.floor(random() * 30);
  return new Map([
    [first, pick(['EIO', 'ENOSPC', 'short', 'lost sync'])],
    [second, pick(FAULTS)],
  ]);
}
