import type { Amount } from '../value/cell.ts';

const AMOUNT = /,|\d+(?:\.\d+)?|\.\d+/y;

/** An amount at a place of the line: `,` is a trace, else digits with or without a point; undefined where none stands. */
export function readAmount(
  text: string,
  at: number,
): { readonly amount: Amount; readonly end: number } | undefined {
  AMOUNT.lastIndex = at;
  const found = AMOUNT.exec(text)?.[0];
  if (found === undefined) return undefined;
  return { amount: found === ',' ? 'trace' : Number(found), end: at + found.length };
}

/** An amount as it is shortest typed: `,` for a trace, `.5` for a half. */
export function writeAmount(amount: Amount): string {
  return amount === 'trace' ? ',' : String(amount).replace(/^0\./, '.');
}
