import { headerOf, holeNouns } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import { instantMs, localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { headsOf } from './heads.ts';

/** The stretch that a hole was drilled in last; undefined where no drilling of it began. */
const lastInterval = (hole: Document) => holeNouns(hole, 'drilling').at(-1);

/** Holes that a rig drilled last, and those that no rig has begun. */
export function holesOfRig(documents: readonly Document[], rig: string): readonly Document[] {
  return documents.filter((each) => each.kind === 'hole' && (lastInterval(each)?.rig ?? rig) === rig);
}

/** The hole that a rig is on: of those not ended the one that it began, or did a rod of, last. Another rig's only where it has none. */
export function holeInDrilling(documents: Iterable<Document>, rig: string): Document | undefined {
  const drilling = [...documents].filter(
    (each) => each.kind === 'hole' && headerOf(each).state === 'drilling',
  );
  const own = drilling.filter((each) => lastInterval(each)?.rig === rig);
  const latest = (hole: Document): number =>
    Math.max(
      ...[lastInterval(hole)?.startedAt, holeNouns(hole, 'rods').at(-1)?.at].flatMap((at) =>
        at === undefined ? [] : [instantMs(at)],
      ),
      0,
    );
  return (own.length > 0 ? own : drilling).toSorted((a, b) => latest(b) - latest(a))[0];
}

/** What became of each hole that was left since an instant: how it ended, at what depth, why, and what it was drilled again for. */
export function endedLines(holes: readonly Document[], since: Stamp): readonly string[] {
  return holes.flatMap((hole) => {
    const { name, state, stateReason, parent } = headerOf(hole);
    const endedAt = lastInterval(hole)?.endedAt;
    if ((state !== 'complete' && state !== 'abandoned') || endedAt === undefined) return [];
    if (instantMs(endedAt) < instantMs(since)) return [];
    const again = parent === undefined ? '' : `; ${parent.reason} of ${parent.hole}: ${parent.because}`;
    const why = stateReason === undefined ? '' : `: ${stateReason}`;
    return [
      `${name} ${state} at ${formatDepth(headsOf(hole).drilledMm)} m, ${localDate(endedAt)} ${localTime(endedAt)}${why}${again}`,
    ];
  });
}
