/** Types of a column. An instant is ISO 8601 with the offset of the clock that stamped it; a date is the local one of the rig. */
export type ColumnType = 'text' | 'number' | 'integer' | 'boolean' | 'date' | 'instant';

/** One column as it is declared: what every form that is written (CSV, JSON, the contract page) is made from. */
export interface Column<T extends ColumnType = ColumnType> {
  readonly type: T;
  readonly about: string;
  readonly unit?: string;
  /** What an empty cell means. A column without it is never empty. */
  readonly empty?: string;
  /** How "looked, none seen" stands in it. */
  readonly none?: string;
  /** How a result under the detection limit, or over the range, stands in it. */
  readonly belowDetection?: string;
}

/** A column that may be empty. */
export type Optional<C extends Column> = C & { readonly empty: string };

/** Columns by name, in the order in which they are written. */
export type Columns = { readonly [name: string]: Column };

/** A value of a row; `undefined` is an empty cell. */
export type Value = string | number | boolean | undefined;

type ValueOf<T extends ColumnType> = T extends 'number' | 'integer'
  ? number
  : T extends 'boolean'
    ? boolean
    : string;

/** A row of declared columns: every column, in any order, and `undefined` only where the declaration says what an empty cell means. */
export type RowOf<C extends Columns> = {
  readonly [Name in keyof C]: C[Name] extends { readonly empty: string }
    ? ValueOf<C[Name]['type']> | undefined
    : ValueOf<C[Name]['type']>;
};

const of =
  <T extends ColumnType>(type: T) =>
  (about: string, unit?: string): Column<T> => ({ type, about, ...(unit === undefined ? {} : { unit }) });

export const text = of('text');
export const number = of('number');
export const integer = of('integer');
export const yesNo = of('boolean');
export const date = of('date');
export const instant = of('instant');

/** The same column, which may be empty, and what that means. */
export function optional<C extends Column>(column: C, empty: string): Optional<C> {
  return { ...column, empty };
}

/** The place of a row among those of its hole, for keys that nothing else tells apart. */
export const order = (what: string): Column<'integer'> =>
  integer(`Number of the ${what} among those of its hole, from 1, in the order in which they stand here`);

/** A depth along the hole from the collar, in metres. */
export const depth = (about: string): Column<'number'> => number(about, 'm');

/** Metres of whole millimetres, exactly as many decimals as they have; `undefined` stays so. */
export function metresOf<Mm extends number | undefined>(mm: Mm): Mm extends number ? number : undefined {
  return (mm === undefined ? undefined : mm / 1000) as Mm extends number ? number : undefined;
}

/** Kilograms of whole grams; `undefined` stays so. */
export function kilogramsOf<G extends number | undefined>(grams: G) {
  return metresOf(grams);
}

/** A number to so many decimals, without a negative nought. */
export function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}
