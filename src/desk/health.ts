import type { Stamp } from '../quantity/stamp.ts';
import type { Deed } from '../record/document.ts';

/**
 * How safe the work is. `safe`: everything is on the medium. `saving`: on its way. `unsafe`: the disk refused; rows are
 * in memory only and it is tried again. `read only`: nothing can be saved from this console.
 */
export interface Health {
  readonly state: 'safe' | 'saving' | 'unsafe' | 'read only';
  /** How many edits are not on the medium, and which, oldest first. */
  readonly unsafeEdits: number;
  readonly waiting: readonly Deed[];
  /** Why, in words, when unsafe or read only. */
  readonly reason?: string;
  /** When the last edit was known to be on the medium. */
  readonly savedAt?: Stamp;
}

/** What came of saving one edit. After a refusal the edit stays in memory and is tried again: health tells. */
export type Saved =
  | { readonly ok: true; readonly at: Stamp }
  | { readonly ok: false; readonly problem: string };
