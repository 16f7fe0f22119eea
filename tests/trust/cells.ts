import { parse } from 'csv-parse/sync';

/** What makes a spreadsheet take a cell for a formula, as the first character of it: also in its full width. A number is none. */
export const RUN_BY_A_SPREADSHEET = /^(?!-?\d+(\.\d+)?(e[+-]?\d+)?$)[=+\-@\t\r\n＝＋－＠]/;

/** The cells of a CSV, as an independent reader finds them. */
export const cellsOf = (text: string): readonly string[][] => parse(text, { relax_column_count: true });
