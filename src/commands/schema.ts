import { dirname, join } from 'node:path';
import { parentsOf as loadParentsOf } from '../desk/load-project.ts';
import type { Outside } from '../desk/outside.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { readNamedFile } from '../files/read-file.ts';
import { OTHER_LIMITS } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import { withAccepted } from '../schema/change/accept.ts';
import { additionsTo, changesUnder } from '../schema/change/schema-change.ts';
import { allMeanings } from '../schema/legend.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { LoadParent } from '../schema/read/chain.ts';
import { checkLoggingFile } from '../schema/read/check-file.ts';
import type { TextFile } from '../schema/read/places.ts';
import { styleFile } from '../schema/styles/index.ts';
import { atProject, namedIn, readByHand, type Shared } from './at-project.ts';
import { sayFindings } from './check.ts';
import { EXIT, refuse, say } from './say.ts';
import { findingsBeside } from './schema-beside.ts';

/** What `offsider schema check` is given: a file, or the name of a style, and another that it is compared with. */
export interface SchemaCheckAsked extends Shared {
  /** The logging.json of the project where none is given. */
  readonly file?: string | undefined;
  readonly against?: string | undefined;
  /** Warnings of the project's logging.json are accepted: not said again. */
  readonly accept?: boolean;
  readonly json: boolean;
}

/**
 * Checks a logging schema: every fault with its file, line and field, and what to do. Beside a project.json, its bag numbers and the
 * logged holes are compared with it too; with `against`, what it changes of another one is told.
 */
export async function checkSchemaFile(outside: Outside, asked: SchemaCheckAsked): Promise<number> {
  const unknown = await unknownNames(asked);
  if (unknown.length > 0) return refuse(outside, ...unknown);
  if (asked.accept === true) return acceptWarnings(outside, asked);
  const file = asked.file ?? join(asked.folder, HAND_WRITTEN.logging);
  const read = await checkedFile(file);
  if (!read.ok) return refuse(outside, ...read.findings);
  const { schema, findings } = read.value;
  const isFile = styleFile(file) === undefined;
  const beside = isFile ? await findingsBeside(outside, dirname(file), schema) : [];
  if (asked.against === undefined) return sayFindings(outside, [...findings, ...beside], asked.json);
  const before = await checkedFile(asked.against);
  if (!before.ok) return refuse(outside, ...before.findings);
  if (before.value.schema === undefined) return refuse(outside, ...before.value.findings);
  const changes = schema === undefined ? [] : changesBetween(before.value.schema, schema, file);
  return sayFindings(outside, [...findings, ...beside, ...changes], asked.json);
}

/** Accepts every warning of the project's own logging.json. Faults are said as ever. */
function acceptWarnings(outside: Outside, asked: SchemaCheckAsked): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async ({ desk }) => {
    const logging = desk.logging();
    if (logging === undefined) throw new Error('a project without logging.json was opened');
    const parents = await loadParentsOf(realDisk, asked.folder, logging);
    const file = { file: logging.file, text: logging.text };
    const { schema, findings } = checkLoggingFile(file, parents);
    const faults = findings.filter(({ severity }) => severity === 'fault');
    if (schema === undefined || faults.length > 0) return refuse(outside, ...faults);
    const { text, count } = withAccepted(file, schema, findings);
    if (count > 0) {
      const written = await desk.writeByHand('logging', text);
      if (!written.ok) return refuse(outside, ...written.findings);
    }
    say(outside, `${count} accepted: not said again until their words change.`);
    return EXIT.fine;
  });
}

/** Names that the project beside does not know. A project that can't be read knows no one: its faults are what this command is for. */
export async function unknownNames(asked: Shared): Promise<readonly Finding[]> {
  if (asked.by === undefined && asked.rig === undefined) return [];
  const loaded = await readByHand(asked.folder);
  const named = loaded.ok ? namedIn(loaded.value.project, asked) : undefined;
  return named === undefined || named.ok ? [] : named.findings;
}

/** What one schema says otherwise than another, and what is new in it. */
function changesBetween(before: LoggingSchema, after: LoggingSchema, file: string): readonly Finding[] {
  return [...changesUnder(allMeanings(before), after, { file }), ...additionsTo(before, after, { file })];
}

type Checked = { readonly schema?: LoggingSchema; readonly findings: readonly Finding[] };

async function checkedFile(named: string): Promise<Result<Checked>> {
  const read = await namedSchemaFile(named);
  return read.ok ? ok(checkLoggingFile(read.value.file, read.value.loadParent)) : read;
}

/** A logging.json by its path, or a style by its name, and the files that it extends. */
export async function namedSchemaFile(
  named: string,
): Promise<Result<{ readonly file: TextFile; readonly loadParent: LoadParent }>> {
  const style = styleFile(named);
  const read = style === undefined ? await textOf(named) : ok(style);
  if (!read.ok) return read;
  const parents = await parentsOf(read.value);
  return ok({
    file: read.value,
    loadParent: (reference, from) => parents.get(join(dirname(from), reference)),
  });
}

async function textOf(file: string): Promise<Result<TextFile>> {
  const bytes = await readNamedFile(realDisk, file, OTHER_LIMITS);
  return bytes.ok ? ok({ file, text: new TextDecoder().decode(bytes.value) }) : bytes;
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
    const read: Result<TextFile> = await textOf(path);
    next = !read.ok || found.has(path) ? undefined : read.value;
    if (next !== undefined) found.set(path, next);
  }
  return found;
}
