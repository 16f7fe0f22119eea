/** Degrees from horizontal, negative downwards: −90 is vertically down. Range −90 to 90. */
export type Dip = number & { readonly unit: 'degrees, down negative' };

/** Dip from degrees. Throws RangeError outside −90 to 90. */
export function dip(deg: number): Dip {
  if (!(deg >= -90 && deg <= 90)) throw new RangeError(`dip must be from -90 to 90 degrees, got ${deg}`);
  return deg as Dip;
}

/** `-60.5°`: one decimal, rounded away from horizontal at the half, with a plain hyphen that every terminal has. */
export function formatDip(d: number): string {
  const tenths = Math.round(Math.abs(d) * 10);
  return `${d < 0 && tenths > 0 ? '-' : ''}${(tenths / 10).toFixed(1)}°`;
}
