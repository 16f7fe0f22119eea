import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { instantMs } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import type { ShiftName } from './charge-class.ts';
import { SHIFT_REFUSALS } from './findings.ts';
import type { PlodColumns } from './plod-csv.ts';
import type { NewPlodLine } from './plod-line.ts';
import { lineText } from './plod-text.ts';
import { shiftHeaderOf } from './shift.ts';

/** The records of a CSV that are of one shift: headings first, those of other shifts empty, so that each keeps its number. */
export interface RecordsOfShift {
  readonly shift: Document;
  /** Number of the sheet, where a column holds it. */
  readonly sheet?: string;
  readonly records: readonly (readonly string[])[];
}

const PARTS = ['date', 'shift', 'rig', 'sheet'] as const;

/**
 * The records of a CSV by the shift that the date of each names. `rig` is meant where no column names one; with `only` a record of any
 * other shift is refused. Every record whose shift isn't certain is named, and then nothing is taken.
 */
export function recordsByShift(
  [headings = [], ...rows]: readonly (readonly string[])[],
  columns: PlodColumns,
  shifts: readonly Document[],
  { rig, only }: { readonly rig: string; readonly only?: string | undefined },
): Result<readonly RecordsOfShift[]> {
  const index = new Map(
    PARTS.map((part) => [part, headings.findIndex((each) => each.trim() === columns[part])] as const),
  );
  const lost = PARTS.filter((part) => columns[part] !== undefined && index.get(part) === -1);
  if (lost.length > 0)
    return refused(
      unread('heading line', headings, {
        problem: `it has no column ${lost.map((part) => columns[part]).join(', ')}`,
        remedy: 'Name the columns in project.json, under shift.plodColumns.',
      }),
    );
  const found = new Map<string, Omit<RecordsOfShift, 'records'> & { readonly numbers: Set<number> }>();
  const findings: Finding[] = [];
  for (const [number, row] of rows.entries()) {
    if (row.every((cell) => cell.trim() === '')) continue;
    const cell = (part: (typeof PARTS)[number]): string => row[index.get(part) ?? -1]?.trim() ?? '';
    const shift = shiftOf({ date: cell('date'), name: cell('shift'), rig: cell('rig') || rig }, columns, {
      shifts,
      only,
    });
    const before = 'id' in shift ? found.get(shift.id) : undefined;
    const sheet = cell('sheet');
    if (!('id' in shift)) findings.push(unread(`record ${number + 1}`, row, shift));
    else if (before !== undefined && sheet !== (before.sheet ?? ''))
      findings.push(
        unread(`record ${number + 1}`, row, {
          problem: `${shift.id} has sheet ${before.sheet ?? 'without a number'} in this file already`,
          remedy: 'Take each sheet of a shift in from a file of its own, the second with --second.',
        }),
      );
    else
      found.set(shift.id, {
        shift,
        ...(sheet === '' ? {} : { sheet }),
        numbers: (before?.numbers ?? new Set()).add(number),
      });
  }
  if (found.size === 0 && findings.length === 0)
    findings.push(
      unread('heading line', headings, {
        problem: 'no record stands below it',
        remedy: 'Export the sheet again, with its lines.',
      }),
    );
  if (findings.length > 0) return refused(...findings);
  const of = (numbers: ReadonlySet<number>) => rows.map((row, number) => (numbers.has(number) ? row : []));
  return ok(
    [...found.values()].map(({ numbers, ...rest }) => ({ ...rest, records: [headings, ...of(numbers)] })),
  );
}

/**
 * The first line of a shift that stands below a later one, as a finding: in a file with the date of the day, lines after midnight of the night before
 * come to stand at the end of the night that begins on that date.
 */
export function notInOrder(shift: Document, lines: readonly NewPlodLine[]): Finding | undefined {
  const starts = lines.flatMap((line) => (line.startsAt === undefined ? [] : [{ line, at: line.startsAt }]));
  const found = starts.find(({ at }, index) => {
    const above = starts[index - 1];
    return above !== undefined && instantMs(at) < instantMs(above.at);
  });
  return (
    found &&
    SHIFT_REFUSALS.lineUnread.at(
      { thing: shift.id },
      {
        excerpt: lineText(found.line),
        problem: 'it begins before the line above it',
        remedy:
          'After midnight a line has the date on which its shift began, not that of the day. If the file has it so, --as-written takes it.',
      },
    )
  );
}

interface Doubt {
  readonly problem: string;
  readonly remedy: string;
}

/** The shift that a record names by its date, rig and name; why not, where that is not one shift. */
function shiftOf(
  said: { readonly date: string; readonly name: string; readonly rig: string },
  { dates }: PlodColumns,
  { shifts, only }: { readonly shifts: readonly Document[]; readonly only: string | undefined },
): Document | Doubt {
  const date = dateOf(said.date, dates);
  if (typeof date !== 'string') return date;
  const name = said.name === '' ? undefined : shiftNameOf(said.name);
  if (name === null)
    return { problem: `${said.name} is neither day nor night`, remedy: 'Write day or night there.' };
  const [found, other] = shifts.filter((each) => {
    const header = shiftHeaderOf(each);
    return (
      header.date === date &&
      header.rig.toLowerCase() === said.rig.toLowerCase() &&
      (name === undefined || header.name === name)
    );
  });
  if (found === undefined)
    return {
      problem: `${said.rig} has no ${name === undefined ? '' : `${name} `}shift recorded that began on ${date}`,
      remedy: 'The date is that on which the shift began. Put it right, or record the shift first.',
    };
  if (other !== undefined)
    return {
      problem: `${said.rig} has two shifts that began on ${date}`,
      remedy: 'Name the column of day or night in project.json, under shift.plodColumns.shift.',
    };
  if (only !== undefined && found.id !== only)
    return {
      problem: `it is of ${found.id}, and ${only} was named`,
      remedy: 'Leave out --shift: each record goes to the shift of its date.',
    };
  return found;
}

function shiftNameOf(text: string): ShiftName | null {
  if (/^(d|day|days|dayshift|day shift)$/i.test(text)) return 'day';
  return /^(n|night|nights|nightshift|night shift)$/i.test(text) ? 'night' : null;
}

/**
 * A date as `2026-03-14`, from that or from numbers with slashes, dots or dashes, the year last, in the order that is said. Where no order is said
 * only a date that can be read in one way is.
 */
export function dateOf(text: string, order: PlodColumns['dates']): string | Doubt {
  const asIso = /^\d{4}-\d{2}-\d{2}$/.test(text) ? text : undefined;
  const [, first = '', second = '', year = ''] =
    /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4}|\d{2})$/.exec(text) ?? [];
  const whole = year.length === 2 ? `20${year}` : year;
  const dayFirst = isoDate(whole, second, first);
  const monthFirst = isoDate(whole, first, second);
  const said = order === 'm/d/y' ? monthFirst : dayFirst;
  const sure = dayFirst === monthFirst ? dayFirst : (dayFirst ?? monthFirst);
  const read = asIso === undefined ? (order === undefined ? sure : said) : isoDate(...splitIso(asIso));
  if (read === undefined)
    return {
      problem: `${text === '' ? 'it has no date' : `${text} is not a date${order === undefined ? '' : `, written ${order}`}`}`,
      remedy: 'Write 2026-03-14.',
    };
  const isSure = dayFirst === undefined || monthFirst === undefined || dayFirst === monthFirst;
  if (asIso === undefined && order === undefined && (!isSure || year.length === 2))
    return {
      problem: isSure
        ? `${text} does not say its year in four figures`
        : `${text} can be ${dayFirst} or ${monthFirst}`,
      remedy: 'Say how dates are written in project.json, under shift.plodColumns.dates: d/m/y or m/d/y.',
    };
  return read;
}

const splitIso = (text: string): [string, string, string] => [
  text.slice(0, 4),
  text.slice(5, 7),
  text.slice(8),
];

/** `2026-03-14` of its three numbers; undefined where there is no such day. */
function isoDate(year: string, month: string, day: string): string | undefined {
  const text = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const ms = Date.parse(`${text}T00:00:00Z`);
  return Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== text ? undefined : text;
}

const unread = (thing: string, row: readonly string[], doubt: Doubt): Finding =>
  SHIFT_REFUSALS.lineUnread.at({ thing }, { excerpt: row.join(', '), ...doubt });
