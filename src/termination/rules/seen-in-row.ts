import { type Condition, fieldConditions } from '../../condition/condition.ts';
import { evaluate, type Reading } from '../../condition/evaluate.ts';
import { depthFromMm, formatDepth } from '../../quantity/depth.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import { fieldNamed } from '../../schema/logging-schema.ts';
import type { Row } from '../../value/row.ts';
import { isAsked, readField } from '../evaluate/log.ts';
import { deepestMm, type Situation } from '../evaluate/situation.ts';
import type { Stretch } from '../evaluate/stretch.ts';
import { namesOf, unitOf } from './names.ts';

/** An interval of depths that are known to be whole millimetres. */
export function intervalOf(fromMm: number, toMm: number): Interval {
  return { fromMm: depthFromMm(fromMm), toMm: depthFromMm(toMm) };
}

/** The lowest row that reaches into a stretch of the log; undefined where there is none. */
function lowestRowIn(
  situation: Situation,
  stretch: { readonly fromMm: number; readonly toMm: number },
): Row | undefined {
  return situation.rows.findLast((row) => row.fromMm < stretch.toMm && row.toMm > stretch.fromMm);
}

/**
 * What the lowest metres of a stretch say of the fields a condition asks, as the reason why it fails or can't be told:
 * `pyrite 2 % at 45–46`, `no return at 45–46`.
 */
export function seenThere(situation: Situation, condition: Condition, stretch: Stretch): string {
  const row = lowestRowIn(situation, stretch);
  if (row === undefined || stretch.unlogged) return `not logged at ${formatInterval(stretch)}`;
  return `${rowSays(situation, condition, row)} at ${formatInterval(row)}`;
}

/** How far above the bit a depth lies: `at the bit`, `3 m above the bit`. */
export function aboveBit(aboveMm: number): string {
  return aboveMm <= 0 ? 'at the bit' : `${formatDepth(aboveMm)} m above the bit`;
}

/**
 * What was seen that makes one of the conditions hold, in the lowest row where it does, and how far above the bit: `rock serpentinite at
 * 35–36, 1 m above the bit`. Undefined where no row of those metres holds by itself.
 */
export function sightOf(
  situation: Situation,
  conditions: readonly Condition[],
  metres: readonly Interval[],
): string | undefined {
  const rows = situation.rows.filter((row) =>
    metres.some(({ fromMm, toMm }) => row.fromMm < toMm && row.toMm > fromMm),
  );
  for (const row of [...rows].reverse()) {
    const holding = conditions
      .filter((condition) => holdsIn(situation, row, condition))
      .flatMap((condition) => fieldConditions(condition))
      .filter((each) => holdsIn(situation, row, each));
    if (holding.length === 0) continue;
    const texts = holding.map((each) => fieldSays(situation, row, each.field, each.of));
    const words = [...new Set(texts)].join(', ');
    return `${words} at ${formatInterval(row)}, ${aboveBit(deepestMm(situation) - row.toMm)}`;
  }
  return undefined;
}

function holdsIn({ schema }: Situation, row: Row, condition: Condition): boolean {
  const read = (name: string, of?: string): Reading => {
    const field = fieldNamed(schema, name);
    return field === undefined ? { says: 'unknown' } : readField(schema, row, field, of);
  };
  return evaluate(condition, read) === 'yes';
}

function rowSays(situation: Situation, condition: Condition, row: Row): string {
  if (row.noReturn) return 'no return';
  if (isAsked(row)) return 'a question is open';
  const texts = fieldConditions(condition).map((each) => fieldSays(situation, row, each.field, each.of));
  return [...new Set(texts)].join(', ');
}

function fieldSays(situation: Situation, row: Row, name: string, of: string | undefined): string {
  const names = namesOf(situation.schema);
  const what = of === undefined ? names(name) : names(name, of);
  const field = fieldNamed(situation.schema, name);
  if (field === undefined) return `${what} not observed`;
  if (isAsked(row, name)) return `a question about ${names(name)} is open`;
  const reading = readField(situation.schema, row, field, of);
  if (reading.says === 'unknown') return `${what} not observed`;
  if (reading.says === 'does not apply') return `${what} does not apply`;
  if (reading.says === 'none') return `no ${what}`;
  const unit = unitOf(field, of);
  if (reading.says === 'number') return `${what} ${reading.number}${unit}`;
  if (reading.says === 'level')
    return `${what} ${reading.code === undefined ? reading.number : names(name, reading.code)}`;
  const codes = reading.codes.map((code) => names(name, code)).join(', ');
  return reading.number === undefined ? `${what} ${codes}`.trim() : `${what} ${reading.number}${unit}`;
}
