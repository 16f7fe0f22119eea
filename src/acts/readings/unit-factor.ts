import { conversionFactor } from '../../sampling/laboratory/units.ts';

/**
 * What a number in one unit is multiplied by to stand in another: `1e-5 SI` to `1e-3 SI` is 0.01, `%` to `ppm` is 10,000.
 * Undefined where the two measure different things, as far as their names tell.
 */
export function unitFactor(from: string, to: string): number | undefined {
  const share = conversionFactor(plain(from), plain(to));
  if (share !== undefined) return share;
  const a = powerOfTen(from);
  const b = powerOfTen(to);
  return a.of === b.of ? Number((10 ** (a.power - b.power)).toPrecision(12)) : undefined;
}

/** A unit with a power of ten before its name, as instruments print it: `1e-3 SI`, `10^-5 SI`. */
function powerOfTen(unit: string): { readonly power: number; readonly of: string } {
  const [, power, of] = /^(?:1e|10\^)(-?\d{1,2}) (.+)$/i.exec(plain(unit)) ?? [];
  return of === undefined ? { power: 0, of: plain(unit) } : { power: Number(power), of };
}

function plain(unit: string): string {
  return unit.trim().replace(/\s+/g, ' ');
}
