/**
 * Depth along the hole from the collar, as integer millimetres. Integers so that 0.1 + 0.2 metres can never
 * make two rows overlap by a rounding error, and equality means equality.
 */
export type Depth = number & { readonly unit: 'mm along hole' };

/** The deepest depth accepted, in metres: no reverse-circulation hole comes near it, a typing slip does. */
export const DEEPEST_M = 5000;

/** Depth from integer millimetres. Throws RangeError unless a safe integer (a programming fault, not bad input). */
export function depthFromMm(mm: number): Depth {
  if (!Number.isSafeInteger(mm)) throw new RangeError(`depth must be whole millimetres, got ${mm}`);
  return (mm + 0) as Depth;
}

/** Depth from metres, rounded to the millimetre. Throws RangeError unless finite and exact in whole millimetres. */
export function depthFromMetres(metres: number): Depth {
  if (!Number.isFinite(metres))
    throw new RangeError(`depth must be a finite number of metres, got ${metres}`);
  return depthFromMm(Math.round(metres * 1000));
}

/** Metres as a number: for arithmetic that leaves the integer world (trigonometry) and for export. */
export function metres(depth: number): number {
  return depth / 1000;
}

/**
 * Depth typed by a person, in metres: `46`, `46.5`, `.5`, up to three decimals.
 * Returns undefined when the text is not a depth from 0 to {@link DEEPEST_M}.
 */
export function parseDepth(text: string): Depth | undefined {
  if (!/^(\d{1,4}(\.\d{1,3})?|\.\d{1,3})$/.test(text)) return undefined;
  const value = Number(text);
  return value <= DEEPEST_M ? depthFromMetres(value) : undefined;
}

/** Metres as the trade writes them, rounded to the millimetre: no decimals when whole, else as many as needed (`46`, `46.5`, `46.125`). */
export function formatDepth(depth: number): string {
  const rounded = Math.round(depth);
  const sign = rounded < 0 ? '-' : '';
  const mm = Math.abs(rounded);
  const whole = Math.floor(mm / 1000);
  const rest = mm % 1000;
  return rest === 0
    ? `${sign}${whole}`
    : `${sign}${whole}.${String(rest).padStart(3, '0').replace(/0+$/, '')}`;
}
