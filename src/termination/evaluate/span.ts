/** Depths from one to another, both included; `toMm` may be infinite. */
export type Span = { readonly fromMm: number; readonly toMm: number };

/**
 * Where, from here down, a condition could come to hold or to fail if everything below favoured it: what is logged and
 * drilled already stays as it is. A part that is missing can't happen. Both are bounds: no depth outside can be one.
 */
export type Ahead = { readonly holds?: Span; readonly fails?: Span };

/** From a depth on, without end. */
export function from(fromMm: number): Span {
  return { fromMm, toMm: Number.POSITIVE_INFINITY };
}

/** Bounds made of those that can happen. */
export function aheadOf(holds: Span | undefined, fails: Span | undefined): Ahead {
  return { ...(holds === undefined ? {} : { holds }), ...(fails === undefined ? {} : { fails }) };
}

/** Bounds for all of several conditions. */
export function aheadOfAll(parts: readonly Ahead[]): Ahead {
  return aheadOf(shared(parts.map((part) => part.holds)), hull(parts.map((part) => part.fails)));
}

/** Bounds for any of several conditions. */
export function aheadOfAny(parts: readonly Ahead[]): Ahead {
  return aheadOf(hull(parts.map((part) => part.holds)), shared(parts.map((part) => part.fails)));
}

/** Bounds for the opposite of a condition. */
export function aheadOfNot(part: Ahead): Ahead {
  return aheadOf(part.fails, part.holds);
}

function shared(spans: readonly (Span | undefined)[]): Span | undefined {
  const there = spans.filter((span) => span !== undefined);
  if (there.length < spans.length) return undefined;
  const fromMm = Math.max(...there.map((span) => span.fromMm));
  const toMm = Math.min(...there.map((span) => span.toMm));
  return fromMm <= toMm ? { fromMm, toMm } : undefined;
}

function hull(spans: readonly (Span | undefined)[]): Span | undefined {
  const there = spans.filter((span) => span !== undefined);
  if (there.length === 0) return undefined;
  return {
    fromMm: Math.min(...there.map((span) => span.fromMm)),
    toMm: Math.max(...there.map((span) => span.toMm)),
  };
}
