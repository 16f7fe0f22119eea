import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MadeTable } from '../../../src/handover/tables/table.ts';
import { tablesOf } from '../../../src/handover/tables/tables.ts';
import { type Project, resolveProject } from '../../../src/project/project.ts';
import { projectSettings } from '../../../src/project/settings.ts';
import type { Stamp } from '../../../src/quantity/stamp.ts';
import { apply } from '../../../src/record/apply.ts';
import { type Document, emptyDocument, type Thing } from '../../../src/record/document.ts';
import type { LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { resolveStyle } from '../../support/styles.ts';

export const NOW = '2026-03-14T16:05:10+08:00' as Stamp;
const SAMPLE = join(import.meta.dirname, '../../../sample-projects/mulgara-bend');

/** A project with the settings of the sample and a schema. */
export function projectWith(
  schema: LoggingSchema = resolveStyle('orogenic-gold')!,
  more: object = {},
): Project {
  const settings = JSON.parse(readFileSync(join(SAMPLE, 'project.json'), 'utf8'));
  const resolved = resolveProject(projectSettings.parse({ ...settings, ...more }), schema);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.findings));
  return resolved.value;
}

/** A document of the sample project as its file holds it. */
export function sampleDocument(kind: 'holes' | 'shifts' | 'dispatches', id: string): Document {
  return JSON.parse(readFileSync(join(SAMPLE, kind, `${id}.json`), 'utf8')) as Document;
}

/** A certificate with lines as a laboratory reports them, gold in ppm. */
export function certificate(
  id: string,
  lines: readonly (readonly [number: string, reported: string])[],
  more: Thing = {},
): Document {
  const thing = {
    certificate: id,
    file: `${id}.csv`,
    sha256: 'a'.repeat(64),
    takenInAt: `2026-03-2${lines.length % 10}T08:00:00+08:00`,
    takenInBy: 'NOK',
    columns: [{ column: 'Au_ppm', analyte: 'Au', unit: 'ppm' }],
    ...more,
  };
  const made = apply(
    emptyDocument({ kind: 'results', id }),
    { edit: 'a-1', at: '2026-03-20T08:00:00+08:00', by: 'NOK', what: 'taken in' },
    [
      { put: ['certificate', 'certificate'], thing },
      ...lines.map(([number, reported], index) => ({
        put: ['lines', `l-${index}`] as const,
        thing: { line: index + 2, number, reported: reported === '' ? {} : { Au_ppm: reported } },
      })),
    ],
  );
  if (!made.ok) throw new Error(made.problem);
  return made.document;
}

/** The tables of some documents by name. */
export function made(
  project: Project,
  documents: readonly Document[],
  of = documents,
): Readonly<Record<string, MadeTable>> {
  return Object.fromEntries(tablesOf({ project, documents, of, now: NOW }).map((each) => [each.name, each]));
}

/** Rows as objects, empty cells left out. */
export function rowsIn(table: MadeTable | undefined): readonly Readonly<Record<string, unknown>>[] {
  const names = Object.keys(table?.columns ?? {});
  return (table?.rows ?? []).map((row) =>
    Object.fromEntries(
      names.flatMap((name, index) => (row[index] === undefined ? [] : [[name, row[index]] as const])),
    ),
  );
}
