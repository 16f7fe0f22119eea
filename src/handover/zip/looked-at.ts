import type { Finding } from '../../finding/finding.ts';
import { archiveUnreadable, archiveUnsafe } from '../findings.ts';
import type { ZipLimits } from './limits.ts';

/** Inflates all of the packed bytes into exactly so many, never past them; undefined where it comes out otherwise. */
export type Inflate = (packed: Uint8Array, bytes: number) => Uint8Array | undefined;

/** An archive as it is looked at: its bytes, the file they came in, what may stand in it, how it is inflated. */
export interface LookedAt {
  readonly bytes: Uint8Array;
  readonly file: string;
  readonly limits: ZipLimits;
  /** Why no entry may have this name, in words; undefined where one may. */
  readonly nameFault: (name: string) => string | undefined;
  readonly inflate: Inflate;
}

const AGAIN =
  'Have it sent again, and compare its size and SHA-256 with what the mail says. Nothing was changed.';
const NOT_OURS =
  'Ask who sent it before you open it with anything else. Files of holes and shifts are taken in by themselves too. Nothing was changed.';

/** A finding that an archive is damaged, or one entry of it. */
export function damaged(file: string, problem: string, entry?: string): Finding {
  return archiveUnreadable.at(
    { file, ...(entry === undefined ? {} : { thing: entry }) },
    { problem, remedy: AGAIN },
  );
}

/** A finding that an archive, or one entry of it, is what ours never are. */
export function unsafe(file: string, problem: string, entry?: string): Finding {
  return archiveUnsafe.at(
    { file, ...(entry === undefined ? {} : { thing: entry }) },
    { problem, remedy: NOT_OURS },
  );
}
