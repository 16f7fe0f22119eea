import { headerOf, holeNouns } from '../hole/hole.ts';
import { type Depth, depthFromMm } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { rigAt } from './own-record.ts';
import { shiftHeaderOf, shiftThings } from './shift.ts';

/** A bit with its gauge as measured, in millimetres, and the depth from which it drilled. */
export interface BitFrom {
  readonly fromMm: Depth;
  readonly bitMm: number;
}

/** What a bill needs of a hole that a plod doesn't say. */
export interface HoleFacts {
  /** Stretches where the sample came up wet, from the top down, none over another. */
  readonly wet: readonly Interval[];
  /** Bits by the depth from which each drilled, from the top down; none where no gauge is recorded. */
  readonly bits?: readonly BitFrom[];
  /** The whole hole, where the rig finished it in this shift: a minimum for a hole falls due then. */
  readonly finished?: Interval;
}

/**
 * Facts for the bill of a rig's shift from one instant to another, by hole id. A hole is finished in the shift in which it was decided
 * to end it; one reopened since is not finished, and neither is one that stands with no metre drilled.
 */
export function holeFacts(
  holes: readonly Document[],
  rig: string,
  from: Stamp,
  to: Stamp,
  shifts: readonly Document[] = [],
): ReadonlyMap<string, HoleFacts> {
  return new Map(
    holes.map((hole) => {
      const finished = finishedBetween(hole, rig, from, to);
      const bits = bitsOf(hole, rig, shifts);
      return [
        hole.id,
        {
          wet: wetOf(hole),
          ...(bits.length === 0 ? {} : { bits }),
          ...(finished === undefined ? {} : { finished }),
        },
      ];
    }),
  );
}

/**
 * The bits of a hole: those that its drilling began with, those measured at a depth, and those put on in a shift of the rig, which
 * drill from the last rod done by then. One put on with no hole named drills in every hole that the rig has been on.
 */
function bitsOf(hole: Document, rig: string, shifts: readonly Document[]): readonly BitFrom[] {
  const begun = holeNouns(hole, 'drilling').flatMap(({ startedAt, fromMm, bitMm }) =>
    bitMm === undefined ? [] : [{ at: startedAt, fromMm, bitMm }],
  );
  const measured = holeNouns(hole, 'bits').map(({ at, depthMm, bitMm }) => ({ at, fromMm: depthMm, bitMm }));
  const putOn = shifts
    .filter((shift) => shiftHeaderOf(shift).rig === rig)
    .flatMap((shift) => shiftThings(shift, 'bits').map(([, bit]) => bit))
    .filter((bit) => (bit.hole ?? hole.id) === hole.id)
    .map(({ at, gaugeTenthsMm }) => ({ at, fromMm: depthAt(hole, at), bitMm: gaugeTenthsMm / 10 }));
  return [...begun, ...measured, ...putOn]
    .toSorted((a, b) => a.fromMm - b.fromMm || instantMs(a.at) - instantMs(b.at))
    .map(({ fromMm, bitMm }) => ({ fromMm, bitMm }));
}

/** How deep a hole was drilled by an instant: the deepest rod done by then, else its top. */
function depthAt(hole: Document, at: Stamp): Depth {
  return holeNouns(hole, 'rods')
    .filter((rod) => instantMs(rod.at) <= instantMs(at))
    .map((rod) => rod.depthMm)
    .reduce(deeper, headerOf(hole).logFromMm);
}

function wetOf(hole: Document): readonly Interval[] {
  const wet = holeNouns(hole, 'stream')
    .filter((fact) => fact.moisture === 'wet')
    .toSorted((a, b) => a.fromMm - b.fromMm);
  const apart: Interval[] = [];
  for (const { fromMm, toMm } of wet) {
    const last = apart.at(-1);
    if (last === undefined || fromMm > last.toMm) apart.push({ fromMm, toMm });
    else apart[apart.length - 1] = { fromMm: last.fromMm, toMm: deeper(last.toMm, toMm) };
  }
  return apart;
}

const deeper = (a: Depth, b: Depth): Depth => (a > b ? a : b);

function finishedBetween(hole: Document, rig: string, from: Stamp, to: Stamp): Interval | undefined {
  const last = holeNouns(hole, 'decisions').findLast(
    (each) => each.kind !== 'held' && each.kind !== 'extended',
  );
  if (last === undefined || last.kind === 'reopened' || rigAt(hole, last.at) !== rig) return undefined;
  if (instantMs(last.at) < instantMs(from) || instantMs(last.at) >= instantMs(to)) return undefined;
  const fromMm = headerOf(hole).logFromMm;
  const toMm = holeNouns(hole, 'rods')
    .map((rod) => rod.depthMm)
    .reduce(deeper, depthFromMm(0));
  return toMm > fromMm ? { fromMm, toMm } : undefined;
}
