import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { resultColumn, resultUnit, resultUnreadable } from '../findings.ts';
import type { SamplingSettings } from '../settings.ts';
import type { ReportedLine } from './results-noun.ts';
import { conversionFactor, convertedTo, partsPerMillion } from './units.ts';

/** How a project reads the laboratory's CSV. */
export type ResultColumns = NonNullable<SamplingSettings['results']>;

/** One value of a result in the unit that the project counts in: what it counts as, and the limit where it is under or over one. */
export interface AssayValue {
  readonly value: number;
  readonly belowLimit?: number;
  readonly aboveLimit?: number;
}

/** The results of one sample, by analyte. An analyte that is missing was not reported. */
export interface Assay {
  readonly number: string;
  readonly values: { readonly [analyte: string]: AssayValue };
}

/** A CSV as read: its lines as reported, what they count as, what is wrong. */
export interface ResultsRead {
  readonly assays: readonly Assay[];
  readonly lines: readonly ReportedLine[];
  readonly findings: readonly Finding[];
}

/** The headings stand within this many lines of the top. */
const HEADINGS_WITHIN = 60;

/**
 * Results from the records of a CSV. Its headings are the first line that holds every mapped one; what is above them is the
 * laboratory's letterhead. A line of units below them is compared with the mapping, one of detection limits is passed over. A line that
 * can't be read is left out and named; the others stand. `file` is what findings call it.
 */
export function readResults(
  columns: ResultColumns,
  records: readonly (readonly string[])[],
  file = 'results',
): ResultsRead {
  const top = headingsAt(columns, records);
  const headings = (records[top] ?? []).map((cell) => cell.trim());
  const missing = wantedOf(columns).filter((heading) => !headings.includes(heading));
  if (missing.length > 0)
    return {
      assays: [],
      lines: [],
      findings: missing.map((each) => noColumn(each, headings, file, top + 1)),
    };
  const findings: Finding[] = [];
  const lines: ReportedLine[] = [];
  const assays: Assay[] = [];
  for (const [below, record] of records.slice(top + 1).entries()) {
    const place = { file, line: top + below + 2 };
    if (record.every((cell) => cell.trim() === '')) continue;
    const cell = (heading: string): string => (record[headings.indexOf(heading)] ?? '').trim();
    if (isUnits(columns, cell)) findings.push(...otherUnits(columns, cell, place));
    else if (!isLimits(cell(columns.sample))) {
      const line = reportedLine(columns, cell, place.line);
      const assay = typeof line === 'string' ? line : assayOf(columns, line);
      if (typeof line === 'string' || typeof assay === 'string')
        findings.push(unreadable(place, record, String(assay)));
      else {
        lines.push(line);
        assays.push(assay);
      }
    }
  }
  return { assays, lines, findings };
}

/** What a reported line counts as, in the units that the project counts in; or why it can't be read, in words. */
export function assayOf(
  columns: ResultColumns,
  line: Pick<ReportedLine, 'number' | 'reported'>,
): Assay | string {
  const values: Record<string, AssayValue> = {};
  for (const { column, analyte, unit, countedIn } of columns.analytes) {
    const text = Object.hasOwn(line.reported, column) ? (line.reported[column] ?? '') : '';
    if (text === '' || columns.notReported?.includes(text) === true) continue;
    const value = readValue(text, columns);
    const counted = value === undefined ? undefined : inUnit(value, unit, countedIn ?? unit);
    if (counted === undefined) return `${column} is ${JSON.stringify(text)}`;
    values[analyte] = counted;
  }
  return { number: line.number, values };
}

/** The unit that an analyte is counted in; empty where no column reports it. */
export function countedUnit(columns: ResultColumns | undefined, analyte: string): string {
  const found = columns?.analytes.find((each) => each.analyte === analyte);
  return found?.countedIn ?? found?.unit ?? '';
}

function wantedOf(columns: ResultColumns): readonly string[] {
  const marks = (columns.ownSamples ?? []).flatMap(({ column }) => column ?? []);
  return [columns.sample, ...columns.analytes.map((each) => each.column), ...marks];
}

/** The line with every mapped heading; where none has all, the one with the most of them, for the finding to show. */
function headingsAt(columns: ResultColumns, records: readonly (readonly string[])[]): number {
  const wanted = wantedOf(columns);
  const held = records
    .slice(0, HEADINGS_WITHIN)
    .map((record) => wanted.filter((heading) => record.some((cell) => cell.trim() === heading)).length);
  return Math.max(0, held.indexOf(Math.max(0, ...held)));
}

type Cell = (heading: string) => string;

function reportedLine(columns: ResultColumns, cell: Cell, line: number): ReportedLine | string {
  const number = cell(columns.sample);
  if (number === '') return 'it has no sample number';
  const marks = (columns.ownSamples ?? []).flatMap(({ column }) =>
    column === undefined ? [] : [{ column }],
  );
  const read = [...columns.analytes, ...(columns.mass === undefined ? [] : [columns.mass]), ...marks];
  const reported = read.flatMap(({ column }) =>
    cell(column) === '' ? [] : [[column, cell(column)] as const],
  );
  return { line, number, reported: Object.fromEntries(reported) };
}

/** A line of units: every mapped column that is filled holds one. */
function isUnits({ analytes }: ResultColumns, cell: Cell): boolean {
  const filled = analytes.map(({ column }) => cell(column)).filter((text) => text !== '');
  return filled.length > 0 && filled.every((text) => partsPerMillion(text) !== undefined);
}

function otherUnits({ analytes, mass }: ResultColumns, cell: Cell, place: Place): readonly Finding[] {
  const isOther = (said: string, unit: string): boolean =>
    said !== '' && said.toLowerCase() !== unit && conversionFactor(said, unit) !== 1;
  return [...analytes, ...(mass === undefined ? [] : [mass])]
    .filter(({ column, unit }) => isOther(cell(column), unit))
    .map(({ column, unit }) =>
      resultUnit.at(
        { ...place, field: column },
        {
          excerpt: cell(column),
          problem: `${column} is in ${cell(column)}, and the mapping says ${unit}.`,
          remedy:
            column === mass?.column
              ? `Correct sampling.results.mass in project.json: "unit": "${cell(column)}".`
              : `Correct the unit in project.json, and say what it is counted in: "unit": "${cell(column)}", "countedIn": "${unit}".`,
        },
      ),
    );
}

function isLimits(sample: string): boolean {
  return /^(lower |upper )?(detection|reporting|limit|lod|loq|dl|ldl)\b/i.test(sample);
}

/** A value as laboratories write it: `1.23`, `<0.01` under the detection limit, `>10` over the range. Undefined for anything else. */
function readValue(text: string, columns: ResultColumns): AssayValue | undefined {
  const [, sign, figures] = /^([<>-]?)\s*(\d{1,15}(?:\.\d{1,15})?|\.\d{1,15})$/.exec(text) ?? [];
  if (figures === undefined) return undefined;
  const value = Number(figures);
  if (sign === '') return { value };
  if (sign === '>') return { value, aboveLimit: value };
  if (sign === '-' && columns.minusIsBelow !== true) return undefined;
  const rule = columns.belowDetection;
  return { value: rule === 'zero' ? 0 : rule === 'the limit' ? value : value / 2, belowLimit: value };
}

function inUnit(value: AssayValue, from: string, to: string): AssayValue | undefined {
  const parts = Object.entries(value).map(
    ([name, figure]) => [name, convertedTo(figure as number, from, to)] as const,
  );
  if (parts.some(([, figure]) => figure === undefined)) return undefined;
  return Object.fromEntries(parts) as unknown as AssayValue;
}

function noColumn(heading: string, headings: readonly string[], file: string, line: number): Finding {
  return resultColumn.at(
    { file, line, field: heading },
    {
      excerpt: headings.join(', '),
      problem: `There is no column ${heading}.`,
      remedy: 'Look at the headings and correct the mapping in project.json, sampling.results.',
    },
  );
}

function unreadable(place: Place, record: readonly string[], why: string): Finding {
  return resultUnreadable.at(place, {
    excerpt: record.join(','),
    problem: `This line can't be read: ${why}.`,
    remedy:
      'Correct it with the laboratory. If it means no result, write it into sampling.results.notReported in project.json.',
  });
}
