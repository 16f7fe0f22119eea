import type { Disk } from '../files/disk.ts';
import { whyRefused } from '../files/disk.ts';
import { beginGeneration, type JournalFile } from '../files/journal.ts';
import { formatLine, type WorkLine } from '../files/journal-line.ts';

/** A line on its way to the medium. `safe` is filled in when it is written. */
export interface Pending {
  readonly line: WorkLine;
  /** Told once, when the line is on the medium or when the first try failed. */
  readonly told: (problem: string | undefined) => void;
  /** Called when the line is on the medium, in order. */
  readonly landed: () => void;
}

/** What the writer is given. */
export interface WriterNeeds {
  readonly disk: Disk;
  readonly folder: string;
  /** Rejects where the disk does not answer; gives who has taken the project over, in words, where somebody has. */
  readonly displaced: (generation: number) => Promise<string | undefined>;
  /** Keys of all documents, for the first line of a generation. */
  readonly documents: () => readonly string[];
  /** Whether a line is in the snapshots of all its documents. */
  readonly isCovered: (line: WorkLine) => boolean;
  readonly after: (ms: number, run: () => void) => () => void;
  readonly changed: () => void;
}

/** Where the journal stands when the writer starts. */
export interface WriterStart {
  readonly generation: number;
  readonly sequence: number;
  /** Lines found in the journal that snapshots may not hold. */
  readonly lines: readonly WorkLine[];
}

/** What the writer has come to. */
export interface WriterState {
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
  readonly nextSequence: () => number;
  readonly add: (pending: Pending) => void;
  /** Runs a task when no line is waiting and none is being written; lines that come meanwhile wait for it. */
  readonly between: (task: () => Promise<void>) => Promise<void>;
  /** Begins a new generation with what no snapshot holds, and tells whether that is nothing. */
  readonly turnOver: () => Promise<boolean>;
  /** Tries at once; resolves when all that was added is on the medium, or could not be put there. */
  readonly tryNow: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

const FIRST_RETRY_MS = 250;
const LONGEST_RETRY_MS = 5_000;

/** Starts the writer of a project's journal. */
export function startWriter(needs: WriterNeeds, start: WriterStart): Writer {
  let file: JournalFile | undefined;
  let generation = start.generation;
  let sequence = start.sequence;
  let safe = start.sequence;
  let written: WorkLine[] = [...start.lines];
  let pending: Pending[] = [];
  let tasks: {
    readonly run: () => Promise<void>;
    readonly done: () => void;
    readonly failed: (error: unknown) => void;
  }[] = [];
  let running: Promise<void> | undefined;
  let failure: string | undefined;
  let displaced: string | undefined;
  let retryMs = FIRST_RETRY_MS;
  let cancelRetry: (() => void) | undefined;

  const uncovered = (): readonly WorkLine[] => {
    written = written.filter((line) => !needs.isCovered(line));
    return written;
  };

  const begin = async (lines: readonly WorkLine[]): Promise<void> => {
    const next = lines[0]?.seq ?? sequence + 1;
    generation += 1;
    const head = formatLine({ begins: { generation, next, documents: needs.documents() } });
    const body = lines.map((line) => formatLine({ ...line, safe: next - 1 })).join('');
    file = await beginGeneration(needs.disk, needs.folder, generation, head + body);
  };

  const abandon = (): void => {
    // A descriptor that failed once can report success over lost bytes, so it is never used again.
    file?.close().catch(() => {});
    file = undefined;
  };

  const requireOurs = async (): Promise<void> => {
    displaced = await needs.displaced(generation);
    if (displaced !== undefined) throw new Error(displaced);
  };

  const write = async (batch: readonly Pending[]): Promise<void> => {
    const lines = batch.map(({ line }) => line);
    if (file !== undefined) await file.append(lines.map((line) => formatLine({ ...line, safe })).join(''));
    else {
      await requireOurs();
      await begin([...uncovered(), ...lines]);
    }
    // Asked when the lines are on the medium and not before: whoever takes the project over from here on reads them.
    await requireOurs();
  };

  const flush = async (): Promise<boolean> => {
    const batch = [...pending];
    try {
      await write(batch);
    } catch (error) {
      abandon();
      failure = displaced ?? whyRefused(error);
      for (const { told } of batch) told(failure);
      needs.changed();
      return false;
    }
    failure = undefined;
    retryMs = FIRST_RETRY_MS;
    pending = pending.slice(batch.length);
    safe = batch.at(-1)?.line.seq ?? safe;
    for (const { line, landed, told } of batch) {
      written.push(line);
      landed();
      told(undefined);
    }
    needs.changed();
    return true;
  };

  const work = async (): Promise<void> => {
    for (;;) {
      if (pending.length > 0) {
        if (await flush()) continue;
        return retryLater();
      }
      const [task, ...rest] = tasks;
      if (task === undefined) return;
      tasks = rest;
      await task.run().then(task.done, task.failed);
    }
  };

  const retryLater = (): void => {
    const waiting = tasks;
    tasks = [];
    for (const task of waiting) task.failed(new Error(failure));
    if (displaced !== undefined) return;
    cancelRetry?.();
    cancelRetry = needs.after(retryMs, wake);
    retryMs = Math.min(LONGEST_RETRY_MS, retryMs * 2);
  };

  const wake = (): void => {
    if (running !== undefined || displaced !== undefined) return;
    // Edits of one keystroke arrive together: they wait for the end of this turn and share an fsync.
    running = Promise.resolve()
      .then(work)
      .finally(() => {
        running = undefined;
        if (tasks.length > 0 || (pending.length > 0 && failure === undefined)) wake();
        needs.changed();
      });
  };

  return {
    state: () => ({ generation, sequence, safe, pending, busy: running !== undefined, failure, displaced }),
    nextSequence: () => {
      sequence += 1;
      return sequence;
    },
    add: (line) => {
      sequence = Math.max(sequence, line.line.seq);
      pending = [...pending, line];
      if (failure === undefined) wake();
    },
    between: (run) =>
      new Promise((done, failed) => {
        if (displaced !== undefined) return failed(new Error(displaced));
        tasks = [...tasks, { run, done, failed }];
        if (failure === undefined || pending.length === 0) wake();
        else retryLater();
      }),
    turnOver: async () => {
      const left = uncovered();
      await file?.close();
      file = undefined;
      await begin(left);
      return left.length === 0;
    },
    tryNow: async () => {
      while (running !== undefined) await running;
      if (pending.length > 0) wake();
      while (running !== undefined) await running;
    },
    stop: async () => {
      cancelRetry?.();
      await file?.close().catch(() => {});
      file = undefined;
    },
  };
}
