import { parse } from 'csv-parse/sync';
import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import { dangerTyped } from '../cautions.ts';
import { importColumn, importCsv, importRow } from '../findings.ts';
import type { CodeEntry } from '../read/file-entries.ts';
import type { TextFile } from '../read/places.ts';

/** Which column of a CSV holds what, by its heading. Codes are kept as they are. */
export type CodeColumns = {
  readonly code: string;
  readonly label: string;
  readonly look?: string;
  readonly pair?: string;
  readonly key?: string;
  readonly cgi?: string;
  readonly mineral?: string;
  readonly densityGcm3?: string;
  /** `void`, `fibre`, `silica dust`, `radiation`, `loss of return`, `other`, perhaps with words after a colon. */
  readonly caution?: string;
};

type Line = { readonly line: number; readonly cells: Readonly<Record<string, string>> };

const LONGEST_LABEL = 60;

/**
 * A code library imposed from elsewhere: the codes of a CSV (RFC 4180, headings in the first line) as entries of a list, in
 * the order of the file. Every bad line is named; with one bad line nothing is taken.
 */
export function importCodes(file: TextFile, columns: CodeColumns): Result<readonly CodeEntry[]> {
  const read = readLines(file);
  if (!read.ok) return read;
  const missing = missingColumns(file, columns, read.value);
  if (missing.length > 0) return refused(...missing);
  const findings: Finding[] = [];
  const entries: CodeEntry[] = [];
  const seen = new Set<string>();
  for (const line of read.value.lines) {
    const entry = entryOf(line, columns);
    const problem = typeof entry === 'string' ? entry : twice(entry, seen);
    if (problem === undefined && typeof entry !== 'string') entries.push(entry);
    else
      findings.push(
        importRow.at(
          { file: file.file, line: line.line },
          {
            problem: problem ?? '',
            remedy: 'Fix the line in the CSV and import it again.',
            excerpt: Object.values(line.cells).join(', ').slice(0, 100),
          },
        ),
      );
  }
  return findings.length > 0 ? refused(...findings) : ok(entries);
}

/** The lines of a CSV by their headings. */
export function readLines(
  file: TextFile,
): Result<{ readonly headings: readonly string[]; readonly lines: readonly Line[] }> {
  try {
    const records = parse(file.text, {
      bom: true,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as { readonly record: readonly string[]; readonly info: { readonly lines: number } }[];
    const headings = records[0]?.record ?? [];
    const lines = records.slice(1).map(({ record, info }) => ({
      line: info.lines,
      cells: Object.fromEntries(headings.map((heading, index) => [heading, record[index] ?? ''])),
    }));
    return ok({ headings, lines });
  } catch (error) {
    const line = (error as { lines?: number }).lines;
    return refused(
      importCsv.at(
        { file: file.file, ...(line === undefined ? {} : { line }) },
        {
          problem: 'not readable as CSV from here',
          remedy: 'Look for a quote that is not closed; save it as CSV with commas.',
        },
      ),
    );
  }
}

function missingColumns(
  file: TextFile,
  columns: CodeColumns,
  read: { readonly headings: readonly string[] },
): readonly Finding[] {
  return Object.entries(columns)
    .filter(([, heading]) => !read.headings.includes(heading))
    .map(([what, heading]) =>
      importColumn.at(
        { file: file.file, line: 1 },
        {
          problem: `no column is called "${heading}" (for ${what})`,
          remedy: `Name one of: ${read.headings.join(', ') || 'the file is empty'}.`,
        },
      ),
    );
}

/** The entry of a line, or why it gives none. */
export function entryOf({ cells }: Line, columns: CodeColumns): CodeEntry | string {
  const at = (heading: string | undefined): string => (heading === undefined ? '' : (cells[heading] ?? ''));
  const code = at(columns.code);
  const label = at(columns.label);
  const density = at(columns.densityGcm3);
  if (code === '') return 'the code is empty';
  if (code.length > 40) return `the code ${code.slice(0, 20)}… is longer than 40 characters`;
  if (label === '') return `${code} has no words`;
  if (label.length > LONGEST_LABEL) return `the words of ${code} are longer than ${LONGEST_LABEL} characters`;
  if (density !== '' && !(Number(density) >= 0.5 && Number(density) <= 8))
    return `${code} has the density ${density}; it goes from 0.5 to 8 g/cm³`;
  const warned = at(columns.caution);
  const danger = dangerTyped(warned);
  if (warned !== '' && danger === undefined)
    return `${code} has the caution ${warned.slice(0, 30)}; it is void, fibre, radiation, silica dust, loss of return or other`;
  const pair = at(columns.pair);
  return {
    code,
    label,
    look: at(columns.look),
    ...(pair === '' ? {} : { pair }),
    ...(at(columns.key) === '' ? {} : { key: at(columns.key) }),
    ...(at(columns.cgi) === '' ? {} : { cgi: at(columns.cgi) }),
    ...(at(columns.mineral) === '' ? {} : { mineral: at(columns.mineral) }),
    ...(density === '' ? {} : { densityGcm3: Number(density) }),
    ...danger,
  };
}

function twice(entry: CodeEntry, seen: Set<string>): string | undefined {
  const folded = entry.code.toLowerCase();
  if (seen.has(folded)) return `the code ${entry.code} is there twice`;
  seen.add(folded);
  return undefined;
}
