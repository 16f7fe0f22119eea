/** Units of a mass fraction in parts per million (mg/kg). Other names of one unit stand beside it. */
const PARTS_PER_MILLION: Readonly<Record<string, number>> = {
  ppb: 0.001,
  'μg/kg': 0.001,
  'ug/kg': 0.001,
  'mg/t': 0.001,
  ppm: 1,
  'g/t': 1,
  gpt: 1,
  'mg/kg': 1,
  'μg/g': 1,
  'ug/g': 1,
  'kg/t': 1000,
  '%': 10_000,
  pct: 10_000,
  percent: 10_000,
  'wt%': 10_000,
};

/** Parts per million of a unit as a laboratory writes it, in any case; undefined for one that is not a mass fraction known here. */
export function partsPerMillion(unit: string): number | undefined {
  const plain = unit.normalize('NFKC').trim().toLowerCase();
  return Object.hasOwn(PARTS_PER_MILLION, plain) ? PARTS_PER_MILLION[plain] : undefined;
}

/** How many of `to` one `from` is; 1 where they are the same words. Undefined where one of them is unknown here and they differ. */
export function conversionFactor(from: string, to: string): number | undefined {
  if (from === to) return 1;
  const [one, other] = [partsPerMillion(from), partsPerMillion(to)];
  return one === undefined || other === undefined ? undefined : one / other;
}

/** A value in another unit, without the dust of binary fractions; undefined where the units can't be converted. */
export function convertedTo(value: number, from: string, to: string): number | undefined {
  const factor = conversionFactor(from, to);
  return factor === undefined ? undefined : factor === 1 ? value : Number((value * factor).toPrecision(12));
}

/** A conversion in words: `ppb, counted in ppm (÷ 1000)`; the unit alone where nothing is converted. */
export function conversionWords(from: string, to: string): string {
  const factor = conversionFactor(from, to);
  if (factor === undefined || factor === 1) return from === to ? from : `${from}, counted in ${to}`;
  const sign = factor < 1 ? `÷ ${Number((1 / factor).toPrecision(6))}` : `× ${Number(factor.toPrecision(6))}`;
  return `${from}, counted in ${to} (${sign})`;
}

/** The unit that a heading ends with, as in `Au_ppb` or `Au (g/t)`; undefined where it says none. */
export function unitInHeading(heading: string): string | undefined {
  return heading.split(/[\s_()[\]]+/).find((part) => partsPerMillion(part) !== undefined);
}
