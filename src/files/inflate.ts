import { inflateRawSync } from 'node:zlib';
import type { Inflate } from '../handover/zip/looked-at.ts';

/** Deflated bytes inflated by Node's zlib, which stops at the size that is said: nothing fills the memory. */
export const inflateExactly: Inflate = (packed, bytes) => {
  try {
    const { buffer, engine } = inflateRawSync(packed, {
      maxOutputLength: Math.max(1, bytes),
      info: true,
    }) as unknown as { readonly buffer: Uint8Array; readonly engine: { readonly bytesWritten: number } };
    return buffer.length === bytes && engine.bytesWritten === packed.length ? buffer : undefined;
  } catch {
    return undefined;
  }
};
