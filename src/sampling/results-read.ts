import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { resultColumn } from './findings/result-column-missing.ts';
import { resultUnreadable } from './findings/result-unreadable.ts';
import type { SamplingSettings } from './settings.ts';

/** How a project reads the laboratory's CSV. */
export type ResultColumns = NonNullable<SamplingSettings['results']>;

/** One value of a result: what it counts as, and its detection limit where it is under it. */
interface AssayValue {
  readonly value: number;
  readonly belowLimit?: number;
}

/** The results of one sample, by analyte. An analyte that is missing was not reported. */
export interface Assay {
  readonly number: string;
  readonly values: { readonly [analyte: string]: AssayValue };
}

/**
 * Results from the records of a CSV, headings first. A value under its detection limit (`<0.01`) counts as the project says and
 * keeps its limit. A line that can't be read is left out and named; the others stand. `file` is what findings call it.
 */
export function readResults(
  columns: ResultColumns,
  records: readonly (readonly string[])[],
  file = 'results',
): { readonly assays: readonly Assay[]; readonly findings: readonly Finding[] } {
  const headings = records[0] ?? [];
  const wanted = [columns.sample, ...columns.analytes.map((each) => each.column)];
  const missing = wanted.filter((heading) => !headings.includes(heading));
  if (missing.length > 0)
    return { assays: [], findings: missing.map((heading) => noColumn(heading, headings, file)) };
  const findings: Finding[] = [];
  const assays: Assay[] = [];
  for (const [index, record] of records.slice(1).entries()) {
    if (record.every((cell) => cell.trim() === '')) continue;
    const read = readRecord(columns, headings, record);
    if (typeof read === 'string') findings.push(unreadable({ file, line: index + 2 }, record, read));
    else assays.push(read);
  }
  return { assays, findings };
}

function readRecord(
  columns: ResultColumns,
  headings: readonly string[],
  record: readonly string[],
): Assay | string {
  const cell = (heading: string): string => (record[headings.indexOf(heading)] ?? '').trim();
  const number = cell(columns.sample);
  if (number === '') return 'it has no sample number';
  const values: Record<string, AssayValue> = {};
  for (const { column, analyte } of columns.analytes) {
    const text = cell(column);
    if (text === '') continue;
    const value = readValue(text, columns.belowDetection);
    if (value === undefined) return `${column} is ${JSON.stringify(text)}`;
    values[analyte] = value;
  }
  return { number, values };
}

/** A value as laboratories write it: `1.23`, or `<0.01` under the detection limit. Undefined for anything else. */
function readValue(text: string, rule: ResultColumns['belowDetection']): AssayValue | undefined {
  const parts = /^(<?)\s*(\d+(?:\.\d+)?|\.\d+)$/.exec(text);
  if (parts === null) return undefined;
  const value = Number(parts[2]);
  if (parts[1] === '') return { value };
  return { value: rule === 'zero' ? 0 : rule === 'the limit' ? value : value / 2, belowLimit: value };
}

function noColumn(heading: string, headings: readonly string[], file: string): Finding {
  return resultColumn.at(
    { file, line: 1, field: heading },
    {
      excerpt: headings.join(', '),
      problem: `There is no column ${heading}.`,
      remedy: 'Look at the headings and correct the mapping in project.json.',
    },
  );
}

function unreadable(place: Place, record: readonly string[], why: string): Finding {
  return resultUnreadable.at(place, {
    excerpt: record.join(','),
    problem: `This line can't be read: ${why}.`,
    remedy: 'Correct it with the laboratory, or take the line out.',
  });
}
