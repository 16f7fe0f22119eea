import { readFile, stat } from 'node:fs/promises';
import { CsvError, parse } from 'csv-parse/sync';
import { whyRefused } from '../files/disk.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { tableUnreadable } from '../survey/findings/table-unreadable.ts';
import type { TextTable } from '../survey/table.ts';

/** Largest table that is read, bytes. */
const LARGEST = 16 * 1024 * 1024;

/** A CSV file as cells of text: UTF-8, cells parted by whichever of comma, semicolon and tab its first line has most of. */
export async function readCsvTable(path: string): Promise<Result<TextTable>> {
  const wrong = (problem: string, remedy: string, line?: number): Result<never> =>
    refused<never>(
      tableUnreadable.at(
        { file: path, ...(line === undefined ? {} : { line }) },
        { problem, remedy },
      ) as Finding,
    );
  let text: string;
  try {
    const facts = await stat(path);
    if (!facts.isFile()) return wrong('it is not a file', 'Give the path of a CSV file.');
    if (facts.size > LARGEST)
      return wrong('it is larger than any table of shots or collars', 'Give the right file.');
    text = new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path));
  } catch (error) {
    return error instanceof TypeError
      ? wrong('it is no text in UTF-8', 'Save it as CSV in UTF-8.')
      : wrong(`it can't be read: ${whyRefused(error)}`, 'Check the path.');
  }
  try {
    return ok(
      parse(text, { bom: true, relax_column_count: true, delimiter: delimiterOf(text) }) as string[][],
    );
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === 'number' ? error.lines : undefined;
    return wrong('it is no table from here on', 'Look for a quotation mark that is not closed.', line);
  }
}

function delimiterOf(text: string): string {
  const first = text.split(/\r?\n/, 1)[0] ?? '';
  const count = (mark: string) => first.split(mark).length;
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}
