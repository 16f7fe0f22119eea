import { dirname, posix } from 'node:path';
import type { Disk } from '../files/disk.ts';
import { holdToShape } from '../files/json-shape.ts';
import { digestOf } from '../files/load-document.ts';
import { readProjectFile } from '../files/read-file.ts';
import { type JsonText, OTHER_LIMITS, readJsonText } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { type Project, resolveProject } from '../project/project.ts';
import { type ProjectSettings, projectSettings } from '../project/settings.ts';
import { checkBagPrefixes, checkSchema } from '../schema/check/check-schema.ts';
import type { LoadParent } from '../schema/read/chain.ts';
import type { TextFile } from '../schema/read/places.ts';
import { resolveSchema } from '../schema/read/resolve.ts';
import { noProjectHere } from './findings.ts';

/** A project as loaded, with what is worth saying about its schema. */
export interface LoadedProject {
  readonly project: Project;
  readonly warnings: readonly Finding[];
}

/** Files extended one by another, at most: more is a ring or a muddle. */
const LONGEST_CHAIN = 8;

/**
 * The project of the two hand-written files of a folder, as the desk found them. Refused with every fault (file, line,
 * field, remedy) where they can't be used; nothing is changed either way.
 */
export async function loadProject(
  given: {
    readonly folder: string;
    readonly project: JsonText | undefined;
    readonly logging: JsonText | undefined;
  },
  disk: Disk = realDisk,
): Promise<Result<LoadedProject>> {
  const missing = [
    ...(given.project === undefined ? ['project.json'] : []),
    ...(given.logging === undefined ? ['logging.json'] : []),
  ];
  if (given.project === undefined || given.logging === undefined) {
    return refused(
      noProjectHere.at(
        { file: given.folder },
        {
          problem: `it holds no ${missing.join(' and no ')}, or none that can be read`,
          remedy: 'Give the folder of a project, or make one: offsider new <folder>.',
        },
      ),
    );
  }
  const { project, logging } = given;
  const parents = await readParents(disk, given.folder, logging);
  const texts = [project, logging, ...parents.values()].map(({ file, text }) => [file, text]);
  const key = digestOf(JSON.stringify(texts));
  const known = resolved.get(key);
  if (known !== undefined) return known;
  const loaded = resolveBoth(project, logging, parents);
  if (resolved.size >= MOST_RESOLVED) resolved.clear();
  resolved.set(key, loaded);
  return loaded;
}

/** What came of the texts read last: a project is loaded each time that it is opened or checked, and seldom changes between. */
const resolved = new Map<string, Result<LoadedProject>>();
const MOST_RESOLVED = 8;

function resolveBoth(
  json: JsonText,
  logging: JsonText,
  parents: ReadonlyMap<string, TextFile>,
): Result<LoadedProject> {
  const settings = holdToShape<ProjectSettings>(json, projectSettings as never);
  if (!settings.ok) return settings;
  const schema = resolveSchema({ file: logging.file, text: logging.text }, loadFrom(parents));
  if (!schema.ok) return schema;
  const found = [
    ...checkSchema(schema.value.schema, schema.value.origins),
    ...checkBagPrefixes(settings.value.sampling.numbers.prefixes, {
      file: json.file,
      field: 'sampling.numbers.prefixes',
    }),
  ];
  const faults = found.filter((finding) => finding.severity === 'fault');
  if (faults.length > 0) return refused(...faults);
  const project = resolveProject(settings.value, schema.value.schema);
  if (!project.ok) return project;
  return ok({ project: project.value, warnings: [...schema.value.warnings, ...found] });
}

/** The files that logging.json extends, read beforehand: the resolver itself touches no disk. */
export async function parentsOf(disk: Disk, folder: string, logging: JsonText): Promise<LoadParent> {
  return loadFrom(await readParents(disk, folder, logging));
}

/** The path of a file that another names, by the path of that one. */
export function besideFile(reference: string, from: string): string {
  return posix.join(dirname(from), reference);
}

function loadFrom(found: ReadonlyMap<string, TextFile>): LoadParent {
  return (reference, from) => found.get(besideFile(reference, from));
}

/** The files that logging.json extends, itself left out, in order; those that can't be read end it. */
export async function readParents(
  disk: Disk,
  folder: string,
  logging: JsonText,
): Promise<ReadonlyMap<string, TextFile>> {
  const found = new Map<string, TextFile>();
  let next: JsonText | undefined = logging;
  for (let depth = 0; depth < LONGEST_CHAIN && next !== undefined; depth += 1) {
    const reference = (next.value as { readonly extends?: unknown } | null)?.extends;
    if (typeof reference !== 'string' || !reference.endsWith('.json')) break;
    const file = besideFile(reference, next.file);
    if (file.startsWith('..') || posix.isAbsolute(file) || found.has(file)) break;
    const bytes = await readProjectFile(disk, folder, file, OTHER_LIMITS).catch(() => undefined);
    if (bytes === undefined || !bytes.ok) break;
    const json = readJsonText(bytes.value, file, OTHER_LIMITS);
    if (!json.ok) break;
    found.set(file, { file, text: json.value.text });
    next = json.value;
  }
  return found;
}
