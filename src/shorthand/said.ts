import type { Field } from '../schema/logging-schema.ts';
import type { Amount, Cell } from '../value/cell.ts';

/** A stretch of the line, in characters from its start. */
export type Span = { readonly position: number; readonly length: number };

/** Something that could have been meant: the strokes and what they would say. */
export type Suggestion = { readonly text: string; readonly label: string };

/** Why a line isn't taken: where, what is wrong, what to do. The line is kept. */
export type Refusal = Span & {
  readonly kind: 'refused';
  readonly problem: string;
  readonly remedy: string;
  readonly suggestions: readonly Suggestion[];
};

/** A depth as typed behind @: whole, or only what comes after the point in the row's metre (`@.6`). */
export type PointTyped = { readonly mm: number; readonly isTail: boolean };

/**
 * What an item says: a whole cell, the amount of one code in it (0 takes it out; of a code field: the second's share), an event at
 * a point (`gone` where it is taken out), or what more there is to say `of` one code: a quality of a list, none of that list where it is undefined. Of a code field it is of the first code.
 */
export type Saying =
  | { readonly cell: Cell }
  | { readonly code: string; readonly amount: Amount }
  | { readonly event: string; readonly number?: number; readonly at?: PointTyped; readonly gone?: true }
  | { readonly list: string; readonly quality: string | undefined; readonly of: string | undefined };

/** One item of a line, its strokes resolved. */
export type Said = Span & {
  readonly field: Field;
  /** As typed, without a closing `=`. */
  readonly text: string;
  readonly says: Saying;
  /** Typed with a single key, so what it names must stand in the row above. */
  readonly byKey: boolean;
  readonly insisted: boolean;
};

/** What is asked of a row as a whole. */
export type RowAsk = 'repeat' | 'unlikely' | 'first row';

/** Why a line is asked about: one of its items, or the row as a whole. */
export type AskAbout = 'level jump' | 'percent step' | 'off the ladder' | RowAsk;

/** A question about a line that may well be right: `=` insists. */
export type Ask = Span & { readonly about: AskAbout; readonly reason: string };

/** Something worth a look in a line that is taken as it is: an item that says what the row above says already. `gone`: that it isn't there. */
export type Note = Span & { readonly label: string; readonly gone: boolean };

/** A refusal; suggestions are optional. */
export function refusal(
  span: Span,
  problem: string,
  remedy: string,
  suggestions: readonly Suggestion[] = [],
): Refusal {
  return { kind: 'refused', position: span.position, length: span.length, problem, remedy, suggestions };
}
