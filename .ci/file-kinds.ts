import { z } from 'zod';
import { conditionSchema } from '../src/condition/condition.ts';
import { type DOCUMENT_KINDS, documentFileShape } from '../src/files/document-file.ts';
import { entryShape } from '../src/files/record-shapes.ts';
import { HOLE_NOUNS } from '../src/hole/hole.ts';
import { projectSettings } from '../src/project/settings.ts';
import { DISPATCH_NOUNS } from '../src/sampling/dispatch/dispatch-noun.ts';
import { RESULTS_NOUNS } from '../src/sampling/laboratory/results-noun.ts';
import { loggingFile } from '../src/schema/read/file-schema.ts';
import { SHIFT_NOUNS } from '../src/shift/shift.ts';

/** A kind of file that a project holds: its shape in zod, and what it is. */
export type FileKind = {
  readonly name: keyof typeof DOCUMENT_KINDS | 'project' | 'logging';
  readonly title: string;
  readonly description: string;
  readonly shape: z.ZodType;
};

/** A kept document: the envelope, with what is in each of its tables. */
function documentShape(kind: string, nouns: Readonly<Record<string, z.ZodType>>): z.ZodType {
  const tables = Object.entries(nouns).map(
    ([table, noun]) =>
      [table, z.record(z.string(), noun).optional().describe('Things by their permanent id')] as const,
  );
  return documentFileShape.extend({
    kind: z.literal(kind),
    tables: z.strictObject(Object.fromEntries(tables)).describe('What is there now; made from the history'),
  });
}

/** Every kind of file that has a JSON Schema in schemas/. */
export const FILE_KINDS: readonly FileKind[] = [
  {
    name: 'project',
    title: 'offsider project',
    description: 'project.json: written by hand, in metres and kilograms',
    shape: projectSettings,
  },
  {
    name: 'logging',
    title: 'offsider logging schema',
    description: `logging.json and styles. ${loggingFile.description ?? ''}`,
    shape: loggingFile,
  },
  {
    name: 'hole',
    title: 'offsider hole',
    description:
      'holes/<id>.json: kept by the program, in whole millimetres and grams; tables are made from the history',
    shape: documentShape('hole', HOLE_NOUNS),
  },
  {
    name: 'shift',
    title: 'offsider shift',
    description: 'shifts/<rig>_<date>_<shift>.json: kept by the program; tables are made from the history',
    shape: documentShape('shift', SHIFT_NOUNS),
  },
  {
    name: 'dispatch',
    title: 'offsider dispatch',
    description: 'dispatches/<id>.json: kept by the program; tables are made from the history',
    shape: documentShape('dispatch', DISPATCH_NOUNS),
  },
  {
    name: 'results',
    title: 'offsider returned results',
    description:
      'results/<id>.json: a certificate of the laboratory as it was taken in; kept by the program, never written over',
    shape: documentShape('results', RESULTS_NOUNS),
  },
];

/** Shapes that are in a file many times or in themselves, under the names that the JSON Schemas give them. */
const NAMED: Readonly<Record<string, z.ZodType>> = { condition: conditionSchema, entry: entryShape };

/** JSON Schema (2020-12) of a kind of file. */
export function jsonSchemaOf({ title, description, shape }: FileKind): object {
  const metadata = z.registry<{ id?: string; description?: string }>();
  const described = (schema: z.ZodType) => z.globalRegistry.get(schema)?.description;
  for (const [id, named] of Object.entries(NAMED)) {
    const said = described(named);
    metadata.add(named, { id, ...(said === undefined ? {} : { description: said }) });
  }
  const schema = z.toJSONSchema(shape, {
    target: 'draft-2020-12',
    override: ({ zodSchema, jsonSchema }) => {
      const said = described(zodSchema as unknown as z.ZodType);
      if (said !== undefined) jsonSchema.description = said;
    },
    metadata,
  });
  const { $schema, ...rest } = schema;
  return { $schema, title, ...rest, description };
}
