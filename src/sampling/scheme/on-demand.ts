import { evaluate, type Reader } from '../../condition/evaluate.ts';
import type { Bag } from '../../hole/bags.ts';
import type { Sampling } from '../sampling.ts';
import type { ControlKind } from '../settings.ts';
import { type StreamState, stream } from '../stream/stream.ts';

/** A logged row as a condition reads it. */
export interface ReadRow {
  readonly fromMm: number;
  readonly toMm: number;
  readonly read: Reader;
}

/** A control that the log asks for, and the number proposed for it: a choice someone has to make. */
export interface ProposedControl {
  readonly kind: ControlKind;
  readonly why: string;
  /** The row that asks for it. */
  readonly fromMm: number;
  readonly toMm: number;
  /** The next number kept for a choice that this kind is one of, else the next number meant for a metre. */
  readonly number: string;
}

/** Numbers looked through for a slot that can be chosen, before a metre's number is taken. */
const NEAR = 10;

/**
 * Controls that the log asks for where none of the kind comes after the row yet. The log is 5 to 15 m behind the rig, so the
 * control goes behind the metres drilled meanwhile, not behind the row. "Can't tell" asks for nothing. `rows` are from the top down.
 */
export function proposedControls(
  sampling: Sampling,
  state: StreamState,
  rows: readonly ReadRow[],
): readonly ProposedControl[] {
  return sampling.onDemand.flatMap(({ when, kind, why }) => {
    const asks = (each: ReadRow) => evaluate(when, each.read) === 'yes';
    const deepestMm = rows.findLast(asks)?.fromMm;
    const row = rows.find((each) => each.fromMm === deepestMm && asks(each));
    if (row === undefined || stoodBehind(state, kind, row.toMm)) return [];
    const ahead = [...stream(sampling, state)];
    if (ahead.slice(0, NEAR).some((each) => each.kind === kind && each.chosen)) return [];
    const slot = ahead.slice(0, NEAR).find((each) => each.oneOf.includes(kind) && !each.chosen);
    const number = (slot ?? ahead.find((each) => each.kind === 'primary'))?.number;
    return number === undefined ? [] : [{ kind, why, fromMm: row.fromMm, toMm: row.toMm, number }];
  });
}

/** True where a control of a kind was issued behind the metre that ends at a depth: bags stand in the order they were issued. */
function stoodBehind(state: StreamState, kind: ControlKind, toMm: number): boolean {
  const place = state.bags.findIndex((bag: Bag) => bag.kind === 'primary' && (bag.toMm ?? 0) >= toMm);
  return place >= 0 && state.bags.slice(place).some((bag) => bag.kind === kind);
}
