import { join } from 'node:path';
import type { Outside } from '../desk/outside.ts';
import { factsIfThere } from '../files/disk.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { realDisk } from '../files/real-disk.ts';
import type { Result } from '../finding/finding.ts';
import { differenceLine, schemaDiff } from '../schema/change/schema-diff.ts';
import { type ResolvedSchema, resolveSchema } from '../schema/read/resolve.ts';
import type { Shared } from './at-project.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { namedSchemaFile, unknownNames } from './schema.ts';

/** What `offsider schema diff` is given: each a project's folder, a logging.json or the name of a style. */
export interface SchemaDiffAsked extends Shared {
  readonly first: string;
  readonly second: string;
  readonly json: boolean;
}

/** Says what two projects, rigs or files log differently: gives 1 where there is anything, 0 where they are alike. */
export async function diffSchemas(outside: Outside, asked: SchemaDiffAsked): Promise<number> {
  const unknown = await unknownNames(asked);
  if (unknown.length > 0) return refuse(outside, ...unknown);
  const first = await resolvedAt(asked.first);
  if (!first.ok) return refuse(outside, ...first.findings);
  const second = await resolvedAt(asked.second);
  if (!second.ok) return refuse(outside, ...second.findings);
  const differences = schemaDiff(first.value.schema, second.value.schema);
  if (asked.json) sayJson(outside, { differences });
  else if (differences.length === 0) say(outside, 'Both log the same, in the same words and strokes.');
  else say(outside, differences.map((each) => differenceLine(each, asked)).join('\n'));
  return differences.length === 0 ? EXIT.fine : EXIT.findings;
}

async function resolvedAt(named: string): Promise<Result<ResolvedSchema>> {
  const beside = join(named, HAND_WRITTEN.logging);
  const isFolder = (await factsIfThere(realDisk, beside).catch(() => undefined)) !== undefined;
  const read = await namedSchemaFile(isFolder ? beside : named);
  return read.ok ? resolveSchema(read.value.file, read.value.loadParent) : read;
}
