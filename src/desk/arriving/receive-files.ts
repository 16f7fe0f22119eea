import type { Disk } from '../../files/disk.ts';
import { documentPath } from '../../files/document-file.ts';
import { HAND_WRITTEN } from '../../files/project-folder.ts';
import type { Finding, Result } from '../../finding/finding.ts';
import { heldByAll, type KnownCopy } from '../../handover/bundle/known-copies.ts';
import type { PartHeader } from '../../handover/bundle/parts.ts';
import type { Project } from '../../project/project.ts';
import { differenceLine, schemaDiff } from '../../schema/change/schema-diff.ts';
import { resolveSchema } from '../../schema/read/resolve.ts';
import type { Desk } from '../contract.ts';
import { besideFile, parentsOf } from '../load-project.ts';
import type { Arrival, Home, LeftAlone } from './arrival.ts';
import { clearParts, gatherParts, keepPart } from './inbox.ts';
import { arrivalIn, readArrival } from './read-arrival.ts';
import { type TakenArrival, takeArrival } from './take-arrival.ts';

/** What comes of something that arrives, one after the other. */
export type Received =
  | { readonly kind: 'taken'; readonly taken: TakenArrival }
  /** Left as it is, with what the sender's schema logs differently where that is why. */
  | { readonly kind: 'left'; readonly left: LeftAlone; readonly drift: readonly string[] }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] }
  /** A bundle of which parts are missing: nothing of it is taken in. */
  | { readonly kind: 'waiting'; readonly header: PartHeader; readonly missing: readonly number[] }
  /** What another copy holds of ours, now that it is noted. */
  | { readonly kind: 'heard'; readonly by: string; readonly holds: number; readonly of: number }
  | { readonly kind: 'not kept'; readonly what: string; readonly problem: string };

/** Where something arrives: an open project, the disk that it comes from, and whether it may take much away. */
export interface ReceivedAt {
  readonly desk: Desk;
  readonly project: Project;
  readonly disk: Disk;
  readonly mayClear: boolean;
}

/** True of what asks nothing of anyone. */
export function isFine(received: Received): boolean {
  if (received.kind === 'left') return received.left.lacking === undefined && received.drift.length === 0;
  if (received.kind === 'heard') return true;
  if (received.kind !== 'taken') return false;
  const { taken } = received;
  return taken.ok === true && taken.asked.length === 0 && taken.drift.length === 0;
}

/**
 * Takes in files: bundles, their parts, mails with such attached, documents by themselves. Each is taken in whole or not at all; parts wait,
 * durably, until all of their bundle are there, whatever their order. `tell` hears of each thing as it comes.
 */
export async function receiveFiles(
  at: ReceivedAt,
  paths: readonly string[],
  tell: (received: Received) => void,
): Promise<void> {
  const waiting = new Map<string, PartHeader>();
  for (const path of paths) {
    const arrival = await readArrival(at.disk, path, await homeOf(at));
    if (!arrival.ok) tell({ kind: 'refused', findings: arrival.findings });
    else {
      for (const part of arrival.value.parts ?? []) {
        const kept = await keepPart(at.desk, part);
        if (kept.ok) waiting.set(part.header.sha256, part.header);
        else tell({ kind: 'not kept', what: part.from, problem: kept.problem });
      }
      await takeAll(at, arrival.value, tell);
    }
  }
  for (const header of waiting.values()) await takeGathered(at, header, tell);
}

/** Takes in a bundle of parts where all of them are there. Parts stay until everything in it is taken. */
async function takeGathered(
  at: ReceivedAt,
  header: PartHeader,
  tell: (received: Received) => void,
): Promise<void> {
  const gathered = await gatherParts(at.disk, at.desk, header);
  if ('missing' in gathered) {
    tell({ kind: 'waiting', header, missing: gathered.missing });
    return;
  }
  const { whole, files } = gathered;
  const arrival: Result<Arrival> = whole.ok
    ? await arrivalIn(whole.value, `${header.bundle}.zip`, await homeOf(at))
    : whole;
  if (!arrival.ok) {
    // Parts that do not give their bundle would only be put together again: each is to be sent again.
    await clearParts(at.disk, at.desk, files);
    tell({ kind: 'refused', findings: arrival.findings });
  } else if (await takeAll(at, arrival.value, tell)) await clearParts(at.disk, at.desk, files);
}

/** Takes in what one file or one bundle of parts brought; true where every document of it is in. */
async function takeAll(
  at: ReceivedAt,
  { documents, left, senders = [] }: Arrival,
  tell: (received: Received) => void,
): Promise<boolean> {
  let all = true;
  for (const each of documents) {
    const taken = await takeArrival(at.desk, at.project.schema, each, at.mayClear);
    tell({ kind: 'taken', taken });
    if (taken.ok !== true) all = false;
  }
  for (const each of left) tell({ kind: 'left', left: each, drift: await driftOf(at, each) });
  for (const sender of senders) {
    const kept = await at.desk.rememberCopy(sender);
    if (kept.ok) tell(heardOf(at.desk, sender));
    else tell({ kind: 'not kept', what: `what the copy of ${sender.by} holds`, problem: kept.problem });
  }
  return all;
}

/** How many of our documents another copy holds to their last edit. */
function heardOf(desk: Desk, { by, documents }: KnownCopy): Received {
  const ours = [...desk.documents().values()];
  const held = ours.filter(
    (each) => heldByAll([{ documents }], documentPath(each), each.history) === each.history.at(-1)?.hash,
  );
  return { kind: 'heard', by, holds: held.length, of: ours.length };
}

/** What the sender's schema logs otherwise than ours, as `schema diff` says it. A file that it starts from and did not send is ours. */
async function driftOf(
  { desk, project, disk }: ReceivedAt,
  { logging }: LeftAlone,
): Promise<readonly string[]> {
  if (logging === undefined) return [];
  const ours = desk.logging();
  const beside = ours === undefined ? undefined : await parentsOf(disk, desk.folder(), ours);
  const theirs = resolveSchema({ file: HAND_WRITTEN.logging, text: logging.text }, (reference, from) => {
    const file = besideFile(reference, from);
    const text = logging.parents.get(file);
    return text === undefined ? beside?.(reference, from) : { file, text };
  });
  if (!theirs.ok) return [`it can't be read as a schema: ${theirs.findings[0]?.problem ?? ''}`];
  return schemaDiff(project.schema, theirs.value.schema).map((each) =>
    differenceLine(each, { first: 'ours', second: 'theirs' }),
  );
}

async function homeOf({ desk, project }: ReceivedAt): Promise<Home> {
  const written = await desk.writtenTexts();
  return {
    project: project.settings.name,
    handWritten: Object.fromEntries(written.map(({ path, text }) => [path, text])),
    get: desk.get,
    known: await desk.knownCopies(),
  };
}
