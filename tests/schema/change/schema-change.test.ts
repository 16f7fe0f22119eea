import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { additionsTo, changesUnder } from '../../../src/schema/change/schema-change.ts';
import { allMeanings, meaningsOf } from '../../../src/schema/legend.ts';
import type { Code, Field, LoggingSchema } from '../../../src/schema/logging-schema.ts';
import type { RowSaid } from '../../../src/value/row.ts';
import { schemaWithRows } from '../../support/arbitrary-schema.ts';
import { runs } from '../../support/long-run.ts';
import { resolveStyle } from '../../support/styles.ts';

const style = resolveStyle('orogenic-gold')!;
const row: RowSaid = {
  cells: {
    rock: { code: 'BAS', second: { code: 'SHA', percent: 20 } },
    weathering: { level: 1 },
    alteration: { levels: { CHL: 2 } },
    sulphides: { absent: 'none' },
    magsus: { number: 0.4 },
  },
};
const legend = meaningsOf(style, [row]);

function withRocks(change: (code: Code) => readonly Code[]): LoggingSchema {
  const rocks = style.lists.rocks!;
  return { ...style, lists: { ...style.lists, rocks: { ...rocks, codes: rocks.codes.flatMap(change) } } };
}
const onBasalt = (change: object) =>
  withRocks((code) => [code.code === 'BAS' ? ({ ...code, ...change } as Code) : code]);

function found(schema: LoggingSchema): readonly string[] {
  return changesUnder(legend, schema).map((finding) => `${finding.code}: ${finding.problem}`);
}

describe('the legend that rows need', () => {
  it('has the fields, scales and codes that they use, and no others', () => {
    expect(Object.keys(legend.fields)).toEqual(['rock', 'weathering', 'alteration', 'sulphides', 'magsus']);
    expect(Object.keys(legend.scales)).toEqual(['weathering', 'intensity']);
    expect(Object.keys(legend.codes)).toEqual(['rocks BAS', 'rocks SHA', 'alterationMinerals CHL']);
    expect(legend.codes['rocks BAS']).toEqual({
      list: 'rocks',
      code: 'BAS',
      label: 'basalt',
      pair: 'ba',
      cgi: 'basalt',
    });
    expect(legend.fields.magsus).toEqual({
      label: 'magnetic susceptibility',
      kind: 'number',
      unit: '1e-3 SI',
    });
  });

  it('is part of what the whole schema means', () => {
    fc.assert(
      fc.property(schemaWithRows(3), ({ schema, rows }) => {
        expect(allMeanings(schema)).toMatchObject(meaningsOf(schema, rows));
      }),
      { numRuns: runs(200) },
    );
  });
});

describe('a changed schema over logged rows', () => {
  it('says nothing where nothing that they use has changed', () => {
    expect(found(style)).toEqual([]);
    expect(
      found(
        withRocks((code) => [code, ...(code.code === 'SHA' ? [{ ...code, code: 'NEW', pair: 'zz' }] : [])]),
      ),
    ).toEqual([]);
    expect(found(onBasalt({ look: 'darker', retiredSince: '2026-03-01' }))).toEqual([]);
  });

  it('says that a pair they were logged with now types something else', () => {
    const swapped = withRocks((code) => [
      code.code === 'BAS' ? { ...code, pair: 'bz' } : code.code === 'SHA' ? { ...code, pair: 'ba' } : code,
    ]);
    expect(found(swapped)).toEqual([
      'change-strokes-dropped: sh typed shale; now ba does',
      'change-strokes-shifted: ba typed basalt, and now types shale; over these rows it is refused',
    ]);
  });

  it('says the same of what types a field itself: an amount, a level, a flag', () => {
    expect(legend.fields.weathering).toMatchObject({ pair: 'wx' });
    const retyped = (change: object): LoggingSchema => ({
      ...style,
      fields: style.fields.map((field) =>
        field.name === 'weathering' ? ({ ...field, ...change } as Field) : field,
      ),
    });
    expect(found(retyped({ pair: 'wq' }))).toEqual([
      'change-strokes-dropped: wx typed weathering; now wq does',
    ]);
    const given = withRocks((code) => [code.code === 'SHA' ? { ...code, pair: 'wx' } : code]);
    expect(found({ ...given, fields: retyped({ pair: 'wq' }).fields })).toEqual([
      'change-strokes-dropped: sh typed shale; now wx does',
      'change-strokes-shifted: wx typed weathering, and now types shale; over these rows it is refused',
    ]);
  });

  it('says that a code they hold is called something else, or is gone', () => {
    expect(found(onBasalt({ label: 'andesite' }))).toEqual([
      'change-code-meaning: BAS was basalt and is now andesite',
    ]);
    expect(found(withRocks((code) => (code.code === 'BAS' ? [] : [code])))).toEqual([
      'change-code-gone: BAS (basalt) is no longer in the list',
    ]);
  });

  it('says that a level means something else, or is gone', () => {
    const { weathering } = style.scales;
    const levels = weathering!.levels.slice(1).map((level, index) => ({ ...level, level: index + 1 }));
    const scales = { ...style.scales, weathering: { ...weathering!, levels } };
    expect(found({ ...style, scales }).slice(0, 1)).toEqual([
      'change-level-meaning: level 1 was fresh and is now slightly weathered',
    ]);
    expect(found({ ...style, scales }).at(-1)).toBe(
      'change-level-meaning: level 6 was residual soil and is now not there',
    );
  });

  it('says that a field is of another unit, or off the log sheet', () => {
    const fields = style.fields.map((field) =>
      field.name === 'magsus' ? { ...field, unit: '1e-5 SI' } : field,
    );
    expect(found({ ...style, fields } as LoggingSchema)).toEqual([
      'change-field: its unit was 1e-3 SI and is now 1e-5 SI',
    ]);
    const fewer = style.fields.filter((field) => field.name !== 'magsus');
    expect(found({ ...style, fields: fewer })).toEqual([
      'change-field-gone: magnetic susceptibility is no longer on the log sheet',
    ]);
  });

  it('names what is new, as a note', () => {
    const fresh = withRocks((code) => [
      code,
      ...(code.code === 'SHA' ? [{ ...code, code: 'NEW', label: 'dunite' }] : []),
    ]);
    expect(
      additionsTo(style, fresh).map((finding) => [
        finding.code,
        finding.severity,
        finding.place.thing,
        finding.problem,
      ]),
    ).toEqual([['change-added', 'note', 'code rocks NEW', 'dunite is new']]);
    expect(additionsTo(style, style)).toEqual([]);
  });
});
