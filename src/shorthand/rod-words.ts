import { readCare } from './rod-care.ts';

/** Words of a rod check beside the last digits; each is alone between spaces. */
export const ROD_WORD = {
  count: /^x(\d{1,2})$/,
  depth: /^@([\d.]+)$/,
  /** The last digits on the first calico of the rod. */
  first: /^first([A-Z0-9-]*\d)$/,
  /** The last digits on the last two calicos, in the order of the row. */
  lastTwo: /^last([A-Z0-9-]*\d),([A-Z0-9-]*\d)$/,
  /** One calico about twice as heavy as the others, or none. */
  double: /^(heavy|even)$/,
  /** Standards, blanks and duplicates that lie in the rod. */
  controls: /^controls(\d{1,2})$/,
  /** The mismatch that it is, by its code; which of its places by its turn, or as it is seen: the metre, or the number on the calico. */
  mend: /^fix:([a-z-]+)(?::(\d{1,2})|=([A-Z0-9-]*\d|[\d.]+-[\d.]+))?$/,
  /** The bags fit: what was read before was read or typed wrong. */
  fits: /^fits$/,
  /** What is asked of the reading was looked at, and it stands. */
  insists: /^=$/,
  digits: /^[A-Z0-9][A-Z0-9-]*$/,
} as const;

/** True of a text whose every word can stand at a rod check. */
export function isRodText(text: string): boolean {
  return text
    .split(/ +/)
    .every(
      (word) => readCare(word) !== undefined || Object.values(ROD_WORD).some((pattern) => pattern.test(word)),
    );
}
