import { type Finding, ok, type Result } from '../../finding/finding.ts';
import { readingNotTaken } from '../../schema/findings.ts';
import type { NumberField, ReadingColumns } from '../../schema/logging-schema.ts';
import { unitFactor } from './unit-factor.ts';

/** Where things stand in a record of the file, by place from 0, and what a reading is multiplied by. */
export interface FoundColumns {
  readonly reading: number;
  readonly depth: { readonly at: number } | { readonly from: number; readonly to: number };
  readonly hole?: number;
  readonly factor: number;
}

/**
 * The columns of a file by its headings. Refused with every reason: a mapping that says no depth, no reading or no unit, a heading
 * that is not there or is there twice, a unit that can't be turned into the field's.
 */
export function findColumns(
  file: string,
  headings: readonly string[],
  field: NumberField,
  columns: ReadingColumns,
): Result<FoundColumns> {
  const findings: Finding[] = [];
  const wrong = (problem: string, remedy: string): void => {
    findings.push(readingNotTaken.at({ file, line: 1, field: field.name }, { problem, remedy }));
  };
  const names = headings.map((heading) => heading.trim());
  const placeOf = (name: string | undefined, option: string): number => {
    if (name === undefined) return -1;
    const at = names.indexOf(name);
    if (at === -1 || names.indexOf(name, at + 1) !== -1)
      wrong(
        at === -1 ? `no column is called "${name}" (${option})` : `two columns are called "${name}"`,
        `Name one of: ${names.join(', ') || 'the file is empty'}.`,
      );
    return at;
  };
  const { depth, from, to } = columns;
  if (depth === undefined ? from === undefined || to === undefined : from !== undefined || to !== undefined)
    wrong(
      'its depths are missing, or given twice',
      'Give --depth, or --from and --to, each with the heading of its column; or keep them as "csv" of the field in logging.json.',
    );
  if (columns.reading === undefined)
    wrong('the column of the readings is missing', 'Give --reading with its heading.');
  const factor = columns.unit === undefined ? undefined : unitFactor(columns.unit, field.unit);
  if (columns.unit === undefined)
    wrong(
      'the unit of the file is missing',
      `Give --unit; ${field.label} is logged in ${field.unit}. Look in the instrument's settings.`,
    );
  else if (factor === undefined)
    wrong(
      `the file counts in ${columns.unit}, which can't be turned into ${field.unit}`,
      'Look which of the two is meant.',
    );
  const found: FoundColumns = {
    reading: placeOf(columns.reading, '--reading'),
    depth:
      depth === undefined
        ? { from: placeOf(from, '--from'), to: placeOf(to, '--to') }
        : { at: placeOf(depth, '--depth') },
    ...(columns.hole === undefined ? {} : { hole: placeOf(columns.hole, '--hole') }),
    factor: factor ?? 1,
  };
  return findings.length > 0 ? { ok: false, findings } : ok(found);
}
