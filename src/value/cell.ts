/** What kinds of thing can be observed in one field of a row. */
export const VALUE_KINDS = [
  'code',
  'level',
  'levels',
  'percents',
  'codes',
  'events',
  'percent',
  'number',
  'flag',
  'text',
] as const;
export type ValueKind = (typeof VALUE_KINDS)[number];

/** An amount in percent; a trace is a named amount, never a number someone chose for it. */
export type Amount = number | 'trace';

/** Looked and saw none, or did not look (or could not). A row stores one of the two wherever it holds no value. */
export type Absence = 'none' | 'not observed';

/** A code beside the first one, with its share of the whole in percent. */
export type Share = { readonly code: string; readonly percent: number };

/** What more is said of one code, by the list it is from: `{ habits: 'DIS' }`. Never empty. */
export type Qualities = { readonly [list: string]: string };

/** What more is said of codes that a cell holds (of a rock or a colour, of the first one), by code. Never empty. */
type Qualified = { readonly qualified?: { readonly [code: string]: Qualities } };

/** Where in its row an event is (no one may know), and what was measured of it, in the unit that the legend gives. */
export type PointEvent = { readonly atMm?: number; readonly number?: number };

/** Codes with what there is of each. */
export type Amounts = { readonly [code: string]: Amount };

/**
 * What a row holds in one field: a value of the field's kind, or an absence. The member that is there names the kind, so
 * that a cell reads well in an editor and decodes without the schema.
 */
export type Cell =
  | { readonly absent: Absence }
  /** One code of a list; beside it, with their shares of the whole, a second and a third, the larger share first. */
  | ({ readonly code: string; readonly second?: Share; readonly third?: Share } & Qualified)
  /** One level of a scale, from 1. */
  | { readonly level: number }
  /** Several codes, each with a level from 1. Never empty. */
  | ({ readonly levels: { readonly [code: string]: number } } & Qualified)
  /** Several codes, each with a percent. Never empty. */
  | ({ readonly percents: { readonly [code: string]: Amount } } & Qualified)
  /** Several codes without amounts. Never empty. */
  | ({ readonly codes: { readonly [code: string]: true } } & Qualified)
  /** Things at a point of the hole, by code: a water strike, the top of fresh rock. Never empty. */
  | { readonly events: { readonly [code: string]: PointEvent } }
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

/** What is beside the first code of a cell, the larger share first. */
export function sharesIn(cell: Extract<Cell, { code: string }>): readonly Share[] {
  return [cell.second, cell.third].flatMap((share) => share ?? []);
}

/** A code with what is beside it: the larger share first, of two alike the one that comes first by its letters. */
export function codeWith(code: string, shares: readonly Share[]): Cell {
  const [second, third] = [...shares].sort((a, b) => b.percent - a.percent || (a.code < b.code ? -1 : 1));
  return { code, ...(second === undefined ? {} : { second }), ...(third === undefined ? {} : { third }) };
}

/** The codes of a cell that holds several, each with its amount; 1 where only that it is there is logged. Nothing of other cells. */
export function amountsIn(cell: Cell | undefined): Amounts {
  if (cell === undefined) return {};
  if ('levels' in cell) return cell.levels;
  if ('percents' in cell) return cell.percents;
  const there = 'codes' in cell ? cell.codes : 'events' in cell ? cell.events : {};
  return Object.fromEntries(Object.keys(there).map((code) => [code, 1]));
}

/** A cell that holds several codes, of one of the kinds that do. */
export function cellOfAmounts(kind: 'levels' | 'percents' | 'codes', amounts: Amounts): Cell {
  if (kind === 'percents') return { percents: amounts };
  if (kind === 'codes')
    return { codes: Object.fromEntries(Object.keys(amounts).map((code) => [code, true])) };
  return {
    levels: Object.fromEntries(Object.entries(amounts).map(([code, level]) => [code, Number(level)])),
  };
}

/** What more is said of each code of a cell. */
export function qualifiedIn(cell: Cell | undefined): { readonly [code: string]: Qualities } {
  return cell !== undefined && 'qualified' in cell ? (cell.qualified ?? {}) : {};
}

/** A cell with what more is said of its codes in place of what was said of them; what is said of nothing it holds is left out. */
export function withQualified(cell: Cell, qualified: { readonly [code: string]: Qualities }): Cell {
  if (!('code' in cell || 'levels' in cell || 'percents' in cell || 'codes' in cell)) return cell;
  const { qualified: _, ...plain } = cell;
  const codes = 'code' in cell ? [cell.code] : Object.keys(amountsIn(cell));
  const kept = Object.entries(qualified).filter(
    ([code, qualities]) => codes.includes(code) && Object.keys(qualities).length > 0,
  );
  return kept.length === 0 ? plain : { ...plain, qualified: Object.fromEntries(kept) };
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
