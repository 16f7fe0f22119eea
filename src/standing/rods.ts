import { headerOf } from '../hole/hole.ts';
import type { Depth } from '../quantity/depth.ts';
import type { Document } from '../record/document.ts';
import { headsOf } from './heads.ts';

/** Depth drilled with so many rods in the hole, in millimetres: rods × length + the first-rod offset. */
export function depthOfRod(hole: Document, rod: number): number {
  const header = headerOf(hole);
  return rod * header.rodMm + header.firstRodOffsetMm;
}

/** The rod that drills a depth (counted from 1): the first whose foot is at or below it. `mm` is the foot of a metre. */
export function rodOfDepth(hole: Document, mm: number): number {
  const header = headerOf(hole);
  return Math.max(1, Math.ceil((mm - header.firstRodOffsetMm) / header.rodMm));
}

/** Where the rod that is drilled from a depth on ends, millimetres: the first count of rods below it. */
export function rodEndBelow(hole: Document, mm: number): Depth {
  const { rodMm, firstRodOffsetMm } = headerOf(hole);
  return depthOfRod(hole, Math.floor((mm - firstRodOffsetMm) / rodMm) + 1) as Depth;
}

/** The next rod to be done: its count, and the depth it ends at by the count. */
export function nextRod(hole: Document): { readonly rod: number; readonly depthMm: Depth } {
  const { drilledMm, lastRod } = headsOf(hole);
  const header = headerOf(hole);
  const rod = Math.max(
    (lastRod?.rod ?? 0) + 1,
    Math.floor((drilledMm - header.firstRodOffsetMm) / header.rodMm) + 1,
  );
  return { rod, depthMm: depthOfRod(hole, rod) as Depth };
}

/** True where a rod ends between two rows: below this depth the log is ruled off. */
export function rodEndsAt(hole: Document, mm: number): boolean {
  const header = headerOf(hole);
  const done = (mm - header.firstRodOffsetMm) / header.rodMm;
  return Number.isInteger(done) && done > 0;
}
