import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { resolveSchema } from '../../src/schema/read/resolve.ts';
import { styleFile } from '../../src/schema/styles/index.ts';

/** The built-in style of that name, resolved, or undefined where there is none. A style that does not resolve is a bug of ours. */
export function resolveStyle(name: string): LoggingSchema | undefined {
  const file = styleFile(name);
  if (file === undefined) return undefined;
  const resolved = resolveSchema(file);
  if (!resolved.ok) throw new Error(`style ${name}: ${resolved.findings[0]?.problem}`);
  return resolved.value.schema;
}
