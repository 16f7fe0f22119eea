import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { checkRow } from '../../../src/schema/check/row-checks.ts';
import type { Field, LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { NONE, NOT_OBSERVED } from '../../../src/value/cell.ts';
import type { Row } from '../../../src/value/row.ts';
import { resolveStyle } from '../../support/styles.ts';
import { type ErrorCase, given } from '../error-case.ts';

const STYLE = resolveStyle('orogenic-gold') as LoggingSchema;
const SOUND: Row = {
  fromMm: depthFromMetres(44),
  toMm: depthFromMetres(45),
  cells: {
    rock: { code: 'BAS', second: { code: 'SHA', percent: 30 } },
    weathering: { level: 1 },
    oxidation: { level: 1 },
    colour: { code: 'DGY' },
    grain: { level: 4 },
    fabric: NOT_OBSERVED,
    alteration: { levels: { CHL: 2, SIL: 1 } },
    sulphides: { percents: { PYR: 2 } },
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

/** The style with a habit for each sulphide. */
const QUALIFIED: LoggingSchema = {
  ...STYLE,
  fields: STYLE.fields.map((field) =>
    field.kind === 'percents' ? { ...field, qualifiers: [{ list: 'habits' }] } : field,
  ),
};

/** The style with its fabrics as if they were events. */
const EVENTFUL: LoggingSchema = {
  ...STYLE,
  fields: STYLE.fields.map((field) =>
    field.name === 'fabric' && 'list' in field ? ({ ...field, kind: 'events' } as Field) : field,
  ),
};

/** A case of the sound row with some of it put otherwise. */
const row = (code: string, input: string, changes: object, cells: object = {}): ErrorCase =>
  given(code, input, () => {
    const all = Object.entries({ ...SOUND.cells, ...cells }).filter(([, cell]) => cell !== undefined);
    return checkRow(STYLE, { ...SOUND, ...changes, cells: Object.fromEntries(all) }, { hole: 'ZQRC004' });
  });

/** Errors of rows against the schema that they were logged by. */
export const ROW_CASES: readonly ErrorCase[] = [
  row('row-interval', 'no length', { toMm: SOUND.fromMm }),
  row('row-field-unknown', 'a field that the schema has not', {}, { rocks: { code: 'BAS' } }),
  row('row-field-missing', 'no rock', {}, { rock: undefined }),
  row('row-only-when', 'a fill without a vein', {}, { fill: { code: 'QTZ' } }),
  row('row-wrong-kind', 'a level for a rock', {}, { rock: { level: 2 } }),
  row('row-cannot-be-none', 'no rock seen', {}, { rock: NONE }),
  row('row-code-unknown', 'a code in small letters', {}, { rock: { code: 'bas' } }),
  row('row-level-off-scale', 'a level of 7', {}, { weathering: { level: 7 } }),
  row(
    'row-amount-off',
    'a second rock of 60 %',
    {},
    { rock: { code: 'BAS', second: { code: 'SHA', percent: 60 } } },
  ),
  row('row-sum-over-limit', 'sulphides of 110 %', {}, { sulphides: { percents: { PYR: 60, ARS: 50 } } }),
  row(
    'row-second-is-first',
    'a rock twice',
    {},
    { rock: { code: 'BAS', second: { code: 'BAS', percent: 10 } } },
  ),
  row('row-number-out-of-range', 'a number below the least', {}, { gold: { number: 0 } }),
  row('row-decimals', 'three decimals', {}, { magsus: { number: 0.455 } }),
  row('row-empty-cell', 'alteration of nothing', {}, { alteration: { levels: {} } }),
  row('row-no-return-observes', 'no return, and a rock', { noReturn: true }),
  given('row-qualifier-off', 'a habit of a sulphide that is not there', () => {
    const qualified = { CCP: { habits: 'DIS' } };
    const cells = { ...SOUND.cells, sulphides: { percents: { PYR: 2 }, qualified } };
    return checkRow(QUALIFIED, { ...SOUND, cells }, { hole: 'ZQRC004' });
  }),
  given('row-event-off', 'a fault at a depth of another row', () => {
    const cells = { ...SOUND.cells, fabric: { events: { MAS: { atMm: 54_600 } } } };
    return checkRow(EVENTFUL, { ...SOUND, cells }, { hole: 'ZQRC004' });
  }),
  row('row-unlikely', 'fresh and completely oxidised', {}, { oxidation: { level: 3 } }),
];
