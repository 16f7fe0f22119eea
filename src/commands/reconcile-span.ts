import type { Finding } from '../finding/finding.ts';
import type { SpanFigures } from '../shift/span-figures.ts';

/** A shift of the span with both sides of it. */
export interface Reconciled {
  readonly shift: string;
  readonly ownCents: number;
  readonly plodCents: number;
  readonly plods: readonly string[];
  readonly signedBy: readonly string[];
  readonly queries: readonly (Finding & { readonly number: number; readonly answer: string })[];
  readonly open: number;
  readonly timeline: readonly string[];
  readonly keys: string;
  readonly lines: readonly { readonly what: string; readonly own: number; readonly plod: number }[];
}

/** Every shift of the span in one pass, with what the invoice should come to, line by line. */
export interface Span {
  readonly from: string;
  readonly to: string;
  readonly currency: string;
  readonly shifts: readonly Reconciled[];
  readonly figures: SpanFigures;
  readonly invoice: readonly { readonly what: string; readonly own: number; readonly plod: number }[];
  readonly ownCents: number;
  readonly plodCents: number;
}
