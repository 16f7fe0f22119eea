import { type Tri, triAll, triAny, triNot, triOf } from '../quantity/tri.ts';
import type { Condition, FieldCondition } from './condition.ts';

/**
 * What a field says where a condition asks it:
 * codes or texts that are there, a number, none seen, not asked of such a row, or unknown (not observed, not logged).
 */
export type Reading =
  /** `number`: the whole of a field that holds several amounts (sum of percents, highest level). */
  | { readonly says: 'codes'; readonly codes: readonly string[]; readonly number?: number }
  | { readonly says: 'number'; readonly number: number }
  /** A level: its number, and its code where the scale gives it one. */
  | { readonly says: 'level'; readonly number: number; readonly code?: string }
  | { readonly says: 'none' }
  /** The field is not asked of such a row: no comparison with it holds, not even `seen: false`. */
  | { readonly says: 'does not apply' }
  | { readonly says: 'unknown' };

/** Reads a field (or one code `of` it) at the place where a condition is asked. */
export type Reader = (field: string, of?: string) => Reading;

/** Whether a condition holds at a place, three-valued: what was not observed can't be told, and none seen counts as 0. */
export function evaluate(condition: Condition, read: Reader): Tri {
  if ('all' in condition) return triAll(condition.all.map((each) => evaluate(each, read)));
  if ('any' in condition) return triAny(condition.any.map((each) => evaluate(each, read)));
  if ('not' in condition) return triNot(evaluate(condition.not, read));
  return compare(condition, read(condition.field, condition.of));
}

function compare(condition: FieldCondition, reading: Reading): Tri {
  if (reading.says === 'unknown') return 'cannot tell';
  if (reading.says === 'does not apply') return 'no';
  if ('seen' in condition) return triOf((reading.says !== 'none') === condition.seen);
  if ('is' in condition) return triOf(textsOf(reading).includes(condition.is));
  if ('isOneOf' in condition) return triOf(textsOf(reading).some((text) => condition.isOneOf.includes(text)));
  const number = numberOf(reading);
  if (number === undefined) return 'cannot tell';
  if ('atLeast' in condition) return triOf(number >= condition.atLeast);
  if ('moreThan' in condition) return triOf(number > condition.moreThan);
  if ('atMost' in condition) return triOf(number <= condition.atMost);
  return triOf(number < condition.lessThan);
}

function textsOf(reading: Reading): readonly string[] {
  if (reading.says === 'codes') return reading.codes;
  if (reading.says === 'level' && reading.code !== undefined) return [reading.code];
  return [];
}

function numberOf(reading: Reading): number | undefined {
  if (reading.says === 'unknown' || reading.says === 'does not apply') return undefined;
  return reading.says === 'none' ? 0 : reading.number;
}
