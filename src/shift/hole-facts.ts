import { headerOf, holeNouns } from '../hole/hole.ts';
import { type Depth, depthFromMm } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { minuteOf } from './current.ts';
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
  const onRig = bitsOnRig(holes, rig, shifts);
  return new Map(
    holes.map((hole) => {
      const finished = finishedBetween(hole, rig, from, to);
      const bits = bitsOf(hole, rig, onRig);
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

/** A bit on a rig, from an instant on; where it was measured at a depth of a hole, that too. */
interface BitOnRig {
  readonly at: Stamp;
  readonly bitMm: number;
  readonly measured?: { readonly hole: string; readonly depthMm: Depth };
}

/**
 * The bits recorded on a rig, in order of time: put on in a shift, measured in a hole, or changed in project.json between two holes,
 * which shows in what their drilling began with. The first such one is left out: it may be older than a bit recorded before it.
 */
function bitsOnRig(
  holes: readonly Document[],
  rig: string,
  shifts: readonly Document[],
): readonly BitOnRig[] {
  const putOn = shifts
    .filter((shift) => shiftHeaderOf(shift).rig === rig)
    .flatMap((shift) => shiftThings(shift, 'bits'))
    .map(([, { at, gaugeTenthsMm }]) => ({ at, bitMm: gaugeTenthsMm / 10 }));
  const measured = holes.flatMap((hole) =>
    holeNouns(hole, 'bits')
      .filter(({ at }) => rigAt(hole, at) === rig)
      .map(({ at, bitMm, depthMm }) => ({ at, bitMm, measured: { hole: hole.id, depthMm } })),
  );
  const begun = holes
    .flatMap((hole) => holeNouns(hole, 'drilling').filter((each) => each.rig === rig))
    .toSorted((a, b) => instantMs(a.startedAt) - instantMs(b.startedAt));
  const changed = begun.flatMap(({ startedAt, bitMm }, index) =>
    index === 0 || bitMm === undefined || bitMm === begun[index - 1]?.bitMm ? [] : [{ at: startedAt, bitMm }],
  );
  return [...putOn, ...measured, ...changed].toSorted((a, b) => instantMs(a.at) - instantMs(b.at));
}

/**
 * The bits of a hole: the one that was on the rig when its drilling began, then each recorded on the rig since, in whichever hole it
 * was on, from the depth drilled by then.
 */
function bitsOf(hole: Document, rig: string, onRig: readonly BitOnRig[]): readonly BitFrom[] {
  const drilling = holeNouns(hole, 'drilling');
  const begun = drilling.flatMap(({ startedAt: at, fromMm, bitMm: usual, rig: by }) => {
    const on = onRig.findLast((each) => instantMs(each.at) <= instantMs(at))?.bitMm;
    const bitMm = by === rig ? (on ?? usual) : usual;
    return bitMm === undefined ? [] : [{ at, fromMm, bitMm }];
  });
  const since = onRig
    .filter(({ at }) => drilling.some(({ startedAt }) => instantMs(startedAt) < instantMs(at)))
    .map(({ at, bitMm, measured }) => ({
      at,
      fromMm: measured?.hole === hole.id ? measured.depthMm : depthAt(hole, at),
      bitMm,
    }));
  return [...begun, ...since]
    .toSorted((a, b) => a.fromMm - b.fromMm || instantMs(a.at) - instantMs(b.at))
    .map(({ fromMm, bitMm }) => ({ fromMm, bitMm }));
}

/**
 * How deep a hole was drilled by an instant: the deepest rod done by then, else its top. Whole minutes are compared: a time that is
 * typed has no seconds, and the rod stamped in that minute was drilled before it.
 */
function depthAt(hole: Document, at: Stamp): Depth {
  return holeNouns(hole, 'rods')
    .filter((rod) => minuteOf(rod.at) <= minuteOf(at))
    .map((rod) => rod.depthMm)
    .reduce(deeper, headerOf(hole).logFromMm);
}

/** Stretches of a hole whose samples came up wet, from the top down, touching ones as one. */
export function wetOf(hole: Document): readonly Interval[] {
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
