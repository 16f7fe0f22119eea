import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { formatInterval } from '../../src/quantity/interval.ts';
import type { RangeLine } from '../../src/shorthand/commands.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { previewRange, type RangePreview } from '../../src/shorthand/range.ts';
import type { Row, RowSaid } from '../../src/value/row.ts';
import { above, rowOf, schema } from './fixture-schema.ts';

function row(fromM: number, said: RowSaid): Row {
  return { fromMm: depthFromMetres(fromM), toMm: depthFromMetres(fromM + 1), ...said };
}

function range(line: string): RangeLine {
  const parsed = parseLine(line, { schema });
  if (parsed.kind !== 'range') throw new Error(`${line} is not a range`);
  return parsed;
}

const ROWS: readonly Row[] = [
  row(44, above),
  row(45, rowOf('p3', { above }).row),
  row(46, rowOf('nr').row),
  row(47, rowOf('p0ct', { above }).row),
];

function preview(line: string, rows: readonly Row[] = ROWS) {
  const result = previewRange(schema, rows, range(line));
  if (result.kind === 'refused') throw new Error(result.problem);
  return result;
}

/** The preview in words, a line a row: `44–45  pyrite 1→2 % ▲`. */
function previewWords(preview: RangePreview): readonly string[] {
  const changed = preview.changes.map(
    ({ before, changes }) => `${formatInterval(before)}  ${changes.map(({ text }) => text).join(' · ')}`,
  );
  const left = preview.noReturn.map((row) => `${formatInterval(row)}  no return: unchanged`);
  return changed.length === 0 ? ['Nothing would change', ...left] : [...changed, ...left];
}

function refused(line: string, rows: readonly Row[] = ROWS): string {
  const result = previewRange(schema, rows, range(line));
  if (result.kind !== 'refused') throw new Error(`${line} was taken`);
  return result.problem;
}

describe('a range amended', () => {
  test('is previewed row by row, down the hole, in words; what would not change is left out', () => {
    expect(previewWords(preview(';44-46 py3'))).toEqual(['44–45  pyrite 2→3 % ▲']);
    expect(previewWords(preview(';44-48 py3'))).toEqual([
      '44–45  pyrite 2→3 % ▲',
      '47–48  pyrite 3 %',
      '46–47  no return: unchanged',
    ]);
    expect(previewWords(preview(';45-46 p3'))).toEqual(['Nothing would change']);
  });

  test('carries nothing: each row keeps all that is not said, also what is never carried', () => {
    const [change] = preview(';47-48 we2').changes;
    expect(change?.after.cells).toEqual({ ...ROWS[3]?.cells, weathering: { level: 2 } });
    expect(change?.after.cells.contact).toEqual({ flag: true });
  });

  test('is no longer carried or a repeat where it was said', () => {
    const repeated = row(44, rowOf('.', { above }).row);
    const [change] = preview(';44-45 we2', [repeated]).changes;
    expect(change?.after).not.toHaveProperty('repeat');
    expect(change?.after.carried).toEqual(['rock', 'alteration', 'sulphides', 'veins']);
  });

  test('finds a single key in each row, or is refused as a whole with the row that lacks its mineral', () => {
    expect(refused(';44-48 p5')).toBe('pyrite is not in 47–48');
    expect(preview(';44-46 p5').changes).toHaveLength(2);
  });

  test('is refused where a row could not hold it, by the row', () => {
    expect(refused(';44-46 we4')).toBe('44–45: regolith unit is needed in this row');
  });

  test('is refused where it cuts a row, or holds none with chips', () => {
    expect(refused(';44.5-46 py3')).toBe('The range cuts the row 44–45');
    expect(refused(';46-47 py3')).toBe('No row with chips is logged in 46–47');
    expect(refused(';60-70 py3')).toBe('No row with chips is logged in 60–70');
  });
});
