import { type CheckDigit, checkDigitOf } from './check-digit.ts';

/** How a project's bag numbers are written: a prefix, a serial of fixed length with leading zeros, sometimes a check digit. */
export interface NumberForm {
  /** Capitals and digits that are in front; none of them is the beginning of another. */
  readonly prefixes: readonly string[];
  /** Digits of the serial, the check digit not counted. */
  readonly digits: number;
  readonly checkDigit?: CheckDigit;
}

/** A bag number taken apart: its prefix and its serial, a whole number from 0. */
export interface BagNumber {
  readonly prefix: string;
  readonly serial: number;
}

/** A bag number as it is on the calico. Throws RangeError for a serial that the form has no digits for. */
export function formatBagNumber(form: NumberForm, number: BagNumber): string {
  const serial = String(number.serial).padStart(form.digits, '0');
  if (!hasDigitsFor(form, number.serial))
    throw new RangeError(`serial must be whole and of at most ${form.digits} digits, got ${number.serial}`);
  const check = form.checkDigit === undefined ? '' : checkDigitOf(serial, form.checkDigit);
  return `${number.prefix}${serial}${check}`;
}

function hasDigitsFor(form: NumberForm, serial: number): boolean {
  return Number.isSafeInteger(serial) && serial >= 0 && String(serial).length <= form.digits;
}

/** The text as a bag number of this form, or undefined: other prefix, other length, or a check digit that doesn't fit. */
export function parseBagNumber(form: NumberForm, text: string): BagNumber | undefined {
  const prefix = form.prefixes.find((each) => text.startsWith(each) && hasLength(form, text, each));
  if (prefix === undefined) return undefined;
  const tail = text.slice(prefix.length);
  if (!/^\d+$/.test(tail)) return undefined;
  const serial = tail.slice(0, form.digits);
  if (form.checkDigit !== undefined && tail.slice(form.digits) !== checkDigitOf(serial, form.checkDigit))
    return undefined;
  return { prefix, serial: Number(serial) };
}

function hasLength(form: NumberForm, text: string, prefix: string): boolean {
  return text.length === prefix.length + form.digits + (form.checkDigit === undefined ? 0 : 1);
}

/** How many numbers `to` comes after `from` (negative: before it), or undefined across prefixes. */
export function bagNumberDistance(from: BagNumber, to: BagNumber): number | undefined {
  return from.prefix === to.prefix ? to.serial - from.serial : undefined;
}

/** A pattern that matches a whole line which is a bag number of this form, as a scanner types it (check digit not proved). */
export function bagNumberPattern(form: NumberForm): RegExp {
  const prefixes = form.prefixes.map((each) => each.replace(/[^A-Z0-9]/g, '\\$&')).join('|');
  return new RegExp(`^(?:${prefixes})\\d{${form.digits + (form.checkDigit === undefined ? 0 : 1)}}$`);
}

/**
 * True where digits read off a calico are the end of a number: the last few suffice, or the whole of it with its prefix.
 * Digits longer than the number's own are compared with the whole.
 */
export function endsWithDigits(number: string, digits: string): boolean {
  return digits.length > 0 && number.endsWith(digits);
}

/** True where two texts of equal length differ by one swap of two neighbouring characters. */
export function isTransposed(a: string, b: string): boolean {
  if (a.length !== b.length || a === b) return false;
  const at = [...a].findIndex((character, index) => character !== b[index]);
  return a[at] === b[at + 1] && a[at + 1] === b[at] && a.slice(at + 2) === b.slice(at + 2);
}

/** Numbers from one to another that end in some digits, the first 400 of them. With a check digit every number is looked at. */
export function endingInDigits(
  form: NumberForm,
  first: BagNumber,
  last: BagNumber,
  digits: string,
): readonly string[] {
  const plain = form.checkDigit === undefined && /^\d+$/.test(digits) && digits.length <= form.digits;
  const step = plain ? 10 ** digits.length : 1;
  const start = plain
    ? first.serial + ((Number(digits) - (first.serial % step) + step) % step)
    : first.serial;
  const found: string[] = [];
  for (let serial = start; serial <= last.serial && found.length < MOST; serial += step) {
    const number = formatBagNumber(form, { prefix: first.prefix, serial });
    if (endsWithDigits(number, digits)) found.push(number);
  }
  return found;
}

/** As many as anybody asks for: one that is free is enough. */
const MOST = 400;
