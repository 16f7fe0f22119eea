/** What kinds of thing can be observed in one field of a row. */
export const VALUE_KINDS = [
  'code',
  'level',
  'levels',
  'percents',
  'percent',
  'number',
  'flag',
  'text',
] as const;
export type ValueKind = (typeof VALUE_KINDS)[number];

/** An amount in percent; a trace is a named amount, never a number somebody chose for it. */
export type Amount = number | 'trace';

/** Looked and saw none, or did not look (or could not). A row stores one of the two wherever it holds no value. */
export type Absence = 'none' | 'not observed';

/**
 * What a row holds in one field: a value of the field's kind, or an absence. The member that is there names the kind, so
 * that a cell reads well in an editor and decodes without the schema.
 */
export type Cell =
  | { readonly absent: Absence }
  /** One code of a list; `second` is a second one with its share of the whole in percent. */
  | { readonly code: string; readonly second?: { readonly code: string; readonly percent: number } }
  /** One level of a scale, from 1. */
  | { readonly level: number }
  /** Several codes, each with a level from 1. Never empty. */
  | { readonly levels: { readonly [code: string]: number } }
  /** Several codes, each with a percent. Never empty. */
  | { readonly percents: { readonly [code: string]: Amount } }
  | { readonly percent: Amount }
  | { readonly number: number }
  /** A thing that is there; where it is not, the cell is `absent: none`. */
  | { readonly flag: true }
  | { readonly text: string };

export const NONE: Cell = { absent: 'none' };
export const NOT_OBSERVED: Cell = { absent: 'not observed' };

/** The kind of value that a cell holds, or undefined where it holds an absence. */
export function kindOf(cell: Cell): ValueKind | undefined {
  return VALUE_KINDS.find((kind) => Object.hasOwn(cell, kind));
}

/** The absence that a cell holds, or undefined where it holds a value. */
export function absenceOf(cell: Cell): Absence | undefined {
  return 'absent' in cell ? cell.absent : undefined;
}

/** True where two cells say the same, the order in which codes were named aside. */
export function sameCell(a: Cell | undefined, b: Cell | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined) return false;
  return flat(a) === flat(b);
}

function flat(value: unknown): string {
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  return `{${Object.entries(value)
    .map(([key, item]) => `${JSON.stringify(key)}:${flat(item)}`)
    .sort()
    .join()}}`;
}
