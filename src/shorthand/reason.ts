import { type Depth, parseDepth } from '../quantity/depth.ts';

/** A reason, and who was called about it where someone was. */
export interface Reason {
  readonly reason: string;
  readonly called?: string;
}

/** Reads `zone still open`, `called Ines Falk: zone still open` or `Ines Falk called: zone still open`. The reason may be empty. */
export function readReason(text: string): Reason {
  const parts =
    /^called ([^:]+):(.*)$/.exec(text.trim()) ?? /^(\p{Lu}[^:]*?) called:(.*)$/u.exec(text.trim());
  const called = parts?.[1]?.trim();
  const reason = (parts?.[2] ?? text).trim();
  return called === undefined ? { reason } : { reason, called };
}

/** How far a hole goes on: to a depth, or so much further, in millimetres. */
export type Until = { readonly toMm: Depth } | { readonly moreMm: Depth };

/** Reads how far to go on where words begin with it: `to 132 m`, `12 m more`; undefined where they don't. */
export function readUntil(text: string): Until | undefined {
  const toMm = parseDepth(/^to (\d+(?:\.\d+)?)(?: ?m)?(?=$|[\s,:;.])/.exec(text)?.[1] ?? '');
  if (toMm !== undefined) return { toMm };
  const moreMm = parseDepth(/^(\d+(?:\.\d+)?) ?m more(?=$|[\s,:;.])/.exec(text)?.[1] ?? '');
  return moreMm === undefined ? undefined : { moreMm };
}
