import { type Condition, fieldConditions } from '../condition/condition.ts';
import { evaluate, type Reader } from '../condition/evaluate.ts';
import type { StreamFact } from '../hole/drilled.ts';
import type { Tri } from '../quantity/tri.ts';
import type { Field } from '../schema/logging-schema.ts';
import { readCell } from '../schema/read-cell.ts';
import type { Row } from '../value/row.ts';
import type { Situation } from './situation.ts';

/** Part of the hole over which something holds, doesn't, or can't be told. */
export type Stretch = { readonly fromMm: number; readonly toMm: number; readonly state: Tri };

/** Says whether something holds of a row. */
export type RowTest = (row: Row) => Tri;

/** A condition as a test of rows: a no-return metre and one whose row is asked about can't be told. */
export function rowTest(situation: Situation, condition: Condition): RowTest {
  const fields = new Map<string, Field>();
  for (const { field: name } of fieldConditions(condition)) {
    const field = situation.schema.fields.find((each) => each.name === name);
    if (field !== undefined) fields.set(name, field);
  }
  let cells: Row['cells'] = {};
  const read: Reader = (name, of) => {
    const field = fields.get(name);
    const cell = cells[name];
    return field === undefined || cell === undefined
      ? { says: 'unknown' }
      : readCell(situation.schema, field, cell, of);
  };
  return (row) => {
    if (row.noReturn || isAsked(row)) return 'cannot tell';
    cells = row.cells;
    return evaluate(condition, read);
  };
}

/** True of a row with a question that nobody has settled. */
export function isAsked(row: Row): boolean {
  return row.asked !== undefined && row.asked.length > 0;
}

/** The log from its start to the logged head, end to end, by a test of its rows. A metre without a row can't be told. */
export function logStretches(situation: Situation, test: RowTest): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let atMm: number = situation.header.logFromMm;
  for (const row of situation.rows) {
    const fromMm = Math.max(row.fromMm, atMm);
    const toMm = Math.min(row.toMm, situation.loggedMm);
    if (toMm <= fromMm) continue;
    push(stretches, atMm, fromMm, 'cannot tell');
    push(stretches, fromMm, toMm, test(row));
    atMm = toMm;
  }
  push(stretches, atMm, situation.loggedMm, 'cannot tell');
  return stretches;
}

/**
 * The sample stream from the start of the log to the drilled head, end to end. `test` says undefined of a fact that doesn't speak
 * of the matter; where several speak the latest stands, where none does it can't be told.
 */
export function streamStretches(
  situation: Situation,
  test: (fact: StreamFact) => boolean | undefined,
): readonly Stretch[] {
  const top = situation.header.logFromMm;
  const foot = situation.drilledMm;
  const facts = situation.stream
    .map((fact, made) => ({ made, fromMm: fact.fromMm, toMm: fact.toMm, says: test(fact) }))
    .filter((fact) => fact.says !== undefined && fact.fromMm < foot && fact.toMm > top);
  const edges = [top, foot, ...facts.flatMap((fact) => [fact.fromMm, fact.toMm])]
    .filter((edge) => edge >= top && edge <= foot)
    .sort((a, b) => a - b);
  const down = [...facts].sort((a, b) => a.fromMm - b.fromMm);
  const stretches: Stretch[] = [];
  let open: typeof facts = [];
  let next = 0;
  for (let index = 0; index + 1 < edges.length; index++) {
    const [fromMm, toMm] = [edges[index]!, edges[index + 1]!];
    while (next < down.length && down[next]!.fromMm <= fromMm) open.push(down[next++]!);
    open = open.filter((fact) => fact.toMm > fromMm);
    const latest = open.reduce<(typeof facts)[number] | undefined>(
      (a, b) => (a === undefined || b.made > a.made ? b : a),
      undefined,
    );
    push(stretches, fromMm, toMm, latest === undefined ? 'cannot tell' : latest.says ? 'yes' : 'no');
  }
  return stretches;
}

/** Adds a stretch, joined to the one above where both are alike. One without length is left out. */
function push(stretches: Stretch[], fromMm: number, toMm: number, state: Tri): void {
  if (toMm <= fromMm) return;
  const above = stretches.at(-1);
  if (above?.state === state) stretches[stretches.length - 1] = { fromMm: above.fromMm, toMm, state };
  else stretches.push({ fromMm, toMm, state });
}
