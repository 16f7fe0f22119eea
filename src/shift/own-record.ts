import { headerOf, holeNouns } from '../hole/hole.ts';
import { depthFromMm } from '../quantity/depth.ts';
import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { drilledIn, type Span, spansOf } from './current.ts';
import { shiftHeaderOf } from './shift.ts';
import { type DrilledMetres, type ShiftRecord, sumBy, workOf } from './shift-record.ts';

/**
 * Our own record of a shift: its activities, and from the holes the rods and shots that its rig made in it. A rod is counted in the
 * shift in which it was stamped, whole. `now` ends a shift that goes on.
 */
export function ownRecord(shift: Document, holes: readonly Document[], now: Stamp): ShiftRecord {
  const spans = spansOf(shift, now);
  const { rig, startsAt, endedAt } = shiftHeaderOf(shift);
  const during = (at: Stamp): boolean =>
    instantMs(at) >= instantMs(startsAt) &&
    (endedAt === undefined ? instantMs(at) <= instantMs(now) : instantMs(at) < instantMs(endedAt));
  const here = (hole: Document, at: Stamp): boolean => during(at) && rigAt(hole, at) === rig;
  const shots = holes.flatMap((hole) =>
    holeNouns(hole, 'shots')
      .filter((shot) => here(hole, shot.at))
      .map(() => hole.id),
  );
  return {
    work: spans.map((span) => workOf(span, span.charge)),
    metres: holes.flatMap((hole) => rodsOf(hole, (at) => here(hole, at), spans)),
    shots: sumBy(
      shots,
      (hole) => hole,
      () => 1,
    ),
    consumables: sumBy(
      spans.flatMap((span) => span.used ?? []),
      (each) => each.item,
      (each) => each.count,
    ),
  };
}

/** The rig that was on a hole at an instant: that of the drilling interval started last; undefined before the first. */
export function rigAt(hole: Document, at: Stamp): string | undefined {
  return holeNouns(hole, 'drilling')
    .filter((each) => instantMs(each.startedAt) <= instantMs(at))
    .toSorted((a, b) => instantMs(a.startedAt) - instantMs(b.startedAt))
    .at(-1)?.rig;
}

/**
 * The hole that a rig was on at an instant, by its id: of those whose drilling had begun and had not been ended, suspended or abandoned,
 * the one with the latest rod, shot or start of drilling before. Undefined between two holes.
 */
export function holeOn(holes: readonly Document[], rig: string, at: Stamp): string | undefined {
  const before = (stamps: readonly Stamp[]): number =>
    Math.max(...stamps.map(instantMs).filter((ms) => ms <= instantMs(at)));
  const open = holes.filter((hole) =>
    holeNouns(hole, 'drilling').some(
      ({ rig: by, startedAt, endedAt }) =>
        by === rig &&
        instantMs(startedAt) <= instantMs(at) &&
        (endedAt === undefined || instantMs(endedAt) > instantMs(at)),
    ),
  );
  const seen = open.map((hole) => ({
    id: hole.id,
    ms: before(
      [...holeNouns(hole, 'drilling').map(({ startedAt }) => startedAt)].concat(
        [...holeNouns(hole, 'rods'), ...holeNouns(hole, 'shots')].map((each) => each.at),
      ),
    ),
  }));
  return seen.toSorted((a, b) => a.ms - b.ms).at(-1)?.id;
}

/** Metres that the rods of a hole stand for: each from the foot of the rod above it, the first from the top of its drilling. */
function rodsOf(
  hole: Document,
  wanted: (at: Stamp) => boolean,
  spans: readonly Span[],
): readonly DrilledMetres[] {
  const rods = holeNouns(hole, 'rods').toSorted((a, b) => a.depthMm - b.depthMm);
  const tops = holeNouns(hole, 'drilling').map((each) => each.fromMm as number);
  const start = Math.min(headerOf(hole).logFromMm, ...tops);
  return rods.flatMap((rod, index): readonly DrilledMetres[] => {
    const above = rods[index - 1]?.depthMm ?? start;
    if (!wanted(rod.at) || rod.depthMm <= above) return [];
    const top = Math.max(above, ...tops.filter((each) => each < rod.depthMm));
    const charge = drilledIn(spans, rod.at)?.charge;
    return [{ hole: hole.id, fromMm: depthFromMm(top), toMm: rod.depthMm, charge, at: rod.at }];
  });
}
