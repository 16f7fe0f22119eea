import { type Finding, ok, type Result } from '../../finding/finding.ts';
import type { Made } from '../../hole/commands/made.ts';
import { replaceRows } from '../../hole/commands/rows.ts';
import { headerOf, rowsDown } from '../../hole/hole.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import type { Document, Id } from '../../record/document.ts';
import { readingNotTaken } from '../../schema/findings.ts';
import { meaningsOf } from '../../schema/legend.ts';
import type { LoggingSchema, NumberField, ReadingColumns } from '../../schema/logging-schema.ts';
import { hasReading } from '../../standing/reading-rows.ts';
import { type Cell, sameCell } from '../../value/cell.ts';
import { findColumns } from './columns.ts';
import { type ReadingChoices, type ReadingContext, readRecord } from './read-record.ts';
import { readingWords } from './typed-reading.ts';

/** A file of an instrument's readings, and how it is to be read. */
export interface ReadingsFile {
  readonly file: string;
  /** Its records, headings first. */
  readonly records: readonly (readonly string[])[];
  readonly columns: ReadingColumns;
  readonly choices: ReadingChoices & {
    /** Several readings of one row are stored as their mean. */
    readonly several?: 'mean' | undefined;
    /** A reading that is there already and differs is replaced. */
    readonly replace?: boolean | undefined;
  };
}

/** What a file would do to a hole, worked out and not made yet. */
export interface ReadingsPlan {
  readonly taken: readonly (Interval & { readonly was: Cell | undefined; readonly now: Cell })[];
  /** Rows that hold the same reading already. */
  readonly unchanged: number;
  readonly blank: number;
  readonly otherHoles: number;
  readonly made: Made;
}

/** A reading of a row, with the line of the file that it is from. */
type Read = { readonly line: number; readonly cell: Cell };

/** Says why a line of the file is not taken. */
type Refuse = (line: number, problem: string, remedy: string) => void;

/**
 * Works out what a file of readings makes of a hole: one edit, or nothing at all. Refused with every line that can't be taken: a
 * metre not logged, out of range, met twice, a reading there that differs, one below detection that no one said what to do with.
 */
export function planReadings(
  schema: LoggingSchema,
  hole: Document,
  field: NumberField,
  given: ReadingsFile,
): Result<ReadingsPlan> {
  const columns = findColumns(given.file, given.records[0] ?? [], field, given.columns);
  if (!columns.ok) return columns;
  const findings: (Finding & { readonly line: number })[] = [];
  const refuse: Refuse = (line, problem, remedy) => {
    const place = { file: given.file, line, hole: headerOf(hole).name, field: field.name };
    const excerpt = (given.records[line - 1] ?? []).join(', ').slice(0, 100);
    findings.push({ ...readingNotTaken.at(place, { problem, remedy, excerpt }), line });
  };
  const context: ReadingContext = {
    schema,
    field,
    hole: [headerOf(hole).name, hole.id],
    rows: rowsDown(hole),
    columns: columns.value,
    choices: given.choices,
  };
  const { byRow, passed } = readAll(context, given.records, refuse);
  const now = decide(context, given.choices, byRow, refuse);
  if (findings.length === 0) return planOf(schema, hole, field, given.file, now, passed);
  const inOrder = [...findings].sort((a, b) => a.line - b.line);
  return { ok: false, findings: inOrder.map(({ line: _line, ...finding }) => finding) };
}

/** Every record read: readings by row, and how many were passed over. */
function readAll(context: ReadingContext, records: ReadingsFile['records'], refuse: Refuse) {
  const byRow = new Map<Id, readonly Read[]>();
  const passed = { blank: 0, 'other hole': 0 };
  records.forEach((record, index) => {
    if (index === 0 || record.every((cell) => cell.trim() === '')) return;
    const line = index + 1;
    const read = readRecord(context, record);
    if (read.kind === 'refused') refuse(line, read.problem, read.remedy);
    else if (read.kind !== 'reading') passed[read.kind] += 1;
    else byRow.set(read.row, [...(byRow.get(read.row) ?? []), { line, cell: read.cell }]);
  });
  return { byRow, passed };
}

/** The cell of each row that was read, compared with what the row has already. */
function decide(
  { rows, field }: ReadingContext,
  { several, replace }: ReadingsFile['choices'],
  byRow: ReadonlyMap<Id, readonly Read[]>,
  refuse: Refuse,
): ReadonlyMap<Id, Cell> {
  const now = new Map<Id, Cell>();
  for (const [id, row] of rows) {
    const reads = byRow.get(id);
    const last = reads?.at(-1);
    if (reads === undefined || last === undefined) continue;
    const cell = oneOf(reads, field, several);
    const was = row.cells[field.name];
    if ('problem' in cell) refuse(last.line, `${formatInterval(row)} ${cell.problem}`, cell.remedy);
    else if (was !== undefined && hasReading(row, field) && !sameCell(was, cell) && replace !== true)
      refuse(
        last.line,
        `${formatInterval(row)} has ${readingWords(field, was)} already, and the file says ${readingWords(field, cell)}`,
        'Look which is right; --replace takes what the file says.',
      );
    else now.set(id, cell);
  }
  return now;
}

/** The one reading of a row: the only one, or the mean of several where that is asked for. */
function oneOf(
  reads: readonly Read[],
  field: NumberField,
  several: 'mean' | undefined,
): Cell | { readonly problem: string; readonly remedy: string } {
  const [first, ...more] = reads;
  if (first === undefined) throw new Error('a row without a reading');
  if (more.length === 0) return first.cell;
  const lines = reads.map(({ line }) => line).join(', ');
  if (several !== 'mean')
    return {
      problem: `is met ${reads.length} times: lines ${lines}`,
      remedy: 'Leave one of them, or store their mean: --several mean.',
    };
  const numbers = reads.flatMap(({ cell }) => ('number' in cell ? [cell.number] : []));
  if (numbers.length < reads.length)
    return {
      problem: `has readings without a number among several: lines ${lines}`,
      remedy: 'A mean needs numbers: take those lines out.',
    };
  const mean = numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
  return { number: Number(mean.toFixed(field.decimals)) + 0 };
}

function planOf(
  schema: LoggingSchema,
  hole: Document,
  field: NumberField,
  file: string,
  now: ReadonlyMap<Id, Cell>,
  passed: { readonly blank: number; readonly 'other hole': number },
): Result<ReadingsPlan> {
  const rows = rowsDown(hole);
  const taken = rows.flatMap(([id, row]) => {
    const cell = now.get(id);
    const was = row.cells[field.name];
    if (cell === undefined || sameCell(was, cell)) return [];
    return [{ id, row, fromMm: row.fromMm, toMm: row.toMm, was, now: cell }];
  });
  const changed = new Map(taken.map((each) => [each.id, each.now]));
  const next = rows.map(([id, row]) => {
    const cell = changed.get(id);
    return [id, cell === undefined ? row : { ...row, cells: { ...row.cells, [field.name]: cell } }] as const;
  });
  const made = replaceRows(
    hole,
    `${field.label} of ${taken.length} ${taken.length === 1 ? 'row' : 'rows'} from ${file}`,
    next,
    meaningsOf(
      schema,
      taken.map((each) => ({ cells: { [field.name]: each.now } })),
    ),
  );
  if (!made.ok) return made;
  return ok({
    taken: taken.map(({ fromMm, toMm, was, now: is }) => ({ fromMm, toMm, was, now: is })),
    unchanged: now.size - taken.length,
    blank: passed.blank,
    otherHoles: passed['other hole'],
    made: taken.length === 0 ? { ...made.value, changes: [] } : made.value,
  });
}
