import { ok, type Result, refused } from '../../finding/finding.ts';
import { checkSchema } from '../check/check-schema.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import type { LoadParent } from '../read/chain.ts';
import type { TextFile } from '../read/places.ts';
import { resolveSchema } from '../read/resolve.ts';

/** A changed logging.json and the schema that it gives. */
export type ChangedSchema = { readonly text: string; readonly schema: LoggingSchema };

/** How what is put into a file by the program is laid out. */
export const FORMATTING = { formattingOptions: { insertSpaces: true, tabSize: 2, eol: '\n' } };

/**
 * A file with another text in its place. Refused where it would not resolve, or where the check finds a fault in it that it
 * did not find before: a project that had faults can still be changed, and never gets another one.
 */
export function heldToCheck(file: TextFile, text: string, loadParent?: LoadParent): Result<ChangedSchema> {
  const before = resolveSchema(file, loadParent);
  if (!before.ok) return before;
  const after = resolveSchema({ ...file, text }, loadParent);
  if (!after.ok) return after;
  const known = new Set(checkSchema(before.value.schema).map((finding) => JSON.stringify(finding)));
  const bare = checkSchema(after.value.schema);
  const faults = checkSchema(after.value.schema, after.value.origins).filter(
    (finding, index) => finding.severity === 'fault' && !known.has(JSON.stringify(bare[index])),
  );
  if (faults.length > 0) return refused(...faults);
  return ok({ text, schema: after.value.schema });
}
