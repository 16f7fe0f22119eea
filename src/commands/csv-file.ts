import { createHash } from 'node:crypto';
import { basename, dirname, resolve } from 'node:path';
import { CsvError, parse } from 'csv-parse/sync';
import { readProjectFile } from '../files/read-file.ts';
import { OTHER_LIMITS } from '../files/read-json.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { fileUnreadable } from './findings.ts';

/** A CSV that arrived, as read: its name, the SHA-256 of its bytes, its records. */
export interface CsvFile {
  readonly file: string;
  readonly sha256: string;
  readonly records: readonly (readonly string[])[];
}

/** More columns than any laboratory reports; a line that has more is a muddle. */
const MOST_COLUMNS = 2000;
/** Characters of the longest cell that is read. */
const LONGEST_CELL = 2000;

/**
 * Reads a CSV from wherever it arrived. Refused: a file that can't be read or is too large, bytes that are not UTF-8, a quotation
 * mark left open, a line or a cell past the limits. Nothing in it is run, and nothing is written.
 */
export async function readCsvFile(path: string): Promise<Result<CsvFile>> {
  const whole = resolve(path);
  const file = basename(whole);
  const bytes = await readProjectFile(realDisk, dirname(whole), file, OTHER_LIMITS);
  if (!bytes.ok) return bytes;
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes.value);
  } catch {
    return refused(unreadable(file, 'it is not UTF-8 text', 'Save it as "CSV UTF-8" and give that file.'));
  }
  const records = recordsOf(text, file);
  if (!records.ok) return records;
  return ok({ file, sha256: createHash('sha256').update(bytes.value).digest('hex'), records: records.value });
}

/** The records of a CSV, as many cells in each as stand there. */
function recordsOf(text: string, file: string): Result<readonly (readonly string[])[]> {
  try {
    const records = parse(text, {
      bom: true,
      relax_column_count: true,
      delimiter: delimiterOf(text),
    }) as string[][];
    const bad = records.findIndex(
      (record) => record.length > MOST_COLUMNS || record.some((cell) => cell.length > LONGEST_CELL),
    );
    if (bad < 0) return ok(records);
    return refused(
      unreadable(
        file,
        `it has more than ${MOST_COLUMNS} columns, or a cell of more than ${LONGEST_CELL} characters`,
        'No such table is: look at where it came from.',
        bad + 1,
      ),
    );
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return refused(
      unreadable(
        file,
        'it is not a table of comma-separated values from here on',
        'Look for a quotation mark that is not closed.',
        typeof error.lines === 'number' ? error.lines : undefined,
      ),
    );
  }
}

function unreadable(file: string, problem: string, remedy: string, line?: number): Finding {
  return fileUnreadable.at(
    { file, ...(line === undefined ? {} : { line }) },
    { problem, remedy: `${remedy} Nothing was changed.` },
  );
}

/** Comma, semicolon or tab, whichever the first lines have most of: laboratories differ, and so do spreadsheets by their language. */
function delimiterOf(text: string): string {
  const top = text.split('\n', 60).join('\n');
  const count = (mark: string): number => top.split(mark).length;
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}
