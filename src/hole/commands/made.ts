import type { Stamp } from '../../quantity/stamp.ts';
import type { Change, Id } from '../../record/document.ts';

/** What a command is given from outside: permanent ids, the time and the person. Never read here. */
export interface Maker {
  readonly newId: () => Id;
  readonly at: Stamp;
  readonly by: string;
}

/** What a command made: the changes of one edit on the hole, results resolved, and what was done in plain words. */
export interface Made {
  readonly what: string;
  readonly changes: readonly Change[];
}
