import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { formatBagNumber, parseBagNumber } from '../sampling/numbers/bag-number.ts';
import { type BagRunLine, bagRunLines } from '../sampling/numbers/bag-run.ts';
import { streamFoot } from '../sampling/stream/stream.ts';
import { headsOf } from './heads.ts';
import { streamStateOf } from './stream.ts';

/** Tomorrow's bags of a hole: from behind the last one issued down to a depth. */
export interface BagRunOf {
  readonly hole: string;
  readonly drilledMm: number;
  /** Down to here, millimetres; undefined where no one said and the hole has no plan below the rig: all numbered bags then. */
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

/** A stamp for a run that is only thought of: no view of the numbers reads it. */
const NO_TIME = '1970-01-01T00:00:00+00:00' as Stamp;

/** Numbers to label for a hole, and the depth that they last to, millimetres. */
export interface ProposedRun {
  readonly first: string;
  readonly last: string;
  readonly toMm: number;
}

/**
 * The numbers to label next so that the bags of a hole last to its planned depth: behind every number of its rig's block that is labelled for
 * any hole. Undefined where they last already, the hole has no plan below the rig, its rig has no block, or the block is used up.
 */
export function proposedRun(
  project: Project,
  documents: Iterable<Document>,
  hole: Document,
): ProposedRun | undefined {
  const { numbers, blocks } = project.sampling;
  const { toMm, shortMm } = bagRunOf(project, hole);
  const rig = rigOfBags(project, hole);
  const block = blocks.find((each) => each.rig === rig);
  if (toMm === undefined || shortMm === 0 || block === undefined) return undefined;
  const first = nextToLabel(project, documents, hole);
  if (first === undefined) return undefined;
  const whole = { first, last: formatBagNumber(numbers, block.last) };
  const state = streamStateOf(hole);
  const labelled = { ...state, bagRuns: [...state.bagRuns, { ...whole, rig, at: NO_TIME }] };
  const last = bagRunLines(project.sampling, { name: hole.id, state: labelled }, toMm).at(-1);
  return last === undefined ? undefined : { first: whole.first, last: last.number, toMm };
}

/** The number of its rig's block behind every one that is labelled for any hole; undefined where the rig has no block or it is used up. */
export function nextToLabel(
  project: Project,
  documents: Iterable<Document>,
  hole: Document,
): string | undefined {
  const { numbers, blocks } = project.sampling;
  const block = blocks.find((each) => each.rig === rigOfBags(project, hole));
  if (block === undefined) return undefined;
  const serials = [...documents]
    .filter((document) => document.kind === 'hole')
    .flatMap((document) => holeNouns(document, 'bagRuns'))
    .map((run) => parseBagNumber(numbers, run.last))
    .filter((last) => last?.prefix === block.first.prefix)
    .flatMap((last) => (last === undefined || last.serial > block.last.serial ? [] : [last.serial + 1]));
  const first = { ...block.first, serial: Math.max(block.first.serial, ...serials) };
  return first.serial > block.last.serial ? undefined : formatBagNumber(numbers, first);
}

/** The rig whose block the bags of a hole are numbered from: the one that drills it, else the first of the project. */
export function rigOfBags({ settings }: Project, hole: Document): string {
  return holeNouns(hole, 'drilling').at(-1)?.rig ?? settings.rigs[0]?.name ?? '';
}
