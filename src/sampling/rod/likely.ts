import type { NamedMismatch } from './rod-check.ts';

/** Said of a mismatch that fits: how likely it is beside the others, and what it would mean. It is never said as a fact. */
export function mostLikely({ name, happened, share }: NamedMismatch): string {
  const tenths = Math.floor(share * 10);
  const odds = tenths >= 9 ? 'over 9 in 10' : tenths < 1 ? 'under 1 in 10' : `${tenths} in 10`;
  return `Most likely ${name} (${odds}): ${happened.charAt(0).toLowerCase()}${happened.slice(1)}`;
}
