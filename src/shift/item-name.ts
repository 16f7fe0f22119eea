import type { Contract } from './shift-rules.ts';

/**
 * What tells one consumable from another, however it is written: small letters, no hyphens, the last word in the singular. `Hammer bits`
 * and `hammer-bit` are one item. It is compared only, never shown.
 */
export function itemKey(name: string): string {
  return singular(
    name
      .toLowerCase()
      .replace(/[\s-]+/g, ' ')
      .trim(),
  );
}

function singular(words: string): string {
  if (/[^aeiou ]ies$/.test(words)) return `${words.slice(0, -3)}y`;
  if (/(x|ch|sh|ss|z)es$/.test(words)) return words.slice(0, -2);
  return /[^s ]s$/.test(words) ? words.slice(0, -1) : words;
}

/** An item under the first of these names that is the same one, as those of the contract; under its own where none is. */
export function itemAmong(names: readonly string[], item: string): string {
  const key = itemKey(item);
  return names.find((name) => itemKey(name) === key) ?? item;
}

/** True where the contract has a price for the item, and where it pays for no consumables at all: then none is missing. */
export function isPriced({ consumables = [] }: Contract, item: string): boolean {
  return consumables.length === 0 || consumables.some((each) => itemKey(each.item) === itemKey(item));
}

/** The consumables that the contract pays for, in words. */
export const pricedItems = ({ consumables = [] }: Contract): string =>
  consumables.map((each) => each.item).join(', ');
