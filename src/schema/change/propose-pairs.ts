import type { LoggingSchema } from '../logging-schema.ts';
import { proposeStrokes } from './propose-strokes.ts';

/** A pair proposed for a code. */
export type ProposedPair = { readonly list: string; readonly code: string; readonly pair: string };

/** Pairs for the codes of a schema that have none. A code is left out where no pair is left that is safe within its field. */
export function proposePairs(schema: LoggingSchema): readonly ProposedPair[] {
  return proposeStrokes(schema).flatMap(({ is, part, strokes }) =>
    is === 'pair' && strokes !== undefined && 'list' in part && part.code !== undefined
      ? [{ list: part.list, code: part.code, pair: strokes }]
      : [],
  );
}

/** A code for a new term by the starter styles' rule: three letters of it, its first in front, in their order, not yet used in the project. */
export function proposeCode(schema: LoggingSchema, label: string): string | undefined {
  const used = new Set(
    Object.values(schema.lists).flatMap((list) => list.codes.map((code) => code.code.toUpperCase())),
  );
  const letters = [...label.toUpperCase().replace(/[^A-Z]/g, '')];
  const rest = letters.slice(1);
  const codes = rest.flatMap((b, index) => rest.slice(index + 1).map((c) => `${letters[0]}${b}${c}`));
  return codes.find((code) => !used.has(code));
}
