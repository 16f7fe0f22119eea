import type { Disk } from '../files/disk.ts';
import { beginGeneration, type JournalFile } from '../files/journal.ts';
import { formatLine, type LetGo, type WorkLine } from '../files/journal-line.ts';

/** What writing a journal needs. */
export interface PenNeeds {
  readonly disk: Disk;
  readonly folder: string;
  /** Rejects where another console has taken the project over, or the disk does not answer. */
  readonly requireOurs: (generation: number) => Promise<void>;
  /** Keys of all documents, for the first line of a generation. */
  readonly documents: () => readonly string[];
  readonly letGo: () => readonly LetGo[];
  /** The end of each document's history, by key: what its file must hold from here on. */
  readonly heads: () => Readonly<Record<string, string>>;
  /** Whether a line is in the files of all its documents. */
  readonly isCovered: (line: WorkLine) => boolean;
}

/** Where a journal stands when work begins: its last numbers, and lines that files may not hold yet. */
export interface PenStart {
  readonly generation: number;
  readonly sequence: number;
  readonly lines: readonly WorkLine[];
}

/** Writes lines into the open generation of a journal, or begins one. */
export interface Pen {
  readonly generation: () => number;
  /** The last sequence known to be on the medium. */
  readonly safe: () => number;
  /** Lines on the medium that not every file of theirs holds yet. */
  readonly unfiled: () => readonly WorkLine[];
  /** The lines are on the medium, and the project still ours, when this resolves. */
  readonly write: (lines: readonly WorkLine[]) => Promise<void>;
  /** Begins a new generation with what no file holds, and tells whether that is nothing. */
  readonly turnOver: () => Promise<boolean>;
  /** Lets the open generation go: the next write begins another. */
  readonly drop: () => Promise<void>;
}

/** A pen that has not written yet. */
export function makePen(needs: PenNeeds, start: PenStart): Pen {
  let file: JournalFile | undefined;
  let { generation, sequence: safe } = start;
  let written: readonly WorkLine[] = start.lines;

  /** A generation holds every line that no file holds, so that with the files it is the whole project. */
  const begin = async (lines: readonly WorkLine[]): Promise<boolean> => {
    written = written.filter((line) => !needs.isCovered(line));
    const all = [...written, ...lines];
    const next = all[0]?.seq ?? safe + 1;
    generation += 1;
    const letGo = needs.letGo();
    const head = formatLine({
      begins: {
        generation,
        next,
        documents: needs.documents(),
        ...(letGo.length === 0 ? {} : { letGo }),
        heads: needs.heads(),
      },
    });
    const body = all.map((line) => formatLine({ ...line, safe: next - 1 })).join('');
    file = await beginGeneration(needs.disk, needs.folder, generation, head + body);
    return all.length === 0;
  };
  const drop = async (): Promise<void> => {
    const dropped = file;
    file = undefined;
    await dropped?.close().catch(() => {});
  };

  return {
    generation: () => generation,
    safe: () => safe,
    unfiled: () => written.filter((line) => !needs.isCovered(line)),
    drop,
    write: async (lines) => {
      if (file !== undefined) await file.append(lines.map((line) => formatLine({ ...line, safe })).join(''));
      else {
        await needs.requireOurs(generation);
        await begin(lines);
      }
      // Asked when the lines are on the medium and not before: whoever takes the project over from here on reads them.
      await needs.requireOurs(generation);
      written = [...written, ...lines];
      safe = lines.at(-1)?.seq ?? safe;
    },
    turnOver: async () => {
      await drop();
      return begin([]);
    },
  };
}
