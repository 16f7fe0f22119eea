import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { formatFinding } from '../../src/finding/finding.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { resolveSchema } from '../../src/schema/read/resolve.ts';

const path = join(import.meta.dirname, 'other-schema.json');

/** The text of a logging schema that has nothing of the demo's: other fields, scales, codes and strokes; logged in rows of 2 m. */
export const OTHER_SCHEMA_TEXT = readFileSync(path, 'utf8');

/** That schema, resolved. */
export function otherSchema(): LoggingSchema {
  const resolved = resolveSchema({ file: 'other-schema.json', text: OTHER_SCHEMA_TEXT });
  if (!resolved.ok) throw new Error(resolved.findings.map(formatFinding).join('\n'));
  return resolved.value.schema;
}
