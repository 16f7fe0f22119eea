import type { Finding } from '../../finding/finding.ts';
import { checkSchema } from '../check/check-schema.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import type { LoadParent } from './chain.ts';
import type { TextFile } from './places.ts';
import { resolveSchema } from './resolve.ts';

/**
 * A logging.json or style read, resolved and checked: every finding with file, line, column and excerpt, and the schema
 * where the file gives one (a file with faults of the check still does, so that the rest of it can be shown).
 */
export function checkLoggingFile(
  file: TextFile,
  loadParent?: LoadParent,
): { readonly schema?: LoggingSchema; readonly findings: readonly Finding[] } {
  const resolved = resolveSchema(file, loadParent);
  if (!resolved.ok) return { findings: resolved.findings };
  const { schema, origins, warnings } = resolved.value;
  return { schema, findings: [...warnings, ...checkSchema(schema, origins)] };
}
