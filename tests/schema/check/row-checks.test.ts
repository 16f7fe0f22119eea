import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthFromMm } from '../../../src/quantity/depth.ts';
import { checkRow } from '../../../src/schema/check/row-checks.ts';
import type { Field, LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { BEYOND_JSON_SCHEMA, rowJsonSchema } from '../../../src/schema/print/row-json-schema.ts';
import { type Cell, NONE, NOT_OBSERVED, type PointEvent } from '../../../src/value/cell.ts';
import type { Row } from '../../../src/value/row.ts';
import { rowsOf, schemas } from '../../support/arbitrary-schema.ts';
import { runs } from '../../support/long-run.ts';
import { resolveStyle } from '../../support/styles.ts';

const style = resolveStyle('orogenic-gold')!;

const good: Row = {
  fromMm: depthFromMm(44_000),
  toMm: depthFromMm(45_000),
  cells: {
    rock: { code: 'BAS', second: { code: 'SHA', percent: 30 } },
    weathering: { level: 1 },
    oxidation: { level: 1 },
    colour: { code: 'DGY' },
    grain: { level: 4 },
    fabric: NOT_OBSERVED,
    alteration: { levels: { CHL: 2, SIL: 1 } },
    sulphides: { percents: { PYR: 2, ARS: 'trace' } },
    habit: { code: 'DIS' },
    veins: NONE,
    magnetism: NONE,
    fizz: NOT_OBSERVED,
    contact: NONE,
    gold: { number: 3 },
    magsus: { number: 0.45 },
    arsenic: NOT_OBSERVED,
  },
};

function found(changes: object, cells: object = {}): readonly string[] {
  const row = { ...good, ...changes, cells: { ...good.cells, ...cells } } as Row;
  const defined = Object.entries(row.cells).filter(([, cell]) => cell !== undefined);
  return checkRow(style, { ...row, cells: Object.fromEntries(defined) }).map((finding) => finding.code);
}

describe('a row against its schema', () => {
  it('passes when every field that applies has a value of its kind or an absence', () => {
    expect(found({})).toEqual([]);
  });

  const faults: readonly (readonly [code: string, changes: object, cells: object])[] = [
    ['row-interval', { toMm: 44_000 }, {}],
    ['row-field-unknown', {}, { rocks: { code: 'BAS' } }],
    ['row-field-missing', {}, { rock: undefined }],
    ['row-only-when', {}, { habit: undefined }],
    ['row-only-when', {}, { fill: { code: 'QTZ' } }],
    ['row-only-when', {}, { regolith: { code: 'SAR' } }],
    ['row-wrong-kind', {}, { rock: { level: 2 } }],
    ['row-wrong-kind', {}, { colour: { code: 'DGY', second: { code: 'BLA', percent: 10 } } }],
    ['row-wrong-kind', {}, { rock: {} }],
    ['row-cannot-be-none', {}, { rock: NONE }],
    ['row-code-unknown', {}, { rock: { code: 'bas' } }],
    ['row-code-unknown', {}, { rock: { code: 'BAS', second: { code: 'XXX', percent: 10 } } }],
    ['row-code-unknown', {}, { alteration: { levels: { toString: 1 } } }],
    ['row-level-off-scale', {}, { weathering: { level: 7 } }],
    ['row-level-off-scale', {}, { alteration: { levels: { CHL: 0 } } }],
    ['row-amount-off', {}, { veins: { percent: 101 }, fill: { code: 'QTZ' } }],
    ['row-amount-off', {}, { rock: { code: 'BAS', second: { code: 'SHA', percent: 60 } } }],
    ['row-amount-off', {}, { sulphides: { percents: { PYR: 0 } } }],
    ['row-sum-over-limit', {}, { sulphides: { percents: { PYR: 60, ARS: 50 } } }],
    ['row-second-is-first', {}, { rock: { code: 'BAS', second: { code: 'BAS', percent: 10 } } }],
    ['row-number-out-of-range', {}, { gold: { number: 0 } }],
    ['row-decimals', {}, { magsus: { number: 0.455 } }],
    ['row-empty-cell', {}, { alteration: { levels: {} } }],
    ['row-no-return-observes', { noReturn: true }, {}],
  ];
  for (const [code, changes, cells] of faults)
    it(`${code}: ${JSON.stringify({ ...changes, ...cells })}`, () => {
      expect(found(changes, cells)).toContain(code);
    });

  it('row-qualifier-off: says more only of what it holds, by a list and a code that the schema has', () => {
    const fields = style.fields.map((field) =>
      field.kind === 'percents' ? { ...field, qualifiers: [{ list: 'habits', of: ['PYR'] }] } : field,
    );
    const codesOf = (qualified: Record<string, Record<string, string>>) => {
      const sulphides = { percents: { PYR: 2, ARS: 1 }, qualified };
      const row = { ...good, cells: { ...good.cells, sulphides } };
      return checkRow({ ...style, fields }, row).map(({ code }) => code);
    };
    expect(codesOf({ PYR: { habits: 'DIS' } })).toEqual([]);
    expect(codesOf({ ARS: { habits: 'DIS' } })).toEqual(['row-qualifier-off']);
    expect(codesOf({ CCP: { habits: 'DIS' } })).toEqual(['row-qualifier-off']);
    expect(codesOf({ PYR: { habits: 'XXX' } })).toEqual(['row-qualifier-off']);
    expect(codesOf({ PYR: { colours: 'DGY' } })).toEqual(['row-qualifier-off']);
    expect(
      found({}, { sulphides: { percents: { PYR: 2 }, qualified: { PYR: { habits: 'DIS' } } } }),
    ).toContain('row-wrong-kind');
  });

  it('row-event-off: an event is inside its row, and measured within the limits of its code', () => {
    const point = {
      ...style.fields.find(({ name }) => name === 'fabric'),
      name: 'point',
      kind: 'events',
      list: 'point',
      required: false,
    } as Field;
    const measure = { unit: 'L/s', min: 0, max: 60, decimals: 1 };
    const codes = [
      { code: 'WST', label: 'water strike', look: '', measure },
      { code: 'FLT', label: 'fault', look: '' },
    ];
    const eventful = {
      ...style,
      fields: [...style.fields, point],
      lists: { ...style.lists, point: { name: 'point', label: 'events', codes } },
    };
    const codesOf = (events: Record<string, PointEvent>) =>
      checkRow(eventful, { ...good, cells: { ...good.cells, point: { events } } }).map(({ code }) => code);
    expect(codesOf({ WST: { atMm: 44_000, number: 2.5 }, FLT: {} })).toEqual([]);
    expect(codesOf({ FLT: { atMm: 45_000 } })).toEqual(['row-event-off']);
    expect(codesOf({ FLT: { atMm: 43_999 } })).toEqual(['row-event-off']);
    expect(codesOf({ FLT: { number: 2 } })).toEqual(['row-event-off']);
    expect(codesOf({ WST: { number: 61 } })).toEqual(['row-event-off']);
    expect(codesOf({ WST: { number: 2.55 } })).toEqual(['row-event-off']);
    expect(codesOf({ XXX: {} })).toEqual(['row-code-unknown']);
    expect(codesOf({})).toEqual(['row-empty-cell']);
  });

  it('is placed by hole, interval and field', () => {
    const row = { ...good, cells: { ...good.cells, rock: NONE } };
    expect(checkRow(style, row, { hole: 'ZQRC004' })[0]?.place).toEqual({
      hole: 'ZQRC004',
      fromMm: 44_000,
      toMm: 45_000,
      field: 'rock',
    });
  });

  it('passes with a code that was retired later', () => {
    const rocks = style.lists.rocks!;
    const codes = rocks.codes.map((code) =>
      code.code === 'BAS' ? { ...code, retiredSince: '2026-01-01' } : code,
    );
    expect(checkRow({ ...style, lists: { ...style.lists, rocks: { ...rocks, codes } } }, good)).toEqual([]);
  });

  it('passes whenever it is one that can be observed', () => {
    fc.assert(
      fc.property(
        schemas.chain((schema) => fc.record({ schema: fc.constant(schema), said: rowsOf(schema) })),
        ({ schema, said }) => {
          expect(checkRow(schema, { ...said, fromMm: depthFromMm(0), toMm: depthFromMm(1000) })).toEqual([]);
        },
      ),
      { numRuns: runs(400, 25) },
    );
  });
});

/** Cells of all kinds, right and wrong. */
const anyCell: fc.Arbitrary<Cell> = fc.oneof(
  fc.constantFrom<Cell>(NONE, NOT_OBSERVED, { flag: true }, { text: 'a' }, { levels: {} }, { percents: {} }),
  fc.constantFrom('C0A', 'C1A', 'A B', 'C2C', 'toString').chain((code) =>
    fc.oneof(
      fc.constant<Cell>({ code }),
      fc.integer({ min: 0, max: 60 }).map((percent): Cell => ({ code, second: { code: 'C0B', percent } })),
      fc.integer({ min: 0, max: 10 }).map((level): Cell => ({ levels: { [code]: level } })),
      fc
        .integer({ min: -1, max: 101 })
        .map((percent): Cell => ({ percents: { [code]: percent, C1B: 'trace' } })),
    ),
  ),
  fc.constantFrom(0, 1, 1.5, 9, 10).map((level): Cell => ({ level })),
  fc.constantFrom<Cell>({ percent: 'trace' }, { percent: 0 }, { percent: 100.5 }, { percent: 7 }),
  fc.constantFrom(-6, 0, 1.2345, 5000, 5001).map((number): Cell => ({ number })),
);

type Slip = (row: Row, schema: LoggingSchema) => Row;

/** What can go wrong with a row: a cell of another kind, one missing, one too many, an observation where nothing came up. */
const slip: fc.Arbitrary<Slip> = fc.oneof(
  fc.tuple(fc.nat(20), anyCell).map(
    ([at, cell]): Slip =>
      (row, schema) => {
        const field = schema.fields[at % schema.fields.length]!;
        return { ...row, cells: { ...row.cells, [field.name]: cell } };
      },
  ),
  fc.nat(20).map(
    (at): Slip =>
      (row) => {
        const cells = Object.entries(row.cells).filter((_, index) => index !== at % 4);
        return { ...row, cells: Object.fromEntries(cells) };
      },
  ),
  anyCell.map(
    (cell): Slip =>
      (row) => ({ ...row, cells: { ...row.cells, other: cell } }),
  ),
  fc.constant<Slip>((row) => ({ ...row, noReturn: true })),
  fc.constant<Slip>((row) => ({ ...row, toMm: row.fromMm })),
);

describe('the JSON Schema of a project’s rows', () => {
  it('agrees with our own check through an independent validator on rows by the thousand, good and bad, save for the rules listed as beyond it', () => {
    const beyond = new Set(BEYOND_JSON_SCHEMA.map((kind) => kind.code));
    const tally = { good: 0, bad: 0 };
    fc.assert(
      fc.property(
        schemas.chain((schema) =>
          fc.record({
            schema: fc.constant(schema),
            rows: fc.array(fc.tuple(rowsOf(schema), fc.array(slip, { maxLength: 2 })), {
              minLength: 100,
              maxLength: 100,
            }),
          }),
        ),
        ({ schema, rows }) => {
          const valid = new Ajv2020({ strict: false, validateFormats: false }).compile(rowJsonSchema(schema));
          for (const [said, slips] of rows) {
            const sound: Row = { ...said, fromMm: depthFromMm(3000), toMm: depthFromMm(4000) };
            const row = slips.reduce((each, next) => next(each, schema), sound);
            const ours = checkRow(schema, row).filter((finding) => !beyond.has(finding.code));
            const theirs = valid(row);
            expect({ row, ours: ours.length === 0 }, ours[0]?.problem).toEqual({ row, ours: theirs });
            tally[theirs ? 'good' : 'bad'] += 1;
          }
        },
      ),
      { numRuns: runs(50, 25) },
    );
    expect(tally.good).toBeGreaterThan(1000);
    expect(tally.bad).toBeGreaterThan(1000);
  });

  it('takes the rows of the starter style and refuses a field it does not have', () => {
    const valid = new Ajv2020({ strict: false }).compile(rowJsonSchema(style));
    expect(valid(good)).toBe(true);
    expect(valid({ ...good, cells: { ...good.cells, rocks: NONE } })).toBe(false);
  });

  it('lists in its description each rule that it can’t hold', () => {
    const { description } = rowJsonSchema(style);
    for (const kind of BEYOND_JSON_SCHEMA) expect(description).toContain(kind.title);
  });
});
