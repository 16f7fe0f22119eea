import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planReadings, type ReadingsFile } from '../../../src/acts/readings/plan-readings.ts';
import { unitFactor } from '../../../src/acts/readings/unit-factor.ts';
import { formatFinding } from '../../../src/finding/finding.ts';
import { rowsDown } from '../../../src/hole/hole.ts';
import { apply } from '../../../src/record/apply.ts';
import type { Document } from '../../../src/record/document.ts';
import type { NumberField, ReadingColumns } from '../../../src/schema/logging-schema.ts';
import { holeWith, row } from '../../standing/support/hole.ts';
import { resolveStyle } from '../../support/styles.ts';

const schema = resolveStyle('orogenic-gold')!;
const magsus = schema.fields.find((field) => field.name === 'magsus') as NumberField;
const arsenic = schema.fields.find((field) => field.name === 'arsenic') as NumberField;
const INTERVAL: ReadingColumns = { from: 'From', to: 'To', reading: 'K', unit: '1e-3 SI' };
const DEPTH: ReadingColumns = { depth: 'Depth', reading: 'K', unit: '1e-3 SI' };

const cells = (more: object = {}) => ({ rock: { code: 'BAS' }, magsus: { absent: 'not observed' }, ...more });
const hole = holeWith({
  rows: [
    row(0, 1, { cells: cells() }),
    row(1, 2, { cells: cells({ magsus: { number: 0.42 } }) }),
    row(2, 3, { cells: cells(), noReturn: true }),
    row(3, 5, { cells: cells() }),
  ],
});

function plan(
  text: string,
  columns: ReadingColumns = INTERVAL,
  choices: ReadingsFile['choices'] = {},
  field = magsus,
) {
  const records = text
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  return planReadings(schema, hole, field, { file: 'ms.csv', records, columns, choices });
}

/** What is in the way, in one line each. */
function refusals(...given: Parameters<typeof plan>): readonly string[] {
  const planned = plan(...given);
  return planned.ok ? [] : planned.findings.map(({ place, problem }) => `${place.line}: ${problem}`);
}

/** What the rows of the hole hold after the plan is made. */
function held(...given: Parameters<typeof plan>): readonly unknown[] {
  const planned = plan(...given);
  if (!planned.ok) throw new Error(planned.findings.map(formatFinding).join('\n'));
  const { what, changes } = planned.value.made;
  const deed = { edit: 'a-2', at: '2026-03-14T09:00:00+08:00', by: 'NOK', what };
  const made = changes.length === 0 ? { ok: true as const, document: hole } : apply(hole, deed, changes);
  if (!made.ok) throw new Error(made.problem);
  return rowsDown(made.document as Document).map(([, each]) => each.cells[(given[3] ?? magsus).name]);
}

describe('a file of readings', () => {
  it('amends the rows that it is about, as one edit, and no other cell of them', () => {
    const planned = plan('From,To,K\n0,1,0.31\n3,5,12.5');
    expect(planned.ok && planned.value.made.what).toBe('magnetic susceptibility of 2 rows from ms.csv');
    expect(planned.ok && planned.value.taken).toEqual([
      { fromMm: 0, toMm: 1000, was: { absent: 'not observed' }, now: { number: 0.31 } },
      { fromMm: 3000, toMm: 5000, was: { absent: 'not observed' }, now: { number: 12.5 } },
    ]);
    expect(held('From,To,K\n0,1,0.31\n3,5,12.5')).toEqual([
      { number: 0.31 },
      { number: 0.42 },
      { absent: 'not observed' },
      { number: 12.5 },
    ]);
  });

  it('has the meaning of the column in the legend of the hole', () => {
    const planned = plan('From,To,K\n0,1,0.31');
    expect(planned.ok && planned.value.made.changes).toContainEqual({
      put: ['legendFields', 'magsus'],
      thing: { label: 'magnetic susceptibility', kind: 'number', unit: '1e-3 SI' },
    });
  });

  it('passes over lines without a reading, empty ones and other holes, and says how many', () => {
    const planned = plan('Hole,From,To,K\nMBRC900,0,1,\n,,,\nMBRC901,0,1,9\nmbrc900,0,1,0.3', {
      ...INTERVAL,
      hole: 'Hole',
    });
    expect(planned.ok && planned.value).toMatchObject({ blank: 1, otherHoles: 1, taken: [{ fromMm: 0 }] });
  });

  it('changes nothing where the rows say the same already', () => {
    const planned = plan('From,To,K\n1,2,0.42');
    expect(planned.ok && planned.value).toMatchObject({ unchanged: 1, taken: [], made: { changes: [] } });
  });
});

describe('a file of which one line can’t be taken', () => {
  it('is refused as a whole, each such line with its number, and in their order', () => {
    const text =
      'From,To,K\n0,1,0.31\n5,6,0.2\n1,2,0.5\n2,3,1\n2.5,3.5,1\n0,1,99999\nx,1,2\n3,5,0.123\n1,0,2';
    expect(refusals(text)).toEqual([
      '3: 5–6 is not logged yet',
      '4: 1–2 has 0.42 1e-3 SI already, and the file says 0.50 1e-3 SI',
      '5: 2–3 is logged as no return',
      '6: 2.5–3.5 crosses the edge of a row',
      '7: 0–1: magnetic susceptibility is 99999 1e-3 SI; it goes from -1 to 5000',
      '8: x is not a depth',
      '9: 3–5: magnetic susceptibility is 0.123; it has at most 2 decimals',
      '10: 1 to 0 is not an interval',
    ]);
  });

  it('says of each what to do', () => {
    const planned = plan('From,To,K\n1,2,0.5');
    expect(planned.ok ? '' : planned.findings.map(formatFinding).join()).toBe(
      'ms.csv:2, MBRC900, field magsus: 1–2 has 0.42 1e-3 SI already, and the file says 0.50 1e-3 SI\n' +
        '  | 1, 2, 0.5\n' +
        '  Look which is right; --replace takes what the file says.',
    );
  });

  it('is taken where the person has said what is to be done', () => {
    expect(held('From,To,K\n1,2,0.5', INTERVAL, { replace: true })[1]).toEqual({ number: 0.5 });
    expect(held('From,To,K\n3,5,0.126', INTERVAL, { round: true })[3]).toEqual({ number: 0.13 });
  });

  it('leaves out no line of a metre met twice, unless the mean is asked for', () => {
    const text = 'From,To,K\n3,4,0.2\n4,5,0.5\n0,1,0.1';
    expect(refusals(text)).toEqual(['3: 3–5 is met 2 times: lines 2, 3']);
    expect(held(text, INTERVAL, { several: 'mean' })[3]).toEqual({ number: 0.35 });
    expect(refusals('From,To,K\n3,4,0.2\n4,5,nr', INTERVAL, { several: 'mean' })).toEqual([
      '3: 3–5 has readings without a number among several: lines 2, 3',
    ]);
  });
});

describe('a single depth', () => {
  it('inside of a row is of that row', () => {
    expect(held('Depth,K\n0.5,0.3\n4,7', DEPTH)).toMatchObject([{ number: 0.3 }, {}, {}, { number: 7 }]);
  });

  it('on the edge of two rows is asked about: the two habits differ by a metre', () => {
    expect(refusals('Depth,K\n1,0.3', DEPTH)).toEqual([
      '2: 1 m is the edge of a row: it can be the metre above or the one below',
    ]);
    expect(held('Depth,K\n1,0.3', DEPTH, { depthIs: 'foot' })[0]).toEqual({ number: 0.3 });
    expect(held('Depth,K\n1,0.42', DEPTH, { depthIs: 'top' })[1]).toEqual({ number: 0.42 });
    expect(refusals('Depth,K\n5,0.3', DEPTH, { depthIs: 'top' })).toEqual(['2: 5 m is not logged yet']);
  });
});

describe('a reading below detection', () => {
  it('is no number until someone says what it is stored as', () => {
    expect(refusals('From,To,K\n0,1,<5')).toEqual(['2: 0–1: <5 is below what the instrument can tell']);
    expect(refusals('From,To,K\n0,1,<LOD', INTERVAL, { below: 'half' })).toEqual([
      '2: 0–1: <LOD is below what the instrument can tell',
    ]);
    expect(refusals('From,To,K\n0,1,<5', INTERVAL, { below: 'none' })).toEqual([
      '2: 0–1: magnetic susceptibility always is something',
    ]);
  });

  it('is half of the limit, or not read, as said', () => {
    expect(held('From,To,K\n0,1,<5', INTERVAL, { below: 'half' })[0]).toEqual({ number: 2.5 });
    expect(held('From,To,K\n0,1,ND', INTERVAL, { below: 'nr' })[0]).toEqual({ absent: 'not observed' });
  });
});

describe('units', () => {
  it('are turned into those of the column, or refused where they measure another thing', () => {
    expect(unitFactor('1e-5 SI', '1e-3 SI')).toBe(0.01);
    expect(unitFactor('10^-3 SI', '1e-3  SI')).toBe(1);
    expect(unitFactor('%', 'ppm')).toBe(10_000);
    expect(unitFactor('cgs', '1e-3 SI')).toBeUndefined();
    expect(unitFactor('ppm', '1e-3 SI')).toBeUndefined();
    expect(held('From,To,K\n0,1,31', { ...INTERVAL, unit: '1e-5 SI' })[0]).toEqual({ number: 0.31 });
    const ppm = { ...INTERVAL, unit: '%' };
    expect(held('From,To,K\n0,1,0.0123', ppm, {}, arsenic)[0]).toEqual({ number: 123 });
  });

  it('have to be said, as the columns have: each that is missing is named', () => {
    expect(refusals('From,To,K', {})).toEqual([
      '1: its depths are missing, or given twice',
      '1: the column of the readings is missing',
      '1: the unit of the file is missing',
    ]);
    expect(refusals('From,To,K,K', { ...INTERVAL, from: 'Top', unit: 'cgs' })).toEqual([
      "1: the file counts in cgs, which can't be turned into 1e-3 SI",
      '1: two columns are called "K"',
      '1: no column is called "Top" (--from)',
    ]);
  });
});

describe('readings of whole holes', () => {
  it('stand in the rows that were read, whatever order the lines are in', () => {
    const reading = fc.integer({ min: -100, max: 500_000 }).map((hundredths) => hundredths / 100);
    const lines = fc.uniqueArray(fc.tuple(fc.constantFrom(0, 1, 3), reading), { selector: ([at]) => at });
    fc.assert(
      fc.property(lines, (read) => {
        const text = read.map(([at, number]) => `${at},${at === 3 ? 5 : at + 1},${number}`).join('\n');
        const now = held(`From,To,K\n${text}`, INTERVAL, { replace: true });
        for (const [at, number] of read) expect(now[at]).toEqual({ number: number + 0 });
      }),
    );
  });
});
