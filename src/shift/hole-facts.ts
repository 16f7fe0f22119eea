import { headerOf, holeNouns } from '../hole/hole.ts';
import { type Depth, depthFromMm } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { rigAt } from './own-record.ts';
import { shiftThings } from './shift.ts';

/** What a bill needs of a hole that a plod doesn't say. */
export interface HoleFacts {
  /** Stretches where the sample came up wet, from the top down, none over another. */
  readonly wet: readonly Interval[];
  /** Gauge of the bit that the rig drilled it with in this shift, in millimetres: the one measured last, else that of the drilling interval. */
  readonly bitMm?: number;
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
  shift?: Document,
): ReadonlyMap<string, HoleFacts> {
  return new Map(
    holes.map((hole) => {
      const finished = finishedBetween(hole, rig, from, to);
      const bitMm = bitOf(hole, to, shift);
      return [
        hole.id,
        {
          wet: wetOf(hole),
          ...(bitMm === undefined ? {} : { bitMm }),
          ...(finished === undefined ? {} : { finished }),
        },
      ];
    }),
  );
}

/** The gauge measured last before the end of the shift, else that of the drilling interval begun last. */
function bitOf(hole: Document, to: Stamp, shift: Document | undefined): number | undefined {
  const before = ({ at }: { readonly at: Stamp }): boolean => instantMs(at) < instantMs(to);
  const measured = (shift === undefined ? [] : shiftThings(shift, 'bits'))
    .map(([, bit]) => bit)
    .filter((bit) => before(bit) && (bit.hole ?? hole.id) === hole.id)
    .toSorted((a, b) => instantMs(a.at) - instantMs(b.at))
    .at(-1);
  if (measured !== undefined) return measured.gaugeTenthsMm / 10;
  return holeNouns(hole, 'drilling').findLast((each) => before({ at: each.startedAt }))?.bitMm;
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
