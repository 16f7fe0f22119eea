import { describe, expect, it } from 'vitest';
import { columnsFor } from '../../../src/console/log/panels/columns.ts';
import { checkSchema } from '../../../src/schema/check/check-schema.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const AT = '2026-03-14T09:08:00+08:00';
const SIZES = [
  [80, 24],
  [100, 30],
] as const;

function files(columns?: readonly string[]): Files {
  const all = sampleFiles();
  const logging = { ...JSON.parse(all['logging.json'] ?? ''), ...(columns === undefined ? {} : { columns }) };
  return { ...all, 'logging.json': JSON.stringify(logging) };
}
const heading = (sitting: Sitting, [columns, lines]: readonly [number, number]): string =>
  sitting.screen(columns, lines).find((each) => each.includes('from ')) ?? '';
const row = (sitting: Sitting, [columns, lines]: readonly [number, number]): string =>
  sitting.screen(columns, lines).find((each) => / 45 +46 /.test(each)) ?? '';

describe('the columns of the log', () => {
  it.each(SIZES)('show every required field at %i x %i, whoever chose them', async (...size) => {
    for (const columns of [
      undefined,
      ['sulphides', 'alteration', 'bag number', 'sample moisture', 'veins'],
    ]) {
      const sitting = await sitDown(files(columns), AT);
      const { schema } = sitting.state().project;
      const required = schema.fields.filter((field) => field.required);
      expect(required.length).toBeGreaterThan(1);
      const shown = columnsFor(schema, size[0] === 80 ? 34 : 44).map(({ of }) => of);
      for (const field of required) expect(shown).toContain(field);
      expect(heading(sitting, size)).toMatch(/rock/);
      expect(row(sitting, size)).toMatch(/bas +\S+ +\S+/);
    }
  });

  it('stand as the project wrote them, with the bag, the moisture and the recovery of the row', async () => {
    const sitting = await sitDown(
      files(['bag number', 'sample moisture', 'sample recovery', 'rock', 'sulphides']),
      AT,
    );
    sitting.enter(';recovery poor 45-46');
    for (const size of SIZES) {
      expect(heading(sitting, size)).toMatch(/wx +ox +bag +moist +rec +rock/);
      expect(row(sitting, size)).toMatch(/i +uno +\w*\d{4,} +(dry|moist|wet) +poor +bas/);
    }
    expect(heading(sitting, SIZES[1])).toContain('sulphides');
    expect(row(sitting, SIZES[1])).toContain('pyr2');
  });

  it('leave the last ones named out where a screen is narrow, and never a required one', async () => {
    const sitting = await sitDown(files(['alteration', 'sulphides', 'veins', 'bag number']), AT);
    const { schema } = sitting.state().project;
    const names = (width: number) =>
      columnsFor(schema, width).map(({ of }) => (typeof of === 'string' ? of : of.name));
    const required = schema.fields.filter((field) => field.required).map(({ name }) => name);
    expect(names(80)).toEqual([...required, 'alteration', 'sulphides', 'veins', 'bag number']);
    expect(names(20)).toEqual(expect.arrayContaining(required));
    expect(names(20)).not.toContain('bag number');
    for (let width = 12; width < 90; width += 1) {
      const columns = columnsFor(schema, width);
      expect(columns.reduce((sum, each) => sum + each.width + 1, -1)).toBeLessThanOrEqual(width);
    }
  });

  it('are checked: each is a field that can be one or of the sample, and named once', async () => {
    const sitting = await sitDown(files(['rock', 'rock', 'rok', 'magsus', 'bag number']), AT);
    const found = checkSchema(sitting.state().project.schema)
      .filter(({ code }) => code === 'schema-column-unknown')
      .map(({ problem }) => problem);
    expect(found).toEqual([
      'rock is a column twice',
      'no field is called rok',
      expect.stringContaining("can't be a column: readings are typed down a screen of their own"),
    ]);
    expect(heading(sitting, [100, 30])).toMatch(/rock.*bag/);
  });
});
