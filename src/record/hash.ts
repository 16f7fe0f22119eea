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

/** Entries whose hash was found to hold. None is changed once it is made, so it need not be found twice. */
const holding = new WeakSet<Entry>();

/**
 * The entry with the hash that belongs to it. What a merge brings in is left out of its hash: `follows` names the last of it by hash, and
 * that one all before it. So an entry is the same in every copy, however much of the rest a copy held already.
 */
export function sealed(entry: Omit<Entry, 'hash'>): Entry {
  const { incoming: _, ...hashed } = entry;
  return { ...entry, hash: hashJson(hashed) };
}

/** True where an entry's hash is the hash of what it says; `digest` may be a faster SHA-256 than ours. */
export function hashHolds(entry: Entry, digest: (text: string) => string = hashText): boolean {
  if (holding.has(entry)) return true;
  const { hash, incoming: _, ...hashed } = entry;
  const holds = hash === digest(canonicalJson(hashed));
  if (holds) holding.add(entry);
  return holds;
}
