import type { Made } from '../hole/commands/made.ts';
import type { Id } from '../record/document.ts';
import type { Command } from '../shorthand/command.ts';
import type { Row } from '../value/row.ts';

/** Commands that change where rows stand, or how many there are. Bags are facts: none of these renumbers one. */
export type RangeCommand = Extract<
  Command,
  { readonly does: 'copy' | 'shift' | 'clear' | 'insert' | 'merge' | 'split' }
>;

/** A change of several rows, worked out and not made yet: what it would do in words, and the edit. */
export interface RangePlan {
  readonly lines: readonly string[];
  readonly made: Made;
  /** It adds to what is there and changes no row: where no one sees a preview it is made at once. */
  readonly isPlain?: true;
}

/** Rows of a hole from the top down. */
export type Rows = readonly (readonly [Id, Row])[];
