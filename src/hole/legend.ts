import * as z from 'zod';
import { VALUE_KINDS } from '../value/cell.ts';
import { words } from './parts.ts';

/**
 * The legend: the fields, scales and codes that a hole uses, written by the edit that first uses them, so that its file
 * decodes alone. Append-only: a changed meaning is a new code. Tables `legendFields`, `legendScales`, `legendCodes`, by
 * name (codes by list and code: `rocks BST`).
 */
export const legendField = z.strictObject({
  label: words,
  kind: z.enum(VALUE_KINDS),
  unit: words.optional(),
  list: words.optional(),
  scale: words.optional(),
  pair: words.optional().describe('Two letters that typed the field itself; frozen once logged with'),
  key: words.optional().describe('One letter that typed the field itself; frozen once logged with'),
});

export const legendScale = z.strictObject({
  label: words,
  levels: z.array(
    z.strictObject({ level: z.int().min(1), code: words.optional(), label: words, look: z.string() }),
  ),
});

export const legendCode = z.strictObject({
  list: words,
  code: words,
  label: words,
  pair: words.optional().describe('Two letters that typed it; frozen once logged with'),
  key: words
    .optional()
    .describe('One letter that typed it if it was in the row above; frozen once logged with'),
  cgi: words.optional(),
  mineral: words.optional(),
  unit: words.optional().describe('Unit of what is measured of it, where it is an event'),
  provisional: z.literal(true).optional(),
  noChips: z
    .literal(true)
    .optional()
    .describe('A metre of it alone gives nothing to sample: a void, a loss of return'),
});
