import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { resolveSchema } from '../../src/schema/read/resolve.ts';
import type { Row, RowSaid } from '../../src/value/row.ts';

const PROJECTS = join(import.meta.dirname, '../../sample-projects');

/** A log of a sample project, with the schema it was logged with. */
export type SampleLog = {
  readonly name: string;
  readonly schema: LoggingSchema;
  readonly rows: readonly RowSaid[];
};

/** Every logged hole of the sample projects, its rows down the hole, without remarks: they cost the same on any form. */
export function sampleLogs(): readonly SampleLog[] {
  return readdirSync(PROJECTS).flatMap((project) => {
    const file = join(PROJECTS, project, 'logging.json');
    const resolved = resolveSchema({ file, text: readFileSync(file, 'utf8') });
    if (!resolved.ok) throw new Error(`${project}: ${resolved.findings[0]?.problem}`);
    const holes = join(PROJECTS, project, 'holes');
    return readdirSync(holes).flatMap((hole) => {
      const { tables } = JSON.parse(readFileSync(join(holes, hole), 'utf8')) as {
        readonly tables: { readonly rows?: { readonly [id: string]: Row } };
      };
      const rows = Object.values(tables.rows ?? {}).sort((a, b) => a.fromMm - b.fromMm);
      if (rows.length === 0) return [];
      return [
        {
          name: `${project} ${hole.replace('.json', '')}`,
          schema: resolved.value.schema,
          rows: rows.map(observed),
        },
      ];
    });
  });
}

function observed({ remark: _, asked: __, ...row }: Row): RowSaid {
  return row;
}
