import type { Disk } from '../../src/files/disk.ts';
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
  /** What is done from there; a sitting at the rig where nothing else is given. */
  readonly run?: (disk: Disk, seen: Seen) => Promise<void>;
  /** The disk it is done on, over a medium; one of Linux where nothing else is given. */
  readonly makeDisk?: MakeDisk;
}

/** A new project, nothing logged. */
export async function firstDay(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  return { medium: await freshProject(), seen: nothingSeen(), makeDisk };
}

/** A project whose last console was killed in the middle of a write, with rows in the journal that no file holds. */
export async function dayAfterACrash(makeDisk: MakeDisk = recordingDisk): Promise<Start> {
  const start = { ...(await firstDay()), makeDisk };
  const writes = (await operationsOfSitting(start)).filter(
    ({ name, path }) => name === 'write' && path.endsWith('.jsonl'),
  );
  const last = writes.at(-2)?.number ?? 0;
  const disk = makeDisk(afterKill(start.medium), ({ number }) => (number === last ? 'tear' : undefined));
  const seen = nothingSeen();
  await Promise.race([logSitting(disk, seen), disk.ended]);
  await settle();
  return { medium: afterPowerCut(disk.medium, () => 'keep'), seen, makeDisk };
}

function copyOf(start: Start): { readonly medium: Medium; readonly seen: Seen } {
  const { saved, desks, attempts, written, unsaid, made } = start.seen;
  return {
    medium: afterKill(start.medium),
    seen: {
      saved: [...saved],
      desks: [...desks],
      attempts: [...attempts],
      written: [...written],
      unsaid: [...unsaid],
      made,
    },
  };
}

const runOf = ({ run = logSitting }: Start) => run;

/** The operations of a sitting in which nothing goes wrong. */
export async function operationsOfSitting(start: Start): Promise<readonly Operation[]> {
  const { medium, seen } = copyOf(start);
  const disk = (start.makeDisk ?? recordingDisk)(medium, () => undefined);
  await runOf(start)(disk, seen);
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
  const disk = (start.makeDisk ?? recordingDisk)(medium, (operation) => {
    const fault = faults.get(operation.number);
    return fault !== undefined && canHappen(fault, operation) ? fault : undefined;
  });
  await Promise.race([runOf(start)(disk, seen), disk.ended]);
  await settle();
  const name = [...faults]
    .map(([at, fault]) => `${fault} at ${at} (${disk.operations[at]?.name} ${disk.operations[at]?.path})`)
    .join(', ');
  await check(afterKill(disk.medium), seen, name, tally, start.makeDisk);
  for (const [index, cut] of cuts.entries())
    await check(
      afterPowerCut(disk.medium, cut),
      seen,
      `${name}, then power cut ${index}`,
      tally,
      start.makeDisk,
    );
}

/** Lets promises that were kept before the program ended reach the person who waited for them. */
async function settle(): Promise<void> {
  await new Promise((done) => setImmediate(done));
}

async function check(
  medium: Medium,
  seen: Seen,
  name: string,
  tally: Tally,
  makeDisk: MakeDisk = recordingDisk,
): Promise<void> {
  tally.points += 1;
  const disk = makeDisk(medium, () => undefined);
  const faults = [
    ...(await faultsOnReopening(disk, seen, tally.points % CLOSING_SHARE === 0)),
    ...seen.unsaid.map((each) => `unsaid: ${each}`),
  ];
  if (faults.length > 0) tally.failures.push(`${name}: ${faults.join(' | ')}`);
}

/** Where the power went in a sitting: what was on the way to the medium then, and what had been shown as saved. */
export interface Moment {
  readonly operation: Operation;
  readonly medium: Medium;
  readonly saved: number;
  readonly written: number;
  readonly made: boolean;
}

/** A sitting in which nothing goes wrong, with the medium as it was after each operation that leaves anything at risk. */
export async function momentsOfSitting(
  start: Start,
  makeDisk: MakeDisk = start.makeDisk ?? recordingDisk,
): Promise<{ readonly seen: Seen; readonly moments: readonly Moment[] }> {
  const { medium, seen } = copyOf(start);
  const moments: Moment[] = [];
  const disk = makeDisk(
    medium,
    () => undefined,
    (operation) => {
      if (CHANGING.has(operation.name))
        moments.push({
          operation,
          medium: afterKill(medium),
          saved: seen.saved.length,
          written: seen.written.length,
          made: seen.made,
        });
    },
  );
  await runOf(start)(disk, seen);
  return { seen, moments };
}

/** Reopens what a power cut at a moment leaves, for each choice. */
export async function runPowerCuts(
  moment: Moment,
  seen: Seen,
  cuts: readonly Choice[],
  tally: Tally,
  makeDisk?: MakeDisk,
): Promise<void> {
  const { saved, written, made } = moment;
  const then = { ...seen, saved: seen.saved.slice(0, saved), written: seen.written.slice(0, written), made };
  for (const [index, cut] of cuts.entries()) {
    const name = `power cut ${index} after ${moment.operation.number} (${moment.operation.name} ${moment.operation.path})`;
    await check(afterPowerCut(moment.medium, cut), then, name, tally, makeDisk);
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

/** How thoroughly a start is gone through. */
export interface Sweep {
  /** Seeded power cuts at each moment, beside those that are told apart by one piece. */
  readonly cuts: number;
  /** Seeded power cuts after each fault. */
  readonly cutsAFault: number;
  /** Pairs of faults, the second after one that the program survives. */
  readonly pairs: number;
  /** Every so-manieth moment and operation. */
  readonly every: number;
}

/** Goes through a start: the power cut after each operation, each fault at each operation and what a power cut leaves of it, pairs of faults. */
export async function sweep(start: Start, how: Sweep, random: () => number, tally: Tally): Promise<void> {
  const some = <T>(all: readonly T[]): readonly T[] => all.filter((_, index) => index % how.every === 0);
  const { seen, moments } = await momentsOfSitting(start);
  for (const moment of some(moments))
    await runPowerCuts(moment, seen, cutsFor(moment.medium, how.cuts, random), tally, start.makeDisk);
  const operations = await operationsOfSitting(start);
  const cuts = () => Array.from({ length: how.cutsAFault }, () => seededCut(random, 12));
  for (const operation of some(operations))
    for (const fault of FAULTS)
      if (canHappen(fault, operation))
        await runFaults(start, new Map([[operation.number, fault]]), cuts(), tally);
  for (let pair = 0; pair < how.pairs; pair += 1)
    await runFaults(start, twoFaults(random, operations.length), cuts().slice(0, 2), tally);
}

/** A first fault that the program survives and a second of any kind after it. */
function twoFaults(random: () => number, operations: number): ReadonlyMap<number, Fault> {
  const pick = (from: readonly Fault[]): Fault => from[Math.floor(random() * from.length)] ?? 'EIO';
  const first = Math.floor(random() * operations);
  const second = first + 1 + Math.floor(random() * 30);
  return new Map([
    [first, pick(['EIO', 'ENOSPC', 'short', 'lost sync'])],
    [second, pick(FAULTS)],
  ]);
}

export const FAULTS: readonly Fault[] = ['kill', 'tear', 'short', 'EIO', 'ENOSPC', 'lost sync'];
