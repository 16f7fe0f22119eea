import type { Bag } from '../../hole/bags.ts';
import type { Tri } from '../../quantity/tri.ts';
import type { Sampling } from '../sampling.ts';
import { type Pair, relativeDifference } from './pairs.ts';
import type { Assay, AssayValue } from './results-read.ts';

/** A standard's result against its certified value. `z` is in standard deviations, positive where it reads high. */
export interface StandardScore {
  readonly number: string;
  readonly lot: string;
  readonly analyte: string;
  readonly value: number;
  readonly z: number;
  /** Warn from 2 SD, fail from 3 SD. */
  readonly state: 'in' | 'warn' | 'fail';
}

/** Scores of every standard that has a certified value, in the order in which the results came. */
export function standardScores(
  sampling: Sampling,
  bags: readonly Bag[],
  assays: readonly Assay[],
): readonly StandardScore[] {
  const byNumber = new Map(bags.map((bag) => [bag.number, bag]));
  return assays.flatMap((assay) => {
    const bag = byNumber.get(assay.number);
    const standard = sampling.standards.find((each) => bag?.kind === 'standard' && each.lot === bag.material);
    return (standard?.certified ?? []).flatMap(({ analyte, value: certified, sd }) => {
      const value = assay.values[analyte]?.value;
      if (value === undefined || standard === undefined) return [];
      const z = (value - certified) / sd;
      const state = Math.abs(z) >= 3 ? 'fail' : Math.abs(z) >= 2 ? 'warn' : 'in';
      return [{ number: assay.number, lot: standard.lot, analyte, value, z, state } as const];
    });
  });
}

/** A blank's result against its limit. */
export interface BlankResult {
  readonly number: string;
  readonly material: string;
  readonly analyte: string;
  readonly value: number;
  readonly limit: number;
  /** It can't be told where the laboratory's detection limit lies above the limit of the blank. */
  readonly over: Tri;
  readonly belowLimit?: number;
}

/** Every blank that has a limit. */
export function blankResults(
  sampling: Sampling,
  bags: readonly Bag[],
  assays: readonly Assay[],
): readonly BlankResult[] {
  const byNumber = new Map(bags.map((bag) => [bag.number, bag]));
  return assays.flatMap((assay) => {
    const bag = byNumber.get(assay.number);
    const blank = sampling.blanks.find((each) => bag?.kind === 'blank' && each.name === bag.material);
    return (blank?.limits ?? []).flatMap(({ analyte, limit }) => {
      const found = assay.values[analyte];
      if (found === undefined || blank === undefined) return [];
      const { value, belowLimit } = found;
      const over = isOver(found, limit);
      const below = belowLimit === undefined ? {} : { belowLimit };
      return [{ number: assay.number, material: blank.name, analyte, value, limit, over, ...below }];
    });
  });
}

/** `<0.02` lies anywhere from nothing to 0.02: under a limit of 0.02 for certain, under one of 0.01 perhaps. */
function isOver({ value, belowLimit }: AssayValue, limit: number): Tri {
  if (belowLimit === undefined) return value > limit ? 'yes' : 'no';
  return belowLimit > limit ? 'cannot tell' : 'no';
}

/** A field duplicate beside its primary. */
export interface DuplicateResult extends Pair {
  readonly primary: string;
  readonly duplicate: string;
  /** Percent of the mean; undefined where both are nothing. */
  readonly difference?: number;
}

/** Pairs of one analyte of which both have a result over its detection limit. */
export function duplicateResults(
  bags: readonly Bag[],
  assays: readonly Assay[],
  analyte: string,
): readonly DuplicateResult[] {
  const values = new Map(assays.map((assay) => [assay.number, assay.values[analyte]]));
  return bags.flatMap((bag) => {
    if (bag.kind !== 'field duplicate' || bag.of === undefined) return [];
    const a = values.get(bag.of);
    const b = values.get(bag.number);
    if (a === undefined || b === undefined) return [];
    if (a.belowLimit !== undefined || b.belowLimit !== undefined) return [];
    const difference = relativeDifference({ a: a.value, b: b.value });
    return [
      {
        primary: bag.of,
        duplicate: bag.number,
        a: a.value,
        b: b.value,
        ...(difference === undefined ? {} : { difference }),
      },
    ];
  });
}

/** A control chart in text, a line a standard: the middle is its certified value, `:` stand at 2 SD and `|` at 3 SD, `*` is the result. */
export function controlChart(scores: readonly StandardScore[]): readonly string[] {
  const steps = 4;
  const widest = Math.max(0, ...scores.map((each) => each.number.length));
  return scores.map(({ number, z, state }) => {
    const cells = Array.from({ length: 8 * steps + 1 }, (_, index) => markAt(index - 4 * steps, steps));
    const place = Math.round(Math.min(4, Math.max(-4, z)) * steps) + 4 * steps;
    cells[place] = '*';
    const said = state === 'in' ? '' : `  ${state}`;
    return `${number.padEnd(widest)} ${cells.join('')} ${z >= 0 ? '+' : '-'}${Math.abs(z).toFixed(1)} SD${said}`;
  });
}

function markAt(step: number, steps: number): string {
  if (step === 0) return '+';
  if (Math.abs(step) === 2 * steps) return ':';
  return Math.abs(step) === 3 * steps ? '|' : ' ';
}
