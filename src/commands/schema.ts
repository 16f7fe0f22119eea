import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Outside } from '../desk/outside.ts';
import { whyRefused } from '../files/disk.ts';
import { realDisk } from '../files/real-disk.ts';
import { checkLoggingFile } from '../schema/check-file.ts';
import { cribLines } from '../schema/crib.ts';
import type { TextFile } from '../schema/places.ts';
import { rowJsonSchema } from '../schema/row-json-schema.ts';
import { styleFile } from '../schema/styles/index.ts';
import { atProject } from './at-project.ts';
import { sayFindings } from './check.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';

/** What `offsider schema check` is given: a file, or the name of a style. */
export interface SchemaCheckAsked {
  readonly file: string;
  readonly json: boolean;
}

/** Checks a logging schema: every fault with its file, line and field, and what to do. */
export async function checkSchemaFile(outside: Outside, asked: SchemaCheckAsked): Promise<number> {
  const style = styleFile(asked.file);
  try {
    const file = style ?? { file: asked.file, text: await readFile(asked.file, 'utf8') };
    const parents = await parentsOf(file);
    const { findings } = checkLoggingFile(file, (reference, from) =>
      parents.get(join(dirname(from), reference)),
    );
    return sayFindings(outside, findings, asked.json);
  } catch (error) {
    return refuse(
      outside,
      wrongUse.at(
        { file: asked.file },
        {
          problem: `it can't be read: ${whyRefused(error)}`,
          remedy: 'Give a logging.json, or the name of a style.',
        },
      ),
    );
  }
}

/** Files extended one by another, at most. */
const LONGEST_CHAIN = 8;

/** The files that a schema extends, read beforehand; one that is missing is the check's to name. */
async function parentsOf(file: TextFile): Promise<ReadonlyMap<string, TextFile>> {
  const found = new Map<string, TextFile>();
  let next: TextFile | undefined = file;
  for (let depth = 0; depth < LONGEST_CHAIN && next !== undefined; depth += 1) {
    const reference = /"extends"\s*:\s*"([^"]+\.json)"/.exec(next.text)?.[1];
    if (reference === undefined) break;
    const path = join(dirname(next.file), reference);
    const bytes: Uint8Array | undefined = await realDisk.readFile(path).catch(() => undefined);
    next =
      bytes === undefined || found.has(path)
        ? undefined
        : { file: path, text: new TextDecoder().decode(bytes) };
    if (next !== undefined) found.set(path, next);
  }
  return found;
}

/** Prints what can be typed: every pair and key of the project's schema, field by field. */
export function schemaKeys(
  outside: Outside,
  asked: { readonly folder: string; readonly width: number },
): Promise<number> {
  return atProject(outside, { folder: asked.folder }, async ({ project }) => {
    say(outside, cribLines(project.schema, asked.width).join('\n'));
    return EXIT.fine;
  });
}

/** Prints the JSON Schema (2020-12) of the rows that the project's schema logs. */
export function exportSchema(outside: Outside, asked: { readonly folder: string }): Promise<number> {
  return atProject(outside, { folder: asked.folder }, async ({ project }) => {
    sayJson(outside, rowJsonSchema(project.schema));
    return EXIT.fine;
  });
}
