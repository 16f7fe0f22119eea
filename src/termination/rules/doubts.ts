import { type Condition, fieldConditions } from '../../condition/condition.ts';
import { evaluate, type Reading } from '../../condition/evaluate.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import { fieldNamed } from '../../schema/logging-schema.ts';
import type { Row } from '../../value/row.ts';
import { isAsked, readField } from '../evaluate/log.ts';
import type { Situation } from '../evaluate/situation.ts';
import type { Stretch } from '../evaluate/stretch.ts';
import { joined } from '../evaluate/unlogged.ts';
import { namesOf } from './names.ts';
import { intervalOf } from './seen-in-row.ts';

/** So many ranges are named one by one, the lowest ones; of what lies above them the metres are said. */
const RANGES_NAMED = 6;

/** Ranges in words, those that touch as one: `28–30, 31–32 and 34–36`. Of many the lowest are named, and how much lies above them. */
export function rangesWords(ranges: readonly Interval[]): string {
  const apart = joined(ranges);
  const named = apart.slice(-RANGES_NAMED).map(formatInterval);
  const more = apart.slice(0, -RANGES_NAMED).reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0);
  const parts = more === 0 ? named : [...named, `${formatDepth(more)} m above them`];
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** A stretch as an interval. */
export function asInterval({ fromMm, toMm }: Stretch): Interval {
  return intervalOf(fromMm, toMm);
}

/** What is typed to note something of the lowest of some stretches, the one that the rest waits for: `;dry 30-36`. */
export function typedFor(word: string, stretches: readonly Stretch[]): string {
  const last = stretches.at(-1);
  return last === undefined ? `;${word}` : `;${word} ${formatDepth(last.fromMm)}-${formatDepth(last.toMm)}`;
}

/** A fact, and why it can't be told of the metres that are logged and in doubt; the fact alone where there are none. */
export function withDoubt(
  situation: Situation,
  condition: Condition,
  fact: string,
  doubts: readonly Stretch[],
): string {
  const causes = doubtsOf(situation, condition, doubts);
  return causes === '' ? fact : `${fact}: ${causes}`;
}

/** Why the logged metres of some stretches can't be told, cause by cause, each with all its metres. Empty where none is logged. */
export function doubtsOf(situation: Situation, condition: Condition, doubts: readonly Stretch[]): string {
  const known = new Map<string, boolean>();
  const neverSeen = (field: string): boolean => {
    const never = known.get(field) ?? !wasEverSeen(situation, field);
    known.set(field, never);
    return never;
  };
  return causesIn(situation, doubts, (row) => causesOf(situation, condition, row, neverSeen));
}

/** The same where a row itself says why. */
export function causesIn(
  situation: Situation,
  doubts: readonly Stretch[],
  causesOfRow: (row: Row) => readonly string[],
): string {
  const metres = new Map<string, Interval[]>();
  for (const { row, fromMm, toMm } of loggedIn(situation, doubts))
    for (const cause of causesOfRow(row)) {
      const there = metres.get(cause) ?? [];
      there.push(intervalOf(fromMm, toMm));
      metres.set(cause, there);
    }
  return [...metres].map(([cause, ranges]) => `${cause} at ${rangesWords(ranges)}`).join('; ');
}

type RowPart = { readonly row: Row; readonly fromMm: number; readonly toMm: number };

/** The rows that reach into some stretches, as far as they do; rows and stretches stand in order of depth. */
function loggedIn({ rows }: Situation, doubts: readonly Stretch[]): readonly RowPart[] {
  const parts: RowPart[] = [];
  let first = 0;
  for (const { unlogged, fromMm: topMm, toMm: footMm } of doubts) {
    if (unlogged) continue;
    while (first < rows.length && rows[first]!.toMm <= topMm) first++;
    for (let index = first; index < rows.length && rows[index]!.fromMm < footMm; index++) {
      const row = rows[index]!;
      parts.push({ row, fromMm: Math.max(row.fromMm, topMm), toMm: Math.min(row.toMm, footMm) });
    }
  }
  return parts;
}

/** Why a row leaves a condition open. `neverSeen`: true of a field that no row of the hole says anything of. */
function causesOf(
  situation: Situation,
  condition: Condition,
  row: Row,
  neverSeen: (field: string) => boolean,
): readonly string[] {
  if (row.noReturn) return ['no return'];
  if (isAsked(row)) return ['a question is open'];
  const names = namesOf(situation.schema);
  const causes = unknownIn(situation, condition, row).map(({ field, of }) => {
    if (isAsked(row, field)) return `a question about ${names(field)} is open`;
    const what = of === undefined ? names(field) : names(field, of);
    const seen = isReading(situation, field) ? 'read' : 'observed';
    return neverSeen(field) ? `${what} never ${seen} in this hole, needed` : `${what} not ${seen}`;
  });
  return [...new Set(causes)];
}

/** The parts of a condition that a row leaves open. */
function unknownIn(situation: Situation, condition: Condition, row: Row) {
  const read = readerOfRow(situation, row);
  return fieldConditions(condition).filter((each) => evaluate(each, read) === 'cannot tell');
}

function readerOfRow({ schema }: Situation, row: Row): (name: string, of?: string) => Reading {
  return (name, of) => {
    const field = fieldNamed(schema, name);
    return field === undefined ? { says: 'unknown' } : readField(schema, row, field, of);
  };
}

/** True of a column of an instrument's readings, which are taken of metres that were logged. */
function isReading({ schema }: Situation, name: string): boolean {
  const field = fieldNamed(schema, name);
  return field?.kind === 'number' && field.column;
}

/** True where some row of the hole says something of a field: it is not one that no one looks at here. */
function wasEverSeen(situation: Situation, name: string): boolean {
  return situation.rows.some((row) => {
    const { says } = readerOfRow(situation, row)(name);
    return (says !== 'unknown' && says !== 'does not apply') || isAsked(row, name);
  });
}

/** What has to be read before it can be told, where a condition asks readings: those of metres not logged yet among them. */
export function readingsNeeded(
  situation: Situation,
  condition: Condition,
  doubts: readonly Stretch[],
): readonly string[] {
  const columns = [...new Set(fieldConditions(condition).map(({ field }) => field))].filter((field) =>
    isReading(situation, field),
  );
  const unlogged = doubts.filter((each) => each.unlogged).map(asInterval);
  return columns.flatMap((field) => {
    const unread = loggedIn(situation, doubts)
      .filter(({ row }) => !row.noReturn && !isAsked(row, field))
      .filter(({ row }) => readerOfRow(situation, row)(field).says === 'unknown')
      .map(({ fromMm, toMm }) => intervalOf(fromMm, toMm));
    const missing = [...unread, ...unlogged];
    return missing.length === 0 ? [] : [`take readings at ${rangesWords(missing)}`];
  });
}
