import { basename } from 'node:path';
import type { Disk } from '../../files/disk.ts';
import { HAND_WRITTEN } from '../../files/project-folder.ts';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import type { WrittenText } from '../../handover/bundle/known-copies.ts';
import { joinedParts } from '../../handover/bundle/parts.ts';
import { noBeginning } from '../../handover/findings.ts';
import { type Arrival, type ArrivedPart, type Home, together } from './arrival.ts';
import { arrivalIn, readArrival } from './read-arrival.ts';

/** No project is here yet: whatever comes is of the one that begins. */
const NOWHERE: Home = { project: undefined, handWritten: {} };

/**
 * The files written by hand that a project begins with, from the first of some bundles, whole or in parts, that brings them all. Nothing is written;
 * refused where none does, with what is missing.
 */
export async function readBeginning(
  disk: Disk,
  paths: readonly string[],
): Promise<Result<readonly WrittenText[]>> {
  const read = await Promise.all(paths.map((path) => readArrival(disk, path, NOWHERE)));
  const refusals = read.flatMap((each) => (each.ok ? [] : each.findings));
  if (refusals.length > 0) return refused(...refusals);
  const arrival = together(read.flatMap((each) => (each.ok ? [each.value] : [])));
  const gathered = await fromParts(arrival.parts ?? []);
  if (!gathered.ok) return gathered;
  const senders = [...(arrival.senders ?? []), ...(gathered.value.senders ?? [])];
  const found = senders.find(({ written }) => isWhole(written));
  if (found !== undefined) return ok(found.written);
  return refused(nothingToBeginWith(paths));
}

const isWhole = (written: readonly WrittenText[]): boolean =>
  Object.values(HAND_WRITTEN).every((name) => written.some(({ path }) => path === name));

/** What the bundles of some parts bring, where all parts of one are there; refused where one is missing. */
async function fromParts(parts: readonly ArrivedPart[]): Promise<Result<Arrival>> {
  const arrivals: Arrival[] = [];
  for (const sha256 of new Set(parts.map(({ header }) => header.sha256))) {
    const those = parts.filter(({ header }) => header.sha256 === sha256);
    const [first] = those;
    if (first === undefined) continue;
    const { bundle, of } = first.header;
    const here = new Set(those.map(({ header }) => header.part));
    const missing = Array.from({ length: of }, (_, index) => index + 1).filter((part) => !here.has(part));
    if (missing.length > 0) return refused(partsMissing(bundle, missing));
    const each = those.filter(
      (part, index) => those.findIndex(({ header }) => header.part === part.header.part) === index,
    );
    const whole = joinedParts(each, `${bundle}.zip`);
    const arrival = whole.ok ? await arrivalIn(whole.value, `${bundle}.zip`, NOWHERE) : whole;
    if (!arrival.ok) return arrival;
    arrivals.push(arrival.value);
  }
  return ok(together(arrivals));
}

function partsMissing(bundle: string, missing: readonly number[]): Finding {
  return noBeginning.at(
    { file: `${bundle}.zip` },
    {
      problem: `${missing.length === 1 ? 'part' : 'parts'} ${missing.join(', ')} of it ${missing.length === 1 ? 'is' : 'are'} missing`,
      remedy: 'Give all of its parts at once. Nothing was made.',
    },
  );
}

function nothingToBeginWith(paths: readonly string[]): Finding {
  return noBeginning.at(
    { file: paths.map((path) => basename(path)).join(', ') },
    {
      problem: 'a project begins with project.json and logging.json, and none of these brings both',
      remedy: 'Ask for a bundle in full: offsider pack --whole. Nothing was made.',
    },
  );
}
