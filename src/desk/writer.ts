import { whyRefused } from '../files/disk.ts';
import type { WorkLine } from '../files/journal-line.ts';
import { makePen, type Pen, type PenNeeds, type PenStart } from './pen.ts';

/** A line on its way to the medium. */
interface Pending {
  readonly line: WorkLine;
  /** Called when the line is on the medium, in order. */
  readonly landed: () => void;
  /** Told when the line is on the medium, or why a try failed; only the first counts. */
  readonly told: (problem: string | undefined) => void;
}

/** What the writer is given. */
export interface WriterNeeds extends Omit<PenNeeds, 'requireOurs'> {
  /** Who has taken the project over, in words; undefined where it is ours. Rejects where the disk does not answer. */
  readonly displaced: (generation: number) => Promise<string | undefined>;
  readonly after: (ms: number, run: () => void) => () => void;
  readonly changed: () => void;
}

/** What the writer has come to. */
interface WriterState {
  readonly generation: number;
  /** The last sequence given to a line, and the last known to be on the medium. */
  readonly sequence: number;
  readonly safe: number;
  readonly pending: readonly Pending[];
  readonly busy: boolean;
  readonly failure: string | undefined;
  /** Set once and for good when another console has taken over. */
  readonly displaced: string | undefined;
}

/** Appends lines to the journal in order, many to one fsync where they come faster than the disk. */
export interface Writer {
  readonly state: () => WriterState;
  /** Lines on the medium that not every file of theirs holds yet. */
  readonly unfiled: () => readonly WorkLine[];
  readonly nextSequence: () => number;
  readonly add: (pending: Pending) => void;
  /** Runs a task while no line is being written; lines that come meanwhile wait for it. Rejects while lines can't be written. */
  readonly between: (task: () => Promise<void>) => Promise<void>;
  /** Begins a new generation with what no file holds, and tells whether that is nothing. Only within a task. */
  readonly turnOver: () => Promise<boolean>;
  /** Tries at once; resolves when all that was added is on the medium, or could not be put there. */
  readonly tryNow: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

interface Task {
  readonly run: () => Promise<void>;
  readonly done: () => void;
  readonly failed: (error: unknown) => void;
}

/** The writer's own record. */
interface WriterRecord {
  readonly needs: WriterNeeds;
  readonly pen: Pen;
  sequence: number;
  pending: readonly Pending[];
  tasks: readonly Task[];
  running: Promise<void> | undefined;
  failure: string | undefined;
  displaced: string | undefined;
  retryMs: number;
  cancelRetry: (() => void) | undefined;
}

const FIRST_RETRY_MS = 250;
const LONGEST_RETRY_MS = 5_000;

/** Starts the writer of a project's journal. */
export function startWriter(needs: WriterNeeds, start: PenStart): Writer {
  const requireOurs = async (generation: number): Promise<void> => {
    record.displaced = await needs.displaced(generation);
    if (record.displaced !== undefined) throw new Error(record.displaced);
  };
  const record: WriterRecord = {
    needs,
    pen: makePen({ ...needs, requireOurs }, start),
    sequence: start.sequence,
    pending: [],
    tasks: [],
    running: undefined,
    failure: undefined,
    displaced: undefined,
    retryMs: FIRST_RETRY_MS,
    cancelRetry: undefined,
  };
  return {
    state: () => stateOf(record),
    unfiled: record.pen.unfiled,
    nextSequence: () => {
      record.sequence += 1;
      return record.sequence;
    },
    add: (pending) => {
      record.sequence = Math.max(record.sequence, pending.line.seq);
      record.pending = [...record.pending, pending];
      if (record.failure === undefined) wake(record);
    },
    between: (run) => between(record, run),
    turnOver: record.pen.turnOver,
    tryNow: () => tryNow(record),
    stop: async () => {
      record.cancelRetry?.();
      await record.pen.drop();
    },
  };
}

function stateOf({ pen, sequence, pending, running, failure, displaced }: WriterRecord): WriterState {
  const [generation, safe] = [pen.generation(), pen.safe()];
  return { generation, sequence, safe, pending, busy: running !== undefined, failure, displaced };
}

/** Works off what is waiting unless that is being done. Edits of one keystroke come together and share an fsync. */
function wake(record: WriterRecord): void {
  if (record.running !== undefined || record.displaced !== undefined) return;
  record.running = Promise.resolve()
    .then(() => work(record))
    .finally(() => {
      record.running = undefined;
      if (record.tasks.length > 0 || (record.pending.length > 0 && record.failure === undefined))
        wake(record);
      record.needs.changed();
    });
}

/** Lines first, then tasks one by one, lines again in between. */
async function work(record: WriterRecord): Promise<void> {
  for (;;) {
    if (record.pending.length > 0) {
      if (await flush(record)) continue;
      return retryLater(record);
    }
    const [task, ...rest] = record.tasks;
    if (task === undefined) return;
    record.tasks = rest;
    await task.run().then(task.done, task.failed);
  }
}

/** Writes every waiting line; false where that failed. */
async function flush(record: WriterRecord): Promise<boolean> {
  const batch = record.pending;
  try {
    await record.pen.write(batch.map(({ line }) => line));
  } catch (error) {
    // A descriptor that failed once can report success over lost bytes, so it is never used again.
    void record.pen.drop();
    record.failure = record.displaced ?? whyRefused(error);
    for (const { told } of batch) told(record.failure);
    record.needs.changed();
    return false;
  }
  record.failure = undefined;
  record.retryMs = FIRST_RETRY_MS;
  record.pending = record.pending.slice(batch.length);
  for (const { landed, told } of batch) {
    landed();
    told(undefined);
  }
  record.needs.changed();
  return true;
}

function retryLater(record: WriterRecord): void {
  const waiting = record.tasks;
  record.tasks = [];
  for (const task of waiting) task.failed(new Error(record.failure));
  if (record.displaced !== undefined) return;
  record.cancelRetry?.();
  record.cancelRetry = record.needs.after(record.retryMs, () => wake(record));
  record.retryMs = Math.min(LONGEST_RETRY_MS, record.retryMs * 2);
}

function between(record: WriterRecord, run: () => Promise<void>): Promise<void> {
  const refusal = record.displaced ?? (record.pending.length > 0 ? record.failure : undefined);
  if (refusal !== undefined) return Promise.reject(new Error(refusal));
  return new Promise((done, failed) => {
    record.tasks = [...record.tasks, { run, done, failed }];
    wake(record);
  });
}

async function tryNow(record: WriterRecord): Promise<void> {
  while (record.running !== undefined) await record.running;
  if (record.pending.length > 0) wake(record);
  while (record.running !== undefined) await record.running;
}
