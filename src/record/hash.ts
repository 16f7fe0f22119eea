import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Entry } from './document.ts';
import { canonicalJson } from './json.ts';

/** SHA-256 (FIPS 180-4) of a text's UTF-8 bytes, in lower-case hex. */
export function hashText(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** SHA-256 of bytes, in lower-case hex. */
export function hashBytes(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}

/** Hash of any JSON value: of its canonical text, so that the order of keys does not matter. */
export function hashJson(value: unknown): string {
  return hashText(canonicalJson(value));
}

/** The entry with the hash that belongs to it. */
export function sealed(entry: Omit<Entry, 'hash'>): Entry {
  return { ...entry, hash: hashJson(entry) };
}

/** True where an entry's hash is the hash of what it says. */
export function hashHolds(entry: Entry): boolean {
  const { hash, ...rest } = entry;
  return hash === hashJson(rest);
}
