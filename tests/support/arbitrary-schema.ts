import fc from 'fast-check';
import type { Condition } from '../../src/condition/condition.ts';
import { fieldApplies } from '../../src/schema/applies.ts';
import { isPair, lettersBesideAmount, slipsOf } from '../../src/schema/check/keyboard.ts';
import {
  type Code,
  type CodeList,
  codeOf,
  type Field,
  fieldNamed,
  type LoggingSchema,
  listOf,
  qualifierFor,
  qualifiersOf,
  type Scale,
  scaleOf,
} from '../../src/schema/logging-schema.ts';
import { percentOf } from '../../src/schema/read-cell.ts';
import {
  type Amount,
  amountsIn,
  type Cell,
  cellOfAmounts,
  codeWith,
  NONE,
  NOT_OBSERVED,
  type PointEvent,
  VALUE_KINDS,
  withQualified,
} from '../../src/value/cell.ts';
import type { Cells, RowSaid } from '../../src/value/row.ts';

const LETTERS = [...'abcdefghijklmnopqrstuvwxyz'];

/** Nine letters of which no two are neighbours. */
const APART_KEYS = [...'cspqknrgu'];

/** Letters beside a digit or the comma: behind a key, a slip of its amount. */
const BESIDE_AMOUNTS = [...'1234567890,;'].flatMap(lettersBesideAmount);

/** Pairs of which no two are one slip apart, nor one from a key with its amount, so that any choice of them passes the schema check. */
const APART_PAIRS: readonly string[] = apartPairs();

function apartPairs(): readonly string[] {
  const kept: string[] = [];
  for (const pair of LETTERS.flatMap((a) => LETTERS.map((b) => a + b)))
    if (
      isPair(pair) &&
      !isKeyRun(pair) &&
      !slipsOf(pair).some((slip) => slip === 'nr' || kept.includes(slip))
    )
      kept.push(pair);
  return kept.filter((pair) => pair !== 'nr');
}

function isKeyRun(pair: string): boolean {
  const [first = '', second = ''] = pair;
  return APART_KEYS.includes(first) && BESIDE_AMOUNTS.includes(second);
}

/** Codes as they are met: three capitals mostly, and what imposed libraries have. */
const ODD_CODES = ['A B', "O'K", 'X/Y', '12', 'a=b', 'Ωmega', '-5', '7.5', 'x'];

type Shape = {
  readonly kind: Field['kind'];
  readonly required: boolean;
  readonly carry: boolean;
  readonly canBeNone: boolean;
  readonly unsaidNone: boolean;
  readonly second: boolean;
  readonly third: boolean;
  readonly barrier: number | undefined;
  readonly qualifiers: number;
  readonly column: boolean;
  readonly codes: number;
  readonly oddCodes: readonly string[];
  readonly levels: number;
  readonly levelCodes: boolean;
  readonly ladder: readonly number[];
  readonly trace: boolean;
  readonly sumLimit: number;
  readonly decimals: number;
  readonly asks: number | undefined;
  readonly withoutPair: number;
};

const shape: fc.Arbitrary<Shape> = fc.record({
  kind: fc.constantFrom(...VALUE_KINDS),
  required: fc.boolean(),
  carry: fc.boolean(),
  canBeNone: fc.boolean(),
  unsaidNone: fc.boolean(),
  second: fc.boolean(),
  third: fc.boolean(),
  qualifiers: fc.nat(4),
  barrier: fc.option(fc.nat(20), { nil: undefined, freq: 1 }),
  column: fc.boolean(),
  codes: fc.integer({ min: 1, max: 8 }),
  oddCodes: fc.uniqueArray(fc.constantFrom(...ODD_CODES), { maxLength: 2 }),
  levels: fc.integer({ min: 1, max: 9 }),
  levelCodes: fc.boolean(),
  ladder: fc.constantFrom([1, 2, 5, 10, 20, 50], [0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 50], [5, 25, 100]),
  trace: fc.boolean(),
  sumLimit: fc.constantFrom(100, 60),
  decimals: fc.integer({ min: 0, max: 3 }),
  asks: fc.option(fc.nat(20), { nil: undefined, freq: 2 }),
  withoutPair: fc.nat(9),
});

/** Logging schemas that pass the schema check: every kind of field, only-when, retired and odd codes, with and without strokes. */
export const schemas: fc.Arbitrary<LoggingSchema> = fc
  .tuple(
    fc.array(shape, { minLength: 1, maxLength: 8 }),
    fc.shuffledSubarray([...APART_PAIRS], { minLength: APART_PAIRS.length }),
    fc.shuffledSubarray(APART_KEYS),
    fc.integer({ min: 2, max: 12 }),
  )
  .map(([shapes, pairs, keys, repeatsBeforeLook]) => build(shapes, [...pairs], [...keys], repeatsBeforeLook));

function build(
  shapes: readonly Shape[],
  pairs: string[],
  keys: string[],
  repeatsBeforeLook: number,
): LoggingSchema {
  const lists: Record<string, CodeList> = {};
  const scales: Record<string, Scale> = {};
  const fields: Field[] = [];
  shapes.forEach((each, index) => {
    const strokes = (n: number, amount: boolean) => ({
      ...(n % 10 === each.withoutPair ? {} : { pair: pairs.pop() as string }),
      ...(amount && n % 2 === 0 && keys.length > 0 ? { key: keys.pop() as string } : {}),
    });
    const amounts =
      each.kind === 'levels' || each.kind === 'percents' || (each.kind === 'code' && each.second);
    const codes = codesOf(each, index, (n) => strokes(n, amounts));
    if (codes.length > 0) lists[`l${index}`] = { name: `l${index}`, label: `list ${index}`, codes };
    if (each.kind === 'level' || each.kind === 'levels') scales[`s${index}`] = scaleWith(each, index);
    const asked = { name: '', fields, lists, scales, repeatsBeforeLook };
    fields.push({
      ...fieldFrom(each, index, strokes(index, true), conditionOver(asked, each.asks)),
      ...barrierOver(fields, each),
      ...qualifiersFor(each, index, lists, () => pairs.pop() as string),
    });
  });
  return { name: 'generated', fields, lists, scales, repeatsBeforeLook };
}

/** Lists that say more of a field's codes, added to the lists: one, two, one of a single code, or the field's own. */
function qualifiersFor(
  each: Shape,
  index: number,
  lists: Record<string, CodeList>,
  pair: () => string,
): object {
  if (each.qualifiers === 0 || !['code', 'codes', 'levels', 'percents'].includes(each.kind)) return {};
  const own = each.qualifiers === 4 && each.kind === 'code' && !each.second;
  const names = own ? [] : each.qualifiers === 2 ? [`q${index}a`, `q${index}B`] : [`q${index}a`];
  for (const name of names)
    lists[name] = {
      name,
      label: `more ${name}`,
      codes: [0, 1, 2].map((n) => ({
        code: `${name}${n}`,
        label: `more ${name} ${n}`,
        look: '',
        ...(n === 2 ? {} : { pair: pair() }),
        ...(n === 1 && each.withoutPair === 1 ? { retiredSince: '2026-01-31' } : {}),
      })),
    };
  const of =
    each.qualifiers === 3 && each.kind !== 'code' ? { of: [lists[`l${index}`]?.codes[0]?.code] } : {};
  return { qualifiers: own ? [{ list: `l${index}` }] : names.map((list) => ({ list, ...of })) };
}

/** A field above that it does not carry across a change of, or none. */
function barrierOver(fields: readonly Field[], { barrier, carry, kind, column }: Shape): object {
  const found = barrier === undefined ? undefined : fields[barrier % Math.max(1, fields.length)];
  const carries = carry && kind !== 'events' && !(kind === 'number' && column);
  return found === undefined || !carries ? {} : { notAcross: [found.name] };
}

const VOID = { kind: 'void', words: 'Call, and go by site procedures.' } as const;

function codesOf(each: Shape, index: number, strokes: (n: number) => object): readonly Code[] {
  if (!['code', 'codes', 'events', 'levels', 'percents'].includes(each.kind)) return [];
  const names = [...Array.from({ length: each.codes }, (_, n) => `C${index}${LETTERS[n]?.toUpperCase()}`)];
  return [...names, ...each.oddCodes].map((code, n) => ({
    code,
    label: `thing ${index} ${n}`,
    look: 'as it looks',
    ...strokes(n),
    ...(each.kind === 'events' && n % 2 === 0
      ? { measure: { unit: 'L/s', min: 0, max: 50, decimals: each.decimals } }
      : {}),
    ...(n > 0 && n === each.withoutPair ? { retiredSince: '2026-01-31' } : {}),
    // A void or a loss of return, in one list of four each: rows that hold one carry nothing.
    ...(n === each.codes - 1 && each.levelCodes && each.trace ? { caution: VOID } : {}),
    ...(n === each.codes - 1 && each.levelCodes && !each.trace ? { noChips: true as const } : {}),
  }));
}

function scaleWith(each: Shape, index: number): Scale {
  const levels = Array.from({ length: each.levels }, (_, n) => ({
    level: n + 1,
    ...(each.levelCodes ? { code: `v${LETTERS[n]}` } : {}),
    label: `level ${n + 1}`,
    look: 'as it looks',
  }));
  return { name: `s${index}`, label: `scale ${index}`, levels };
}

function fieldFrom(each: Shape, index: number, strokes: object, onlyWhen: Condition | undefined): Field {
  const column = each.kind === 'number' && each.column;
  const base = {
    name: `f${index}`,
    label: `field ${index}`,
    required: each.required && !column,
    ...(onlyWhen === undefined ? {} : { onlyWhen }),
    carry: each.carry && !column,
    unsaid: each.unsaidNone && each.canBeNone ? ('none' as const) : ('not observed' as const),
    canBeNone: each.canBeNone,
  };
  const list = `l${index}`;
  const scale = `s${index}`;
  const percent = { ladder: each.ladder, ...(each.trace ? { traceCountsAsPercent: 0.1 } : {}) };
  const { kind } = each;
  if (kind === 'code')
    return {
      ...base,
      kind,
      list,
      second: each.second,
      ...(each.second && each.third ? { third: true } : {}),
    };
  if (kind === 'codes') return { ...base, kind, list };
  if (kind === 'events') return { ...base, kind, list, carry: false, required: false };
  if (kind === 'level') return { ...base, ...strokes, kind, scale };
  if (kind === 'levels') return { ...base, kind, list, scale };
  if (kind === 'percents') return { ...base, ...percent, kind, list, sumLimitPercent: each.sumLimit };
  if (kind === 'percent') return { ...base, ...strokes, ...percent, kind };
  if (kind === 'flag') return { ...base, ...strokes, kind };
  if (kind === 'text') return { ...base, kind };
  return { ...base, kind, unit: 'ppm', min: each.trace ? -5 : 0, max: 5000, decimals: each.decimals, column };
}

/** A condition that makes sense over one of the fields so far, or none. */
function conditionOver(schema: LoggingSchema, asks: number | undefined): Condition | undefined {
  if (asks === undefined || schema.fields.length === 0) return undefined;
  const field = schema.fields[asks % schema.fields.length] as Field;
  const seen: Condition = { field: field.name, seen: asks % 2 === 0 };
  const code = listOf(schema, field)?.codes[0]?.code;
  if (field.kind === 'code' && code !== undefined && asks % 3 === 0) return { field: field.name, is: code };
  if (field.kind === 'level' && asks % 3 === 0) return { not: { field: field.name, atLeast: 2 } };
  if (field.kind === 'percents' && code !== undefined && asks % 3 === 0)
    return { any: [{ field: field.name, of: code, moreThan: 1 }, seen] };
  return seen;
}

/** What can be observed in a metre with a schema: every applicable field has a value or an absence; sometimes no return. */
export function rowsOf(schema: LoggingSchema): fc.Arbitrary<RowSaid> {
  const cells = fc.record(
    Object.fromEntries(schema.fields.map((field) => [field.name, cellsOf(schema, field)])),
  );
  const observed = fc.tuple(cells, fc.option(remark, { nil: undefined, freq: 1 })).map(
    ([each, said]): RowSaid => ({
      cells: asked(schema, each),
      ...(said === undefined ? {} : { remark: said }),
    }),
  );
  const nothing: RowSaid = { cells: asked(schema, {}), noReturn: true };
  return fc.oneof({ weight: 19, arbitrary: observed }, { weight: 1, arbitrary: fc.constant(nothing) });
}

/** Only the cells of fields that apply; a field without a cell was not observed. */
export function asked(schema: LoggingSchema, all: Cells): Cells {
  const cells: Record<string, Cell> = {};
  for (const field of schema.fields)
    if (fieldApplies(schema, cells, field)) cells[field.name] = all[field.name] ?? NOT_OBSERVED;
  return cells;
}

const remark = fc
  .stringMatching(/^[A-Za-z0-9?!.,;:'"=/() -]{1,30}$/)
  .map((text) => text.trim())
  // A = at the end of a line insists, behind a remark too.
  .filter((text) => text !== '' && !text.endsWith('='));

/** What one field can hold. */
function cellsOf(schema: LoggingSchema, field: Field): fc.Arbitrary<Cell> {
  const absences = fc.constantFrom(NOT_OBSERVED, ...(field.canBeNone ? [NONE] : []));
  const plain = valuesOf(schema, field);
  const values = plain?.chain((cell) => qualifiedCells(schema, field, cell));
  return values === undefined
    ? absences
    : fc.oneof({ weight: 4, arbitrary: values }, { weight: 1, arbitrary: absences });
}

/** A cell with what more can be said of its codes, or not. */
function qualifiedCells(schema: LoggingSchema, field: Field, cell: Cell): fc.Arbitrary<Cell> {
  const codes = 'code' in cell ? [cell.code] : Object.keys(amountsIn(cell));
  const slots = codes.flatMap((of) =>
    qualifiersOf(field)
      .filter(({ list }) => qualifierFor(field, list, of) !== undefined)
      .map(({ list }) => ({ of, list })),
  );
  if (slots.length === 0) return fc.constant(cell);
  const choices = slots.map(({ of, list }) => {
    const usable = (schema.lists[list]?.codes ?? []).filter(
      ({ code, retiredSince }) =>
        retiredSince === undefined && !(list === ('list' in field ? field.list : '') && code === of),
    );
    return fc.option(fc.constantFrom(...usable.map(({ code }) => code), undefined), { nil: undefined });
  });
  return fc.tuple(...choices).map((picked) => {
    const qualified: { [code: string]: { [list: string]: string } } = {};
    picked.forEach((quality, index) => {
      const slot = slots[index];
      if (quality === undefined || slot === undefined) return;
      qualified[slot.of] = { ...qualified[slot.of], [slot.list]: quality };
    });
    return withQualified(cell, qualified);
  });
}

function valuesOf(schema: LoggingSchema, field: Field): fc.Arbitrary<Cell> | undefined {
  const codes = (listOf(schema, field)?.codes ?? [])
    .filter((code) => code.retiredSince === undefined)
    .map((code) => code.code);
  const highest = scaleOf(schema, field)?.levels.length ?? 0;
  const level = fc.integer({ min: 1, max: Math.max(1, highest) });
  if (field.kind === 'code') return codeCells(codes, field.second, field.third === true);
  if (field.kind === 'events')
    return fc
      .shuffledSubarray([...codes], { minLength: 1 })
      .chain((some) =>
        fc.record(Object.fromEntries(some.map((code) => [code, eventOf(codeOf(schema, field, code))]))),
      )
      .map((events): Cell => ({ events }));
  if (field.kind === 'codes')
    return byCode(codes, fc.constant(1)).map((amounts): Cell => cellOfAmounts('codes', amounts));
  if (field.kind === 'level') return level.map((each): Cell => ({ level: each }));
  if (field.kind === 'levels') return byCode(codes, level).map((levels): Cell => ({ levels }));
  if (field.kind === 'percents')
    return byCode(codes, amounts(field, Math.min(field.sumLimitPercent, 100))).map(
      (percents): Cell => ({ percents: underLimit(schema, field.name, percents, field.sumLimitPercent) }),
    );
  if (field.kind === 'percent') return amounts(field, 100).map((percent): Cell => ({ percent }));
  if (field.kind === 'flag') return fc.constant<Cell>({ flag: true });
  if (field.kind === 'text')
    return fc.stringMatching(/^[A-Za-z0-9'=/., -]{0,20}[A-Za-z0-9]$/).map((text): Cell => ({ text }));
  const steps = 10 ** field.decimals;
  return fc
    .integer({ min: field.min * steps, max: field.max * steps })
    .map((number): Cell => ({ number: number === 0 ? 0 : number / steps }))
    .filter((cell) => !(field.canBeNone && 'number' in cell && cell.number === 0));
}

/** An event somewhere in the first metre, or at a depth that no one knows, measured or not. */
function eventOf(code: Code | undefined): fc.Arbitrary<PointEvent> {
  const steps = 10 ** (code?.measure?.decimals ?? 0);
  const number = fc.integer({ min: 1, max: 50 * steps }).map((each) => each / steps);
  return fc
    .tuple(
      fc.option(fc.integer({ min: 0, max: 999 }), { nil: undefined }),
      code?.measure === undefined ? fc.constant(undefined) : fc.option(number, { nil: undefined }),
    )
    .map(([atMm, measured]) => ({
      ...(atMm === undefined ? {} : { atMm }),
      ...(measured === undefined ? {} : { number: measured }),
    }));
}

function codeCells(codes: readonly string[], second: boolean, third: boolean): fc.Arbitrary<Cell> {
  const one = fc.constantFrom(...codes).map((code): Cell => ({ code }));
  if (!second || codes.length < 2) return one;
  const two = fc
    .tuple(fc.shuffledSubarray([...codes], { minLength: 2, maxLength: 2 }), fc.integer({ min: 1, max: 50 }))
    .map(
      ([[code, other], percent]): Cell => ({
        code: code as string,
        second: { code: other as string, percent },
      }),
    );
  if (!third || codes.length < 3)
    return fc.oneof({ weight: 2, arbitrary: one }, { weight: 1, arbitrary: two });
  const three = fc
    .tuple(
      fc.shuffledSubarray([...codes], { minLength: 3, maxLength: 3 }),
      fc.integer({ min: 1, max: 33 }),
      fc.integer({ min: 1, max: 33 }),
    )
    .map(
      ([[code = '', second = '', third = ''], a, b]): Cell =>
        codeWith(code, [
          { code: second, percent: a },
          { code: third, percent: b },
        ]),
    );
  return fc.oneof(
    { weight: 2, arbitrary: one },
    { weight: 1, arbitrary: two },
    { weight: 1, arbitrary: three },
  );
}

function byCode<A>(
  codes: readonly string[],
  amount: fc.Arbitrary<A>,
): fc.Arbitrary<{ readonly [code: string]: A }> {
  return fc
    .shuffledSubarray([...codes], { minLength: 1 })
    .chain((some) => fc.record(Object.fromEntries(some.map((code) => [code, amount]))));
}

function amounts(
  field: { readonly ladder: readonly number[]; readonly traceCountsAsPercent?: number },
  most: number,
): fc.Arbitrary<Amount> {
  const ladder = field.ladder.filter((step) => step <= most);
  return fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom<Amount[]>(...ladder) },
    { weight: 2, arbitrary: fc.integer({ min: 1, max: most }) },
    { weight: 1, arbitrary: fc.integer({ min: 1, max: most * 10 }).map((tenths) => tenths / 10) },
    { weight: field.traceCountsAsPercent === undefined ? 0 : 2, arbitrary: fc.constant<Amount>('trace') },
  );
}

/** Amounts up to where their sum would pass the limit: never none. */
function underLimit(
  schema: LoggingSchema,
  name: string,
  percents: { readonly [code: string]: Amount },
  limit: number,
): { readonly [code: string]: Amount } {
  const field = fieldNamed(schema, name) as Field;
  let sum = 0;
  return Object.fromEntries(
    Object.entries(percents).filter(([, amount]) => {
      const next = sum + percentOf(amount, field);
      if (next > limit) return false;
      sum = next;
      return true;
    }),
  );
}

/** A schema with rows that can be observed with it. */
export function schemaWithRows(
  count: number,
): fc.Arbitrary<{ readonly schema: LoggingSchema; readonly rows: readonly RowSaid[] }> {
  return schemas.chain((schema) =>
    fc.array(rowsOf(schema), { minLength: count, maxLength: count }).map((rows) => ({ schema, rows })),
  );
}
