import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import { VALUE_KINDS } from '../../value/cell.ts';
import { importColumn, importRow } from '../findings.ts';
import type { FieldEntry, ListEntry, ScaleEntry } from '../read/file-entries.ts';
import type { TextFile } from '../read/places.ts';
import { fieldOf, type Lined, partOf } from './dictionary-lines.ts';
import { entryOf, readLines } from './import-codes.ts';

/** Fields, lists and scales of a CSV, as logging.json writes them. */
export type Dictionary = {
  readonly fields: readonly FieldEntry[];
  readonly lists: Readonly<Record<string, ListEntry>>;
  readonly scales: Readonly<Record<string, ScaleEntry>>;
};

/** Headings of a dictionary; `part` and `name` have to be there. */
export const DICTIONARY_HEADINGS = [
  'part',
  'name',
  'label',
  'look',
  'in',
  'kind',
  'list',
  'scale',
  'required',
  'carry',
  'none',
  'second',
  'steps',
  'unit',
  'min',
  'max',
  'decimals',
  'pair',
  'key',
  'caution',
  'density',
  'cgi',
  'mineral',
] as const;

/**
 * A whole dictionary from a CSV (RFC 4180, headings in the first line), a line for each field, list, code and level, in the order of the log
 * sheet. What a line leaves empty is as is usual for its kind. Every bad line is named; with one bad line nothing is taken.
 */
export function importDictionary(file: TextFile): Result<Dictionary> {
  const read = readLines(file);
  if (!read.ok) return read;
  const unusable = headingFindings(file, read.value.headings);
  if (unusable.length > 0) return refused(...unusable);
  const findings: Finding[] = [];
  const made = {
    fields: [] as FieldEntry[],
    lists: new Map<string, Lined>(),
    scales: new Map<string, Lined>(),
  };
  const seen = new Set<string>();
  for (const { line, cells } of read.value.lines) {
    const problem = takeLine(made, cells) ?? repeated(cells, seen);
    if (problem === undefined) continue;
    const remedy = 'Fix the line in the CSV and take it in again.';
    const excerpt = Object.values(cells).filter(Boolean).join(', ').slice(0, 100);
    findings.push(importRow.at({ file: file.file, line }, { problem, remedy, excerpt }));
  }
  const { fields, lists, scales } = made;
  if (findings.length > 0) return refused(...findings);
  return ok({
    fields,
    lists: Object.fromEntries([...lists].map(([name, { label, codes }]) => [name, { label, codes }])),
    scales: Object.fromEntries([...scales].map(([name, { label, levels }]) => [name, { label, levels }])),
  });
}

function headingFindings(file: TextFile, headings: readonly string[]): readonly Finding[] {
  const known: readonly string[] = DICTIONARY_HEADINGS;
  const place = { file: file.file, line: 1 };
  const missing = ['part', 'name'].filter((heading) => !headings.includes(heading));
  const unknown = headings.filter((heading) => !known.includes(heading));
  return [
    ...missing.map((heading) =>
      importColumn.at(place, {
        problem: `no column is called ${heading}`,
        remedy: `Put it into the first line. A dictionary can have: ${known.join(', ')}.`,
      }),
    ),
    ...unknown.map((heading) =>
      importColumn.at(place, {
        problem: `the column "${heading}" means nothing in a dictionary`,
        remedy: `Rename it to one of these, or leave it out: ${known.join(', ')}.`,
      }),
    ),
  ];
}

type Made = {
  readonly fields: FieldEntry[];
  readonly lists: Map<string, Lined>;
  readonly scales: Map<string, Lined>;
};
type Cells = Readonly<Record<string, string>>;

/** Puts one line where it belongs; or says why it can't. */
function takeLine({ fields, lists, scales }: Made, cells: Cells): string | undefined {
  const at = (heading: string): string => cells[heading] ?? '';
  const part = at('part').toLowerCase();
  if (at('name') === '') return 'the name is empty';
  switch (part) {
    case 'field': {
      const entry = fieldOf(at, VALUE_KINDS);
      if (typeof entry === 'string') return entry;
      fields.push(entry);
      return undefined;
    }
    case 'list':
      partOf(lists, at('name')).label = at('label') || at('name');
      return undefined;
    case 'scale':
      partOf(scales, at('name')).label = at('label') || at('name');
      return undefined;
    case 'code': {
      if (at('in') === '') return `${at('name')} is a code, and "in" does not say of which list`;
      const entry = entryOf({ line: 0, cells }, CODE_COLUMNS);
      if (typeof entry === 'string') return entry;
      partOf(lists, at('in')).codes.push(entry);
      return undefined;
    }
    case 'level': {
      if (at('in') === '') return `${at('name')} is a level, and "in" does not say of which scale`;
      if (!/^[1-9]$/.test(at('name'))) return `the level ${at('name')} is not a digit from 1 to 9`;
      if (at('label') === '') return `level ${at('name')} of ${at('in')} has no label`;
      partOf(scales, at('in')).levels.push({
        level: Number(at('name')),
        label: at('label'),
        look: at('look'),
      });
      return undefined;
    }
    default:
      return `the part is "${at('part')}"; it is field, list, code, scale or level`;
  }
}

const CODE_COLUMNS = {
  code: 'name',
  label: 'label',
  look: 'look',
  pair: 'pair',
  key: 'key',
  cgi: 'cgi',
  mineral: 'mineral',
  densityGcm3: 'density',
  caution: 'caution',
};

function repeated(cells: Cells, seen: Set<string>): string | undefined {
  const part = (cells.part ?? '').toLowerCase();
  const within = part === 'code' || part === 'level' ? (cells.in ?? '') : '';
  const thing = `${part} ${within} ${(cells.name ?? '').toLowerCase()}`;
  if (seen.has(thing)) return `the ${part} ${cells.name} is there twice`;
  seen.add(thing);
  return undefined;
}
