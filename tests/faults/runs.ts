import { afterKill, afterPowerCut, type Choice, type Medium, piecesAtRisk } from './medium.ts';
import { type Fault, type Operation, type RecordingDisk, recordingDisk } from './recording-disk.ts';
import { faultsOnReopening } from './reopening.ts';
import { freshProject, logSitting, nothingSeen, type Seen } from './sitting.ts';

/** What a run of fault points came to. */
export interface Tally {
  points: number;
  readonly failures: string[];
}

/** One reopened project in so many is closed again as well. */
const CLOSING_SHARE = 5;

/** Operations that change what is on the medium. */
const CHANGING: ReadonlySet<string> = new Set([
  'create',
  'write',
  'sync',
  'makeFolder',
  'rename',
  'unlink',
  'syncFolder',
]);

/** Whether a fault can happen at an operation. */
export function canHappen(fault: Fault, operation: Operation): boolean {
  if (fault === 'tear' || fault === 'short') return operation.name === 'write';
  if (fault === 'lost sync') return operation.name === 'sync';
  if (fault === 'ENOSPC') return ['create', 'write', 'makeFolder'].includes(operation.name);
  // A program killed while it reads leaves what it left at its last change.
  return fault === 'EIO' || CHANGING.has(operation.name);
}

/** What a sitting starts from: a medium, and what had been shown as saved before. */
export interface Start {
  readonly medium: Medium;
  readonly seen: Seen;
}

/** A new project, nothing logged. */
export async function firstDay(): Promise<Start> {
  return { medium: await freshProject(), seen: nothingSeen() };
}

/** A project whose last console was killed in the middle of a write, with rows in the journal that no file holds. */
export async function dayAfterACrash(): Promise<Start> {
  const start = await firstDay();
  const writes = (await operationsOfSitting(start)).filter(
    ({ name, path }) => name === 'write' && path.endsWith('.jsonl'),
  );
  const last = writes.at(-2)?.number ?? 0;
  const disk = recordingDisk(afterKill(start.medium), ({ number }) => (number === last ? 'tear' : undefined));
  const seen = nothingSeen();
  await Promise.race([logSitting(disk, seen), disk.ended]);
  await settle();
  return { medium: afterPowerCut(disk.medium, () => 'keep'), seen };
}

function copyOf(start: Start): { readonly medium: Medium; readonly seen: Seen } {
  return {
    medium: afterKill(start.medium),
    seen: {
      saved: [...start.seen.saved],
      desks: [...start.seen.desks],
      attempts: [...start.seen.attempts],
    },
  };
}

/** The operations of a sitting in which nothing goes wrong. */
export async function operationsOfSitting(start: Start): Promise<readonly Operation[]> {
  const { medium, seen } = copyOf(start);
  const disk = recordingDisk(medium);
  await logSitting(disk, seen);
  return disk.operations;
}

/** A disk for a sitting, perhaps a dishonest one: how the harness is shown to see what it is for. */
export type MakeDisk = (
  medium: Medium,
  fault: (operation: Operation) => Fault | undefined,
  after?: (operation: Operation) => void,
) => RecordingDisk;

/**
 * One sitting in which some operations go wrong, then: reopen what a kill at the end (and, for each given choice, a
 * power cut there) leaves.
 */
export async function runFaults(
  start: Start,
  faults: ReadonlyMap<number, Fault>,
  cuts: readonly Choice[],
  tally: Tally,
): Promise<void> {
  const { medium, seen } = copyOf(start);
  const disk = recordingDisk(medium, (operation) => {
    const fault = faults.get(operation.number);
    return fault !== undefined && canHappen(fault, operation) ? fault : undefined;
  });
  await Promise.race([logSitting(disk, seen), disk.ended]);
  await settle();
  const name = [...faults]
    .map(([at, fault]) => `${fault} at ${at} (${disk.operations[at]?.name} ${disk.operations[at]?.path})`)
    .join(', ');
  await check(afterKill(disk.medium), seen, name, tally);
  for (const [index, cut] of cuts.entries())
    await check(afterPowerCut(disk.medium, cut), seen, `${name}, then power cut ${index}`, tally);
}

/** Lets promises that were kept before the program ended reach the person who waited for them. */
async function settle(): Promise<void> {
  await new Promise((done) => setImmediate(done));
}

async function check(medium: Medium, seen: Seen, name: string, tally: Tally): Promise<void> {
  tally.points += 1;
  const faults = await faultsOnReopening(medium, seen, tally.points % CLOSING_SHARE === 0);
  if (faults.length > 0) tally.failures.push(`${name}: ${faults.join(' | ')}`);
}

/** Where the power went in a sitting: what was on the way to the medium then, and what had been shown as saved. */
export interface Moment {
  readonly operation: Operation;
  readonly medium: Medium;
  readonly saved: number;
}

/** A sitting in which nothing goes wrong, with the medium as it was after each operation that leaves anything at risk. */
export async function momentsOfSitting(
  start: Start,
  makeDisk: MakeDisk = recordingDisk,
): Promise<{ readonly seen: Seen; readonly moments: readonly Moment[] }> {
  const { medium, seen } = copyOf(start);
  const moments: Moment[] = [];
  const disk = makeDisk(
    medium,
    () => undefined,
    (operation) => {
      if (CHANGING.has(operation.name))
        moments.push({ operation, medium: afterKill(medium), saved: seen.saved.length });
    },
  );
  await logSitting(disk, seen);
  return { seen, moments };
}

/** Reopens what a power cut at a moment leaves, for each choice. */
export async function runPowerCuts(
  moment: Moment,
  seen: Seen,
  cuts: readonly Choice[],
  tally: Tally,
): Promise<void> {
  const then = { ...seen, saved: seen.saved.slice(0, moment.saved) };
  for (const [index, cut] of cuts.entries()) {
    const name = `power cut ${index} after ${moment.operation.number} (${moment.operation.name} ${moment.operation.path})`;
    await check(afterPowerCut(moment.medium, cut), then, name, tally);
  }
}

/** Every way to treat what is at risk that is told apart by one piece: none, all, one dropped, one kept, one torn, and seeded ones. */
export function cutsFor(medium: Medium, seeded: number, random: () => number): readonly Choice[] {
  const pieces = piecesAtRisk(medium);
  const cuts: Choice[] = [() => 'drop'];
  if (pieces === 0) return cuts;
  cuts.push(() => 'keep');
  for (let one = 0; one < pieces; one += 1) {
    cuts.push((piece) => (piece === one ? 0.5 : 'keep'));
    if (pieces > 1) {
      cuts.push((piece) => (piece === one ? 'drop' : 'keep'));
      cuts.push((piece) => (piece === one ? 'keep' : 'drop'));
    }
  }
  for (let number = 0; number < seeded; number += 1) cuts.push(seededCut(random, pieces));
  return cuts;
}

/** A cut that treats every piece by chance. */
export function seededCut(random: () => number, pieces: number): Choice {
  const fates = Array.from({ length: Math.max(1, pieces) }, () => {
    const chance = random();
    return chance < 0.4 ? ('keep' as const) : chance < 0.8 ? ('drop' as const) : (chance - 0.8) * 5;
  });
  return (piece) => fates[piece % fates.length] ?? 'drop';
}

/** Numbers from 0 to under 1 that look random and come the same for the same seed. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

export const FAULTS: readonly Fault[] = ['kill', 'tear', 'short', 'EIO', 'ENOSPC', 'lost sync'];
