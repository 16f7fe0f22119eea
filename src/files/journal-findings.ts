import type { Finding } from '../finding/finding.ts';
import { damagedJournal, tornTail } from './findings.ts';
import { type Generation, generationFile } from './journal.ts';
import type { WorkLine } from './journal-line.ts';
import type { ToKeep } from './keep-copy.ts';

/** More damaged stretches of one file help no one: the file is to be put back whole. */
const MOST_NAMED = 20;

/** The torn tails, to be kept before their files go. */
export function tornTails(generations: readonly Generation[]): readonly ToKeep[] {
  return generations.flatMap(({ generation, torn: tail }) =>
    tail === undefined
      ? []
      : [{ file: generationFile(generation), bytes: tail.bytes, because: `torn-line-${tail.line}` }],
  );
}

/** Generations that must not be deleted: someone may want to look at what could not be used of them. */
export function spoiledAmong(
  generations: readonly Generation[],
  overruled: readonly { readonly generation: number }[],
): ReadonlySet<number> {
  const damagedOnes = generations.filter(({ damaged: lines }) => lines.length > 0);
  return new Set([...damagedOnes, ...overruled].map(({ generation }) => generation));
}

/** What is wrong with the journal as a whole. */
export function journalFindings(
  generations: readonly Generation[],
  overruled: readonly { readonly generation: number; readonly line: WorkLine }[],
): readonly Finding[] {
  const findings: Finding[] = [];
  for (const generation of generations) {
    const file = generationFile(generation.generation);
    if (generation.torn !== undefined) findings.push(torn(file, generation.torn.line, generation.torn.bytes));
    for (const stretch of generation.damaged.slice(0, MOST_NAMED)) findings.push(damaged(file, stretch));
  }
  for (const { generation, line } of overruled) findings.push(displaced(generationFile(generation), line));
  return findings;
}

function torn(file: string, line: number, bytes: Uint8Array): Finding {
  const start = new TextDecoder().decode(bytes.subarray(0, 60));
  return tornTail.at(
    { file, line },
    {
      excerpt: start,
      problem: `the last ${bytes.length} bytes were being written when the program or the power went`,
      remedy:
        'They were never shown as saved. They are set aside in journal/kept; check the last row against the chips.',
    },
  );
}

function damaged(file: string, { line, lines }: Generation['damaged'][number]): Finding {
  return damagedJournal.at(
    { file, line },
    {
      problem:
        lines === 1
          ? 'this line had been saved and can no longer be read'
          : `${lines} lines from here on had been saved and can no longer be read`,
      remedy:
        'Keep a copy of the project folder now. Check the holes logged that day for a missing row. The line is left unchanged.',
    },
  );
}

/** What a line did, in words. */
export function workWords(line: WorkLine): string {
  if ('edit' in line) return line.edit.what;
  return 'adopt' in line ? 'a copy taken in' : `given up: ${line.letGo.why}`;
}

function displaced(file: string, line: WorkLine): Finding {
  return damagedJournal.at(
    { file },
    {
      excerpt: workWords(line),
      problem: 'a console wrote this after another one had taken the project over',
      remedy: 'It was not shown as saved and is not in the log. Enter it again if it is wanted.',
    },
  );
}
