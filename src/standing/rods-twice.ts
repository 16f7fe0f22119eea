import type { RodDone } from '../hole/drilled.ts';
import { holeNouns, holeThings } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import { instantMs, localDate, localTime } from '../quantity/stamp.ts';
import type { Document, Id } from '../record/document.ts';
import { broughtByMerges } from './logged-twice.ts';

/** Two records of one rod, as when both copies of a merge recorded it. Theirs is the one that a merge brought. */
export interface RodTwice {
  /** Names the pair for as long as both are there. */
  readonly id: Id;
  readonly ours: readonly [Id, RodDone];
  readonly theirs: readonly [Id, RodDone];
}

/** The rods of a hole from the top down, those to one depth in the order of their times. */
export function rodsDown(hole: Document): readonly (readonly [Id, RodDone])[] {
  return [...holeThings(hole, 'rods')].sort(
    ([, a], [, b]) => a.depthMm - b.depthMm || instantMs(a.at) - instantMs(b.at),
  );
}

/** Records next to each other that have one count or one depth, from the top down: a rod is done once. */
export function rodsRecordedTwice(hole: Document): readonly RodTwice[] {
  const down = rodsDown(hole);
  const pairs = down.slice(1).flatMap((lower, index) => {
    const upper = down[index] as (typeof down)[number];
    return isSameRod(upper[1], lower[1]) ? [[upper, lower] as const] : [];
  });
  if (pairs.length === 0) return [];
  const brought = broughtByMerges(hole, 'rods');
  return pairs.map(([upper, lower]) => {
    const turned = brought.has(upper[0]) && !brought.has(lower[0]);
    const [ours, theirs] = turned ? [lower, upper] : [upper, lower];
    return { id: `rod twice ${ours[0]} ${theirs[0]}`, ours, theirs };
  });
}

function isSameRod(a: RodDone, b: RodDone): boolean {
  return a.depthMm === b.depthMm || a.rod === b.rod;
}

/** A record of a rod in words: its count, depth and time. */
export function rodWords({ rod, depthMm, at }: RodDone): string {
  return `rod ${rod} to ${formatDepth(depthMm)} m at ${localDate(at)} ${localTime(at, true)}`;
}

/** A record of a rod in words, with the bags that it issued. */
export function rodWithBags(hole: Document, [id, rod]: readonly [Id, RodDone]): string {
  const numbers = holeNouns(hole, 'bags')
    .filter((bag) => bag.rod === id && bag.byHand !== true)
    .map((bag) => bag.number);
  if (numbers.length === 0) return `${rodWords(rod)}, no bags`;
  if (numbers.length === 1) return `${rodWords(rod)}, bag ${numbers[0]}`;
  return `${rodWords(rod)}, ${numbers.length} bags ${numbers[0]} to ${numbers.at(-1)}`;
}
