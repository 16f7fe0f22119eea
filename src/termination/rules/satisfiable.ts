import { type Condition, type FieldCondition, fieldConditions } from '../../condition/condition.ts';
import { evaluate, type Reader, type Reading } from '../../condition/evaluate.ts';
import type { Tri } from '../../quantity/tri.ts';
import { type Field, fieldNamed, type LoggingSchema, listOf, scaleOf } from '../../schema/logging-schema.ts';

/** More combinations of readings than this are not tried. */
const MOST_TRIED = 20_000;

/**
 * Whether a metre can be logged on which a condition has an answer. Tries the readings on either side of every figure and code that
 * the condition names; where those are too many, or a field is unknown, it says yes: this finds conditions that contradict
 * themselves, it proves nothing of the others.
 */
export function canBe(condition: Condition, wanted: Tri, schema: LoggingSchema): boolean {
  const asked = new Map<string, readonly FieldCondition[]>();
  for (const each of fieldConditions(condition)) {
    const key = keyOf(each.field, each.of);
    asked.set(key, [...(asked.get(key) ?? []), each]);
  }
  const choices = [...asked].map(([key, comparisons]) => ({
    key,
    readings: readingsFor(comparisons, schema),
  }));
  const combinations = choices.reduce((all, { readings }) => all * (readings?.length ?? 1), 1);
  if (combinations > MOST_TRIED || choices.some(({ readings }) => readings === undefined)) return true;
  for (let number = 0; number < combinations; number++) {
    let rest = number;
    const said = new Map<string, Reading>();
    for (const { key, readings } of choices) {
      said.set(key, readings![rest % readings!.length]!);
      rest = Math.floor(rest / readings!.length);
    }
    const read: Reader = (field, of) => said.get(keyOf(field, of)) ?? { says: 'unknown' };
    if (evaluate(condition, read) === wanted) return true;
  }
  return false;
}

function keyOf(field: string, of: string | undefined): string {
  return JSON.stringify([field, of]);
}

/** Readings that differ wherever one of the comparisons could tell them apart; undefined where the field is unknown. */
function readingsFor(
  comparisons: readonly FieldCondition[],
  schema: LoggingSchema,
): readonly Reading[] | undefined {
  const { field: name, of } = comparisons[0]!;
  const field = fieldNamed(schema, name);
  if (field === undefined) return undefined;
  // What is measured of an event has limits of its own code, which are not tried.
  if (of !== undefined && field.kind === 'events') return undefined;
  // What more is said of one code is not tried: whoever asks it is taken to know.
  if (of !== undefined && comparisons.some((each) => 'is' in each || 'isOneOf' in each)) return undefined;
  const none: readonly Reading[] = field.canBeNone || of !== undefined ? [{ says: 'none' }] : [];
  const numbers = numbersNear(comparisons.flatMap(figureOf), field, schema);
  if (of !== undefined && field.kind === 'codes') return [...none, { says: 'codes', codes: [of] }];
  if (of !== undefined || field.kind === 'percent' || field.kind === 'number')
    return [...none, ...numbers.map((number): Reading => ({ says: 'number', number }))];
  if (field.kind === 'level') return [...none, ...levelsOf(field, schema)];
  const codes = codesNamed(comparisons, field, schema);
  const sized = field.kind === 'percents' || field.kind === 'levels' ? numbers : [undefined];
  const there = codes.flatMap((some) =>
    sized.map(
      (number): Reading => ({ says: 'codes', codes: some, ...(number === undefined ? {} : { number }) }),
    ),
  );
  return [...none, ...there];
}

function figureOf(comparison: FieldCondition): readonly number[] {
  if ('atLeast' in comparison) return [comparison.atLeast];
  if ('moreThan' in comparison) return [comparison.moreThan];
  if ('atMost' in comparison) return [comparison.atMost];
  return 'lessThan' in comparison ? [comparison.lessThan] : [];
}

/** The figures and figures on either side of them, within what the field can hold; its limits among them. */
function numbersNear(figures: readonly number[], field: Field, schema: LoggingSchema): readonly number[] {
  const [least, most] = limitsOf(field, schema);
  const step = field.kind === 'levels' || field.kind === 'level' ? 1 : 1e-6;
  const near = [least, most, ...figures.flatMap((figure) => [figure - step, figure, figure + step])];
  const inside = near.filter((number) => number >= least && number <= most);
  return [...new Set(step === 1 ? inside.map(Math.round) : inside)];
}

function limitsOf(field: Field, schema: LoggingSchema): readonly [number, number] {
  if (field.kind === 'number') return [field.min, field.max];
  const levels = scaleOf(schema, field)?.levels.length;
  return levels === undefined ? [1e-6, 100] : [1, levels];
}

function levelsOf(field: Field, schema: LoggingSchema): readonly Reading[] {
  return (scaleOf(schema, field)?.levels ?? []).map(
    ({ level, code }): Reading => ({ says: 'level', number: level, ...(code === undefined ? {} : { code }) }),
  );
}

/** Each code or text that is named alone, one that is not named, and, where a field holds several, all of them. */
function codesNamed(
  comparisons: readonly FieldCondition[],
  field: Field,
  schema: LoggingSchema,
): readonly (readonly string[])[] {
  const named = [
    ...new Set(
      comparisons.flatMap((each) => ('is' in each ? [each.is] : 'isOneOf' in each ? each.isOneOf : [])),
    ),
  ];
  const list = listOf(schema, field)?.codes.map(({ code }) => code);
  const loggable = list === undefined ? named : named.filter((code) => list.includes(code));
  const other = list === undefined ? ['another'] : list.filter((code) => !named.includes(code)).slice(0, 1);
  const together = loggable.length > 1 && field.kind !== 'text' ? [loggable] : [];
  return [...loggable.map((code) => [code]), ...other.map((code) => [code]), ...together];
}
