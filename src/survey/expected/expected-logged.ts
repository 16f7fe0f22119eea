import { evaluate } from '../../condition/evaluate.ts';
import { type Depth, depthFromMm } from '../../quantity/depth.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import { readerOf } from '../../schema/read-cell.ts';
import type { Row } from '../../value/row.ts';
import { type DepthRange, type ExpectedHere, offExpectedMm } from './expected.ts';

/**
 * How an expected contact or zone is beside the log: `not told` where the plan doesn't say what in the log tells it, `ahead` while the
 * log has not passed where it could come, `not seen` once it has, `seen` where the log has it.
 */
type LoggedState = 'no log marker' | 'ahead' | 'not seen' | 'seen';

/** An expected contact or zone beside the log. */
export interface ExpectedLogged extends ExpectedHere {
  readonly state: LoggedState;
  /** Top of the first metres that have it. */
  readonly loggedTopMm: Depth | undefined;
  /** Foot of the last metres that have it; undefined while the log may still be in it. */
  readonly loggedFootMm: Depth | undefined;
  /** Millimetres that the logged top is below (+) or above (−) where it was expected; 0 inside the range. */
  readonly topOffMm: number | undefined;
  readonly footOffMm: number | undefined;
}

/**
 * Each expected contact and zone beside the rows, from the top down. A row with an open question or no return tells nothing. Where the
 * hole's own path gives no depth, the planned depth stands for the range.
 */
export function expectedLogged(
  zones: readonly ExpectedHere[],
  rows: readonly Row[],
  schema: LoggingSchema,
): readonly ExpectedLogged[] {
  const told = rows.filter((row) => row.noReturn === undefined && (row.asked ?? []).length === 0);
  const loggedMm = rows.at(-1)?.toMm ?? 0;
  return zones.map((zone) => {
    const { seen } = zone.expected;
    const none = {
      loggedTopMm: undefined,
      loggedFootMm: undefined,
      topOffMm: undefined,
      footOffMm: undefined,
    };
    if (seen === undefined) return { ...zone, ...none, state: 'no log marker' };
    const having = told.filter((row) => evaluate(seen, readerOf(schema, row.cells)) === 'yes');
    const top = having[0]?.fromMm;
    const foot = having.at(-1)?.toMm;
    const topRange = rangeOf(zone.top, zone.expected.fromMm);
    if (top === undefined || foot === undefined)
      return { ...zone, ...none, state: loggedMm > topRange.latestMm ? 'not seen' : 'ahead' };
    const through = zone.expected.toMm !== undefined && foot < loggedMm;
    return {
      ...zone,
      state: 'seen',
      loggedTopMm: top,
      loggedFootMm: through ? foot : undefined,
      topOffMm: offExpectedMm(topRange, top),
      footOffMm: through ? offExpectedMm(rangeOf(zone.foot, zone.expected.toMm ?? 0), foot) : undefined,
    };
  });
}

function rangeOf(range: DepthRange | undefined, plannedMm: number): DepthRange {
  return range ?? { earliestMm: depthFromMm(plannedMm), latestMm: depthFromMm(plannedMm) };
}
