import { isOver } from '../hole/header.ts';
import { headerOf, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { type BagRunLine, bagRunLines } from '../sampling/bag-run.ts';
import { streamFoot } from '../sampling/stream.ts';
import { headsOf } from './heads.ts';
import { streamStateOf } from './stream.ts';

/** Tomorrow's bags of a hole: from behind the last one issued down to a depth. */
export interface BagRunOf {
  readonly hole: string;
  readonly drilledMm: number;
  /** Down to here, millimetres; undefined where nobody said and the hole has no plan below the rig: all numbered bags then. */
  readonly toMm?: number;
  readonly lines: readonly BagRunLine[];
  /** Millimetres above `toMm` that no numbered bag is left for. */
  readonly shortMm: number;
}

/** The bag run of a hole down to a depth, else to its planned depth, else as far as the numbered bags last. A hole that is over has none. */
export function bagRunOf(project: Project, hole: Document, toMm?: number): BagRunOf {
  const { name, state } = headerOf(hole);
  const { drilledMm } = headsOf(hole);
  const stream = streamStateOf(hole);
  const planned = planOf(hole)?.depthMm;
  const foot = toMm ?? (planned !== undefined && planned > drilledMm ? planned : undefined);
  const over = isOver(state);
  const lines = over
    ? []
    : bagRunLines(project.sampling, { name, state: stream }, foot ?? Number.POSITIVE_INFINITY);
  const lastsToMm = lines.reduce(
    (mm, line) => Math.max(mm, line.toMm ?? 0),
    streamFoot(project.sampling, stream).mm,
  );
  return {
    hole: name,
    drilledMm,
    ...(foot === undefined ? {} : { toMm: foot }),
    lines,
    shortMm: over || foot === undefined ? 0 : Math.max(0, foot - lastsToMm),
  };
}
