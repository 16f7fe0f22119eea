import type { Amount } from '../value/cell.ts';

const AMOUNT = /[,;]|\d+(?:\.\d+)?|\.\d+/y;

/** An amount at a place of the line: `,` is a trace, `;` a half, else digits with or without a point; undefined where none stands. */
export function readAmount(
  text: string,
  at: number,
): { readonly amount: Amount; readonly end: number } | undefined {
  AMOUNT.lastIndex = at;
  const found = AMOUNT.exec(text)?.[0];
  if (found === undefined) return undefined;
  return { amount: amountOf(found), end: at + found.length };
}

/** What is logged often and would take two keys, a trace and a half, has one: neither is beside a digit, nor beside the other. */
function amountOf(typed: string): Amount {
  if (typed === ',') return 'trace';
  return typed === ';' ? 0.5 : Number(typed);
}

/** An amount as it is shortest typed: `,` for a trace, `;` for a half, `.25` for a quarter. */
export function writeAmount(amount: Amount): string {
  if (amount === 'trace') return ',';
  return amount === 0.5 ? ';' : String(amount).replace(/^0\./, '.');
}
