import { formatDepth, parseDepth } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import type { Amount } from '../value/cell.ts';
import type { PointTyped } from './said.ts';

const AMOUNT = /[,;]|\d+(?:\.\d+)?|\.\d+/y;

/** An amount at a place of the line: `,` is a trace, `;` a half, else digits with or without a point; undefined if there is none. */
export function readAmount(
  text: string,
  at: number,
): { readonly amount: Amount; readonly end: number } | undefined {
  AMOUNT.lastIndex = at;
  const found = AMOUNT.exec(text)?.[0];
  if (found === undefined) return undefined;
  return { amount: amountOf(found), end: at + found.length };
}

/** A depth behind @ at a place of the line: metres, or what comes after the point in the row's metre; undefined if there is none. */
export function readPoint(
  text: string,
  at: number,
): { readonly at: PointTyped; readonly end: number } | undefined {
  const found = /^@(\d{1,4}(?:\.\d{1,3})?|\.\d{1,3})/.exec(text.slice(at))?.[1];
  const mm = found === undefined ? undefined : parseDepth(found);
  if (found === undefined || mm === undefined) return undefined;
  return { at: { mm, isTail: found.startsWith('.') }, end: at + 1 + found.length };
}

/** A depth behind @ as short as it can be in its row. */
export function writePoint(atMm: number, interval: Interval | undefined): string {
  const tail = formatDepth(atMm % 1000).replace(/^0/, '');
  const short = { mm: atMm % 1000, isTail: true };
  if (tail.startsWith('.') && interval !== undefined && pointIn(short, interval) === atMm) return `@${tail}`;
  return `@${formatDepth(atMm)}`;
}

/** The depth that is meant in a row, in millimetres; undefined where none in it is, or more than one could be. */
export function pointIn({ mm, isTail }: PointTyped, { fromMm, toMm }: Interval): number | undefined {
  if (!isTail) return mm >= fromMm && mm < toMm ? mm : undefined;
  const metre = Math.floor(fromMm / 1000) * 1000;
  const meant: number[] = [];
  for (let each = metre + mm; each < toMm; each += 1000) if (each >= fromMm) meant.push(each);
  return meant.length === 1 ? meant[0] : undefined;
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
