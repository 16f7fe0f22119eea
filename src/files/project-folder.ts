import { join } from 'node:path';
import type { Finding } from '../finding/finding.ts';
import type { Migration } from '../formats/upgrade.ts';
import { documentKey } from '../record/document.ts';
import { type Disk, isMissing } from './disk.ts';
import { documentPath } from './document-file.ts';
import { linesByDocument, linesInOrder } from './fold.ts';
import { type Generation, readJournal } from './journal.ts';
import { journalFindings, spoiledAmong, tornTails } from './journal-findings.ts';
import { documentsOf, type LetGo, type WorkLine } from './journal-line.ts';
import type { ToKeep } from './keep-copy.ts';
import { type FoundFile, listDocumentFiles, nameFromKey } from './list-documents.ts';
import type { LoadedDocument } from './load-document.ts';
import { readProjectFile } from './read-file.ts';
import { type FoundDocument, readFound, withoutFile } from './read-found.ts';
import { type JsonText, OTHER_LIMITS, readJsonText } from './read-json.ts';
import { bringForward } from './rolled-back.ts';

/** A project folder as read: every document with its journal folded in, and what was found on the way. */
export interface ProjectFolder {
  /** The files written by hand, as text and JSON; their meaning is read by project/ and schema/. Undefined where not there. */
  readonly project: JsonText | undefined;
  readonly logging: JsonText | undefined;
  /** Documents by key (`hole/ZQRC004`). */
  readonly documents: ReadonlyMap<string, LoadedDocument>;
  /** Documents that must not be written, with why in words: not readable, missing, or not to be trusted. */
  readonly closed: ReadonlyMap<string, string>;
  readonly findings: readonly Finding[];
  readonly keep: readonly ToKeep[];
  /** Lines of the journal that files may not hold yet. */
  readonly lines: readonly WorkLine[];
  /** Documents that were let go, oldest first. */
  readonly letGo: readonly LetGo[];
  /** Ends of histories that the journal saw and that files lack which were rolled back, by key. */
  readonly lacking: ReadonlyMap<string, string>;
  /** Generations that hold damage, or the work of a console that had been displaced: kept, not deleted. */
  readonly spoiled: ReadonlySet<number>;
  /** Files that an interrupted write left behind: nothing that was called saved is in them. */
  readonly leftovers: readonly string[];
  /** The highest numbers seen anywhere, to go on from. */
  readonly lastGeneration: number;
  readonly lastSequence: number;
}

/** The two files of a project that people write by hand. */
export const HAND_WRITTEN = { project: 'project.json', logging: 'logging.json' } as const;

/**
 * Reads a whole project. Nothing is written, and no fault of one file keeps another from being read: what can't be
 * used is in `closed` and `findings`. Rejects only where the disk does not answer for the folder itself.
 */
export async function readProjectFolder(
  disk: Disk,
  folder: string,
  migrations: readonly Migration[],
): Promise<ProjectFolder> {
  const findings: Finding[] = [];
  const keep: ToKeep[] = [];
  const documents = new Map<string, LoadedDocument>();
  const closed = new Map<string, string>();
  const project = await readHandWritten(disk, folder, HAND_WRITTEN.project, findings);
  const logging = await readHandWritten(disk, folder, HAND_WRITTEN.logging, findings);

  const generations = await readJournal(disk, folder);
  const { lines, overruled } = linesInOrder(generations);
  keep.push(...tornTails(generations));
  findings.push(...journalFindings(generations, overruled));

  const byDocument = linesByDocument(lines);
  const listed = await listDocumentFiles(disk, folder);
  findings.push(...listed.findings);
  const read: { readonly file: FoundFile; readonly found: FoundDocument }[] = [];
  for (const file of listed.files)
    read.push({
      file,
      found: await readFound(disk, folder, file, byDocument.get(file.key) ?? [], migrations),
    });
  const heads = newestBegin(generations)?.heads ?? {};
  const forward = await bringForward({ disk, folder, generations, migrations, heads }, read);
  const found: (readonly [key: string, found: FoundDocument])[] = forward.found.map(
    ({ file, found: each }) => [file.key, each],
  );
  const present = new Set(listed.files.map((file) => file.key));
  for (const key of expectedDocuments(generations, lines))
    if (!present.has(key)) found.push([key, withoutFile(key, byDocument.get(key) ?? [])]);
  for (const [key, each] of found) {
    findings.push(...each.findings);
    keep.push(...each.keep);
    if (each.loaded !== undefined) documents.set(key, each.loaded);
    if (each.closed !== undefined) closed.set(key, each.closed);
  }
  return {
    project,
    logging,
    documents,
    closed,
    findings,
    keep,
    lines,
    letGo: allLetGo(generations, lines),
    lacking: forward.lacking,
    spoiled: spoiledAmong(generations, overruled),
    leftovers: listed.leftovers,
    ...lastNumbers(generations, lines, documents),
  };
}

/** Files of a project that may lack what was saved in them: missing, not readable, or damaged. Each is a finding of its own too. */
export function notWhole({ closed, findings }: ProjectFolder): readonly string[] {
  const faults = findings.filter(({ severity }) => severity === 'fault');
  const files = [
    ...faults.flatMap(({ place }) => place.file ?? []),
    ...[...closed.keys()].map((key) => {
      const name = nameFromKey(key);
      return name === undefined ? key : documentPath(name);
    }),
  ];
  return [...new Set(files)];
}

async function readHandWritten(
  disk: Disk,
  folder: string,
  file: string,
  findings: Finding[],
): Promise<JsonText | undefined> {
  try {
    await disk.facts(join(folder, file));
  } catch (error) {
    if (isMissing(error)) return undefined;
  }
  const bytes = await readProjectFile(disk, folder, file, OTHER_LIMITS);
  const json = bytes.ok ? readJsonText(bytes.value, file, OTHER_LIMITS) : bytes;
  if (json.ok) return json.value;
  findings.push(...json.findings);
  return undefined;
}

/** The first line of the newest generation that has one. */
function newestBegin(generations: readonly Generation[]) {
  return generations.filter((generation) => generation.begin !== undefined).at(-1)?.begin?.begins;
}

/** Documents that the journal knows: those its newest generation lists, and those its lines change; less those let go since. */
function expectedDocuments(
  generations: readonly Generation[],
  lines: readonly WorkLine[],
): ReadonlySet<string> {
  const expected = new Set(newestBegin(generations)?.documents ?? []);
  for (const line of lines) {
    for (const key of documentsOf(line).map(documentKey)) {
      if ('letGo' in line) expected.delete(key);
      else expected.add(key);
    }
  }
  return expected;
}

function allLetGo(generations: readonly Generation[], lines: readonly WorkLine[]): readonly LetGo[] {
  const begun = newestBegin(generations)?.letGo ?? [];
  const said = new Set(begun.map((each) => JSON.stringify(each)));
  const since = lines.flatMap((line) => ('letGo' in line ? [line.letGo] : []));
  return [...begun, ...since.filter((each) => !said.has(JSON.stringify(each)))];
}

/**
 * A document's file that says a number past this was not written by a journal of ours, which counts a few thousand a year. Going on from it
 * would give numbers that the next opening does not read, so it says nothing of where this journal stands.
 */
const MOST_COUNTED = 1_000_000_000;

function lastNumbers(
  generations: readonly Generation[],
  lines: readonly WorkLine[],
  documents: ReadonlyMap<string, LoadedDocument>,
): { readonly lastGeneration: number; readonly lastSequence: number } {
  const positions = [...documents.values()]
    .map((loaded) => loaded.position)
    .filter(({ generation, sequence }) => Math.max(generation, sequence) <= MOST_COUNTED);
  const begins = generations.flatMap((generation) => generation.begin?.begins ?? []);
  return {
    lastGeneration: Math.max(
      0,
      ...generations.map((generation) => generation.generation),
      ...positions.map((position) => position.generation),
    ),
    lastSequence: Math.max(
      0,
      lines.at(-1)?.seq ?? 0,
      ...begins.map((begin) => begin.next - 1),
      ...positions.map((position) => position.sequence),
    ),
  };
}
