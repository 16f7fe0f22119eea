import { join } from 'node:path';
import { openDesk } from '../desk/desk.ts';
import type { Outside } from '../desk/outside.ts';
import { factsIfThere } from '../files/disk.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { readProjectFile } from '../files/read-file.ts';
import { OTHER_LIMITS, readJsonText } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import type { Finding } from '../finding/finding.ts';
import { checkBagPrefixes } from '../schema/check/check-schema.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { hazardsUnloggable, schemaChangesOf } from '../standing/hole-schema.ts';
import { ruleSeesNoVoid } from '../termination/findings.ts';
import { checkTermination } from '../termination/rules/check-rules.ts';
import { readByHand } from './at-project.ts';

/**
 * What a schema comes to in the project that it is in: bag numbers that could be a line of the log, what it changes for the
 * rows of each hole. Nothing where no project is there. Nothing is locked, and nothing written.
 */
export async function findingsBeside(
  outside: Outside,
  folder: string,
  schema: LoggingSchema | undefined,
): Promise<readonly Finding[]> {
  const path = join(folder, HAND_WRITTEN.project);
  if ((await factsIfThere(realDisk, path).catch(() => undefined)) === undefined) return [];
  return [
    ...checkBagPrefixes(await prefixesIn(folder), { file: path, field: 'sampling.numbers.prefixes' }),
    ...(schema === undefined ? [] : await changesUnderHoles(outside, folder, schema)),
    ...(schema === undefined ? [] : await rulesWithoutVoid(folder, schema)),
  ];
}

/** Rules of the project that ask for voids, where no code of the schema means one. */
async function rulesWithoutVoid(folder: string, schema: LoggingSchema): Promise<readonly Finding[]> {
  const loaded = await readByHand(folder);
  if (!loaded.ok) return [];
  const { termination } = loaded.value.project.settings;
  return checkTermination(termination, schema, { file: HAND_WRITTEN.project }).filter(
    ({ code }) => code === ruleSeesNoVoid.code,
  );
}

/** The prefixes of bag numbers as project.json says them; what is misshapen there is for `offsider check` to name. */
async function prefixesIn(folder: string): Promise<readonly string[]> {
  const bytes = await readProjectFile(realDisk, folder, HAND_WRITTEN.project, OTHER_LIMITS);
  const json = bytes.ok ? readJsonText(bytes.value, HAND_WRITTEN.project, OTHER_LIMITS) : bytes;
  if (!json.ok) return [];
  const { sampling } = (json.value.value ?? {}) as {
    readonly sampling?: { readonly numbers?: { readonly prefixes?: unknown } };
  };
  const prefixes = sampling?.numbers?.prefixes;
  return Array.isArray(prefixes) ? prefixes.filter((each): each is string => typeof each === 'string') : [];
}

async function changesUnderHoles(
  { clock, random }: Outside,
  folder: string,
  schema: LoggingSchema,
): Promise<readonly Finding[]> {
  const opened = await openDesk({ folder, clock, random, person: '', readOnly: true });
  if (!opened.ok) return opened.findings;
  const documents = [...opened.value.documents().values()];
  return documents
    .filter((document) => document.kind === 'hole')
    .flatMap((hole) => [...schemaChangesOf(schema, hole), ...hazardsUnloggable(schema, hole)]);
}
