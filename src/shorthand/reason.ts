/** A reason, and who was called about it where somebody was. */
export interface Reason {
  readonly reason: string;
  readonly called?: string;
}

/** Reads `zone still open`, or `called Ines Falk: zone still open`. The reason may be empty. */
export function readReason(text: string): Reason {
  const parts = /^called ([^:]+):(.*)$/.exec(text.trim());
  const called = parts?.[1]?.trim();
  const reason = (parts?.[2] ?? text).trim();
  return called === undefined ? { reason } : { reason, called };
}
