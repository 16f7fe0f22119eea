import * as z from 'zod';
import type { Entry } from '../record/document.ts';

/** Shapes of the record (src/record/document.ts) as a file holds them. What is in a thing is its noun's matter. */
const text = z.string().max(10_000);
const idText = z.string().min(1).max(200);
// Anything: what is read is JSON already, and an edit is brought to what JSON can hold before it is checked.
const fields = z.record(z.string(), z.unknown());
const where = z.tuple([idText.describe('Table'), idText.describe('Permanent id of the thing')]);
const fieldNames = z.array(idText);

/** The name of a document. */
export const nameShape = z.strictObject({ kind: idText, id: idText });

/** Who, when, what; spread into the shapes of edits and entries. */
export const deedShape = {
  edit: idText.describe('Permanent id of the edit; one edit may be in several documents'),
  at: text.describe('When, by the clock of the computer; order is the chain, never the clock'),
  by: text.describe('Who'),
  what: text.describe('What was done, in words'),
  undoes: idText.optional(),
  redoes: idText.optional(),
};

/** A primitive change as the journal holds it. */
export const changeShape = z.union([
  z.strictObject({ put: where, thing: fields }),
  z.strictObject({ patch: where, set: fields.optional(), unset: fieldNames.optional() }),
  z.strictObject({ remove: where }),
]);

const doneShape = z.union([
  z.strictObject({ put: where, thing: fields }),
  z.strictObject({ patch: where, set: fields.optional(), unset: fieldNames.optional(), before: fields }),
  z.strictObject({ remove: where, before: fields }),
]);

/** One link of a history. */
export const entryShape: z.ZodType<Entry> = z.strictObject({
  ...deedShape,
  changes: z.array(doneShape),
  follows: z.array(z.string()).max(2).describe('Hashes of the entries that this one follows'),
  hash: z
    .string()
    .describe('SHA-256, hex, of the canonical JSON of everything else in the entry but `incoming`'),
  get incoming(): z.ZodOptional<z.ZodArray<z.ZodType<Entry>>> {
    return z
      .array(entryShape)
      .optional()
      .describe("On a merge: the other copy's entries that this history did not hold, flat; format 2");
  },
  get merged(): z.ZodOptional<z.ZodArray<z.ZodType<Entry>>> {
    return z
      .array(entryShape)
      .optional()
      .describe("On a merge of format 1: the other copy's entries, their own merges inside them");
  },
  outside: z.literal(true).optional().describe('A change found in the file and made by no edit'),
}) as unknown as z.ZodType<Entry>;

/** The tables of a document. */
export const tablesShape = z.record(idText, z.record(idText, fields));
