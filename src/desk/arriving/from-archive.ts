import type { Result } from '../../finding/finding.ts';
import { looksLikePart } from '../../handover/bundle/parts.ts';
import type { Arrival, Home } from './arrival.ts';
import { fromBundle } from './from-bundle.ts';
import { fromPart } from './from-part.ts';

/** What an archive brings: a whole bundle, or a part of one. */
export function fromArchive(bytes: Uint8Array, file: string, home: Home): Result<Arrival> {
  return looksLikePart(bytes) ? fromPart(bytes, file, home) : fromBundle(bytes, file, home);
}
