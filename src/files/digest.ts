import { createHash } from 'node:crypto';

/** SHA-256 of bytes or of a text's UTF-8 bytes, in lower-case hex; the machine's own, which is ten times as fast as one in JavaScript. */
export function digestOf(data: Uint8Array | string): string {
  return createHash('sha256').update(data).digest('hex');
}
