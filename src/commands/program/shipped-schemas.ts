import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The folder of a project that its files' `$schema` points into. */
export const SCHEMA_FOLDER = 'schemas';

/**
 * The JSON Schemas of every kind of file, as they come with the program: beside the folder of the bundle; run from source, above it. None where the
 * program was copied without them: then a project is made without, for it needs them in no other way.
 */
export function shippedSchemas(): readonly { readonly file: string; readonly text: string }[] {
  for (const way of ['../schemas', '../../../schemas']) {
    const folder = join(import.meta.dirname, way);
    const found = schemasIn(folder);
    if (found.length > 0)
      return found.map((file) => ({ file, text: readFileSync(join(folder, file), 'utf8') }));
  }
  return [];
}

function schemasIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder).filter((name) => name.endsWith('.schema.json'));
  } catch {
    return [];
  }
}

/** The same as files of a project. */
export function schemaFiles(
  schemas: ReturnType<typeof shippedSchemas>,
): readonly { readonly file: string; readonly text: string }[] {
  return schemas.map(({ file, text }) => ({ file: `${SCHEMA_FOLDER}/${file}`, text }));
}
