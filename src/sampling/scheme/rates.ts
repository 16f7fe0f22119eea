import type { Sampling } from '../sampling.ts';
import { CONTROL_KINDS, type ControlKind } from '../settings.ts';
import { slotAt } from './scheme.ts';

/** The longest stretch of numbers that rates are counted over; a scheme whose slots come round later is counted over this. */
const LONGEST = 200_000;

/** Controls of each kind in a hundred primary samples, as the slots give them. A slot chosen late counts as its usual kind. */
export type Rates = Readonly<Record<ControlKind, number>>;

/** Rates of the scheme over its full round of numbers. */
export function ratesOf(sampling: Sampling): Rates {
  const round = Math.min(
    LONGEST,
    sampling.slots.reduce((all, slot) => leastMultiple(all, slot.every), 1),
  );
  const counted = new Map<string, number>();
  for (let serial = 0; serial < round; serial++) {
    const kind = slotAt(sampling.slots, serial)?.kind ?? 'primary';
    counted.set(kind, (counted.get(kind) ?? 0) + 1);
  }
  const primaries = counted.get('primary') ?? 0;
  const percent = (kind: ControlKind): number =>
    primaries === 0 ? Number.POSITIVE_INFINITY : (100 * (counted.get(kind) ?? 0)) / primaries;
  return Object.fromEntries(CONTROL_KINDS.map((kind) => [kind, percent(kind)])) as Rates;
}

/** Greatest whole number that divides both. */
export function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

function leastMultiple(a: number, b: number): number {
  return (a / greatestDivisor(a, b)) * b;
}

/**
 * Published rates, lowest of each range, in percent of samples. Field duplicates 5–10 %, standards (blanks with them) 3–5 %:
 * Abzalov 2008, Exploration and Mining Geology 17, 131–144. All controls together near 20 %: Simón, Control Sample Insertion
 * Rate: Is There an Industry Standard?
 */
export const PUBLISHED_LOWEST = {
  'field duplicate': 5,
  'standard and blank': 3,
} as const;
