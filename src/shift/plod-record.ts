import type { Interval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { without } from './claims.ts';
import { linesOf, type PlodLine, shiftThings } from './shift.ts';
import { type ShiftRecord, sumBy, workOf } from './shift-record.ts';
import { activityNamed, type ShiftRules } from './shift-rules.ts';

/**
 * What all plods of a shift claim. Time on an activity that is not in the list has no charge class and is left out of the sums
 * (see unknownActivities, which names it).
 */
export function plodRecord(shift: Document, rules: ShiftRules): ShiftRecord {
  const lines = shiftThings(shift, 'plodLines').map(([, line]) => line);
  const chargeOf = (line: PlodLine) => activityNamed(rules, line.activity)?.charge;
  const wet = lines.flatMap(({ hole, wetFromMm, wetToMm }) =>
    hole === undefined || wetFromMm === undefined || wetToMm === undefined
      ? []
      : [{ hole, fromMm: wetFromMm, toMm: wetToMm }],
  );
  return {
    work: lines.flatMap((line) => {
      const charge = chargeOf(line);
      return charge === undefined ? [] : [workOf(line, charge)];
    }),
    metres: lines.flatMap((line) => {
      const { hole, fromMm, toMm } = line;
      if (hole === undefined || fromMm === undefined || toMm === undefined || toMm <= fromMm) return [];
      return [{ hole, fromMm, toMm, charge: chargeOf(line) }];
    }),
    ...(wet.length === 0 ? {} : { wet: apart(wet) }),
    shots: sumBy(
      lines.flatMap(({ hole, shots }) =>
        hole === undefined || shots === undefined ? [] : [{ hole, shots }],
      ),
      (each) => each.hole,
      (each) => each.shots,
    ),
    consumables: sumBy(
      lines.flatMap((line) => line.used ?? []),
      (each) => each.item,
      (each) => each.count,
    ),
  };
}

/** The same stretches with none of a hole over another: what two lines call wet is wet once. */
function apart<T extends Interval & { readonly hole: string }>(stretches: readonly T[]): readonly T[] {
  return stretches.flatMap((each, index) =>
    without(
      each,
      stretches.slice(0, index).filter(({ hole }) => hole === each.hole),
    ).map((left) => ({ ...each, ...left })),
  );
}

/** Lines whose activity is not in the list, with the sheet that each is on. */
export function unknownActivities(
  shift: Document,
  rules: ShiftRules,
): readonly { readonly sheet: string; readonly line: PlodLine; readonly number: number }[] {
  const sheets = new Map(shiftThings(shift, 'plods').map(([id, plod]) => [id, plod.sheet]));
  return [...sheets].flatMap(([id, sheet]) =>
    linesOf(shift, id)
      .map((line, index) => ({ sheet, line, number: index + 1 }))
      .filter(({ line }) => activityNamed(rules, line.activity) === undefined),
  );
}
