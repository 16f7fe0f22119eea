import type { Spoiling } from '../../files/hostile.ts';

/** Bytes with some of them spoiled. */
export function spoil(bytes: Uint8Array, how: readonly Spoiling[]): Uint8Array {
  let spoiled = bytes;
  for (const { at, length, into } of how) {
    const start = at % (spoiled.length + 1);
    spoiled = new Uint8Array(
      Buffer.concat([spoiled.subarray(0, start), into, spoiled.subarray(start + length)]),
    );
  }
  return spoiled;
}
