import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withoutShifted } from '../../src/schema/change/frozen-strokes.ts';
import { allMeanings, meaningsOf } from '../../src/schema/legend.ts';
import type { Code, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { strokesOf } from '../../src/schema/strokes.ts';
import { schemaChangesOf } from '../../src/standing/hole-schema.ts';
import type { Row } from '../../src/value/row.ts';
import { schemas } from '../support/arbitrary-schema.ts';
import { runs } from '../support/long-run.ts';
import { resolveStyle } from '../support/styles.ts';
import { holeWith, row } from './support/hole.ts';

const style = resolveStyle('orogenic-gold')!;
const rows = [
  row(0, 1, {
    cells: { rock: { code: 'BAS' }, weathering: { level: 1 }, alteration: { levels: { CHL: 2 } } },
  }),
  row(1, 2, { cells: { rock: { code: 'BAS' }, weathering: { level: 2 } } }),
  row(2, 3, { cells: { rock: { code: 'SHA' }, weathering: { level: 1 } } }),
];
const legend = meaningsOf(style, rows as unknown as readonly Row[]);
const hole = (state = 'drilling') => withLegend(state);

function withLegend(state: string) {
  const made = holeWith({ rows }, { state });
  return {
    ...made,
    tables: {
      ...made.tables,
      legendFields: legend.fields,
      legendScales: legend.scales,
      legendCodes: legend.codes,
    },
  } as typeof made;
}

function withRock(name: string, change: object, schema = style): LoggingSchema {
  const rocks = schema.lists.rocks!;
  const codes = rocks.codes.map((code) => (code.code === name ? ({ ...code, ...change } as Code) : code));
  return { ...schema, lists: { ...schema.lists, rocks: { ...rocks, codes } } };
}

describe('a changed schema over a hole', () => {
  it('says how many rows hold what is changed, the first of them, and what they would mean', () => {
    expect(schemaChangesOf(withRock('BAS', { label: 'andesite' }), hole())).toMatchObject([
      {
        code: 'change-code-meaning',
        place: { hole: 'MBRC900', thing: 'list rocks, code BAS' },
        problem: 'BAS was basalt and is now andesite: 2 rows, the first 0–1, would read andesite',
      },
    ]);
    const { weathering } = style.scales;
    const levels = weathering!.levels.map((each) => (each.level === 2 ? { ...each, label: 'soft' } : each));
    const scales = { ...style.scales, weathering: { ...weathering!, levels } };
    expect(schemaChangesOf({ ...style, scales }, hole())).toMatchObject([
      { problem: 'level 2 was slightly weathered and is now soft: 1 row, 1–2, would read soft' },
    ]);
    const fields = style.fields.filter(({ name }) => name !== 'alteration');
    expect(schemaChangesOf({ ...style, fields }, hole())).toMatchObject([
      {
        code: 'change-field-gone',
        problem: expect.stringContaining('1 row, 0–1, would keep it, and decode by the legend alone'),
      },
    ]);
  });

  it('says nothing where nothing that its rows hold has changed', () => {
    expect(schemaChangesOf(style, hole())).toEqual([]);
    expect(schemaChangesOf(withRock('DOL', { label: 'gabbro', pair: 'gq' }), hole())).toEqual([]);
  });

  it('tells of strokes only while the hole may still be logged', () => {
    const moved = withRock('DOL', { pair: 'ba' }, withRock('BAS', { pair: 'bz' }));
    expect(schemaChangesOf(moved, hole()).map(({ code }) => code)).toEqual(['change-strokes-shifted']);
    expect(schemaChangesOf(moved, hole('complete'))).toEqual([]);
  });
});

describe('what types a row', () => {
  it('never means two things under one legend: every pair and key types what it did, or nothing', () => {
    fc.assert(
      fc.property(schemas, schemas, (before, after) => {
        const frozen = withoutShifted(after, allMeanings(before));
        const was = new Map(strokesOf(before).map((each) => [each.strokes, JSON.stringify(each.part)]));
        for (const stroke of strokesOf(frozen)) {
          const typed = was.get(stroke.strokes);
          if (typed !== undefined && stroke.code?.retiredSince === undefined)
            expect(JSON.stringify(stroke.part)).toBe(typed);
        }
      }),
      { numRuns: runs(300) },
    );
  });

  it('is the schema itself where nothing has shifted', () => {
    expect(withoutShifted(style, legend)).toBe(style);
    const added = withRock('DOL', { pair: 'ba' }, withRock('BAS', { pair: 'bz' }));
    const frozen = withoutShifted(added, legend);
    expect(frozen.lists.rocks!.codes.find(({ code }) => code === 'DOL')).not.toHaveProperty('pair');
    expect(frozen.lists.rocks!.codes.find(({ code }) => code === 'BAS')).toMatchObject({ pair: 'bz' });
  });
});
