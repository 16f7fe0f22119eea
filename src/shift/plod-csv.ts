import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { parseDepth } from '../quantity/depth.ts';
import { SHIFT_REFUSALS } from './findings.ts';
import {
  minutesOf,
  type NewPlodLine,
  type PlodContext,
  type PlodParts,
  plodLineOf,
  usedOf,
  wetSaid,
} from './plod-line.ts';
import type { ShiftSettings } from './settings.ts';
import { minuteOfClock } from './shift-clock.ts';

/** How a driller's CSV is read: the heading of each part, and their words for our activities. Kept in project.json. */
export type PlodColumns = NonNullable<ShiftSettings['plodColumns']>;

const PARTS = [
  'from',
  'to',
  'hours',
  'activity',
  'hole',
  'metresFrom',
  'metresTo',
  'wet',
  'shots',
  'used',
  'remark',
] as const;

/**
 * Lines of a plod from the records of a CSV, headings first, by the same reading as typed lines. Every record that can't be taken is
 * named; `asWritten` takes overlaps and metres that the hole hasn't got, to be queried later.
 */
export function plodFromCsv(
  records: readonly (readonly string[])[],
  columns: PlodColumns,
  context: PlodContext,
  asWritten: boolean,
): Result<readonly NewPlodLine[]> {
  const [headings = [], ...rows] = records;
  const index = new Map(
    PARTS.map((part) => [part, headings.findIndex((each) => each.trim() === columns[part])] as const),
  );
  const lost = PARTS.filter((part) => columns[part] !== undefined && index.get(part) === -1);
  if (lost.length > 0)
    return refused(
      csvFault(
        'heading line',
        headings.join(', '),
        `it has no column ${lost.map((part) => columns[part]).join(', ')}`,
        'Name the columns in project.json, under shift.plodColumns.',
      ),
    );
  const lines: NewPlodLine[] = [];
  const findings: Finding[] = [];
  for (const [number, row] of rows.entries()) {
    if (row.every((cell) => cell.trim() === '')) continue;
    const cell = (part: (typeof PARTS)[number]): string => row[index.get(part) ?? -1]?.trim() ?? '';
    const parts = partsOf(cell, columns, context);
    const line =
      typeof parts === 'string'
        ? refused(
            csvFault(
              `record ${number + 1}`,
              row.join(', '),
              parts,
              'Read the sheet again, and correct the file.',
            ),
          )
        : plodLineOf(parts, { ...context, above: lines }, row.join(', '), asWritten);
    if (line.ok) lines.push(line.value);
    else
      findings.push(...line.findings.map((each) => ({ ...each, place: { thing: `record ${number + 1}` } })));
  }
  return findings.length > 0 ? refused(...findings) : ok(lines);
}

function partsOf(
  cell: (part: (typeof PARTS)[number]) => string,
  columns: PlodColumns,
  context: PlodContext,
): PlodParts | string {
  const from = clock(cell('from'));
  const to = clock(cell('to'));
  const minutes = cell('hours') === '' ? undefined : minutesOf(`${cell('hours')}h`);
  const metres = { fromMm: parseDepth(cell('metresFrom')), toMm: parseDepth(cell('metresTo')) };
  const used = cell('used') === '' ? undefined : usedOf(cell('used'));
  const hole = cell('hole') === '' ? undefined : context.holes.get(cell('hole').toUpperCase());
  const wet = /^(y|yes|x)$/i.test(cell('wet')) ? 'all' : wetSaid(cell('wet').replace(/^(?=\d)/, 'wet'));
  const shots = cell('shots');
  if (from === null || to === null)
    return `${from === null ? cell('from') : cell('to')} is not a time of day`;
  if (cell('hours') !== '' && minutes === undefined) return `${cell('hours')} is not a number of hours`;
  if (cell('hole') !== '' && hole === undefined) return `${cell('hole')} is not a hole of this project`;
  if (!/^(no?|)$/i.test(cell('wet')) && wet === undefined)
    return `${cell('wet')} does not say which metres are wet: yes, or 60-66`;
  if (used === null) return `${cell('used')} is not read: how many, then what`;
  if (shots !== '' && !/^\d{1,3}$/.test(shots)) return `${shots} is not a number of shots`;
  for (const part of ['metresFrom', 'metresTo'] as const)
    if (cell(part) !== '' && parseDepth(cell(part)) === undefined) return `${cell(part)} is not a depth`;
  return given({
    from,
    to,
    minutes: to === undefined ? minutes : undefined,
    activity: activityOf(cell('activity'), columns, context),
    hole,
    ...metres,
    wet,
    shots: shots === '' ? undefined : Number(shots),
    used,
    remark: cell('remark') === '' ? undefined : cell('remark'),
  });
}

/** Only the parts that are there. */
function given(parts: { readonly [part in keyof PlodParts]: PlodParts[part] | undefined }): PlodParts {
  return Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined)) as PlodParts;
}

/** Minutes of the day, undefined for an empty cell, null for one that is not a time. */
function clock(text: string): number | undefined | null {
  return text === '' ? undefined : (minuteOfClock(text) ?? null);
}

/** Our code for the sheet's word; the word as it is where the project has none, which is queried. */
function activityOf(text: string, columns: PlodColumns, { activities }: PlodContext): string | undefined {
  if (text === '') return undefined;
  const same = (a: string): boolean => a.toLowerCase() === text.toLowerCase();
  const mapped = columns.activities?.find((each) => same(each.written))?.activity;
  return mapped ?? activities.find((each) => same(each.code) || same(each.label))?.code ?? text;
}

function csvFault(thing: string, excerpt: string, problem: string, remedy: string): Finding {
  return SHIFT_REFUSALS.lineUnread.at({ thing }, { excerpt, problem, remedy });
}
