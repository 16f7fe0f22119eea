import { drilledMm, latestRod } from '../hole/commands/drilled.ts';
import type { RodDone } from '../hole/drilled.ts';
import type { Header } from '../hole/header.ts';
import { headerOf, holeNouns, rowsDown } from '../hole/hole.ts';
import { type Depth, depthFromMm, formatDepth } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import type { Document, Table } from '../record/document.ts';

/** The two heads of a hole: where the rig is and where the log is. Depths in millimetres. */
export interface Heads {
  readonly logFromMm: Depth;
  /** Depth of the latest rod done; where logging starts while there is none. */
  readonly drilledMm: Depth;
  /** Foot of the unbroken cover of rows from where logging starts. */
  readonly loggedMm: Depth;
  /** Drilled metres not logged, those in gaps of the log among them; 0 where the log is at the rig or past it. */
  readonly behindMm: number;
  readonly lastRod: RodDone | undefined;
}

/** Where a hole's two heads are, from its rods and rows alone. */
export function headsOf(hole: Document): Heads {
  const logFromMm = headerOf(hole).logFromMm;
  const drilled = depthFromMm(drilledMm(hole));
  const foot = loggedDepth(hole);
  return {
    logFromMm,
    drilledMm: drilled,
    loggedMm: foot,
    behindMm: lowestRowMm(hole, foot) === foot ? Math.max(0, drilled - foot) : missingTo(hole, drilled),
    lastRod: latestRod(hole),
  };
}

/** Foot of the lowest row, whatever gaps lie above it. */
function lowestRowMm(hole: Document, footMm: Depth): Depth {
  return depthFromMm(Math.max(footMm, rowsDown(hole).at(-1)?.[1].toMm ?? 0));
}

/** How far the log goes, whatever gaps it has, and the metres missing above that. */
export function logged(hole: Document): LogHead['logged'] {
  return logHead(hole).logged;
}

function findLogged(hole: Document, footMm: Depth): LogHead['logged'] {
  const toMm = lowestRowMm(hole, footMm);
  return { toMm, missingMm: missingTo(hole, toMm) };
}

/** `36 m`, and where metres above that are not logged `36 m, 1 m missing`. */
export function loggedWords(hole: Document): string {
  const { toMm, missingMm } = logged(hole);
  return `${formatDepth(toMm)} m${missingMm === 0 ? '' : `, ${formatDepth(missingMm)} m missing`}`;
}

/**
 * How deep the bit is at least: the last rod done, the deepest row, or the foot of a cavity that the rods dropped into. With a rod in hand it
 * may be deeper still. What is said of a danger counts from here.
 */
export function bitAtLeastMm(hole: Document): Depth {
  const felt = holeNouns(hole, 'feltByDriller').filter((each) => each.felt === 'cavity');
  return depthFromMm(Math.max(drilledMm(hole), logged(hole).toMm, ...felt.map(({ toMm }) => toMm)));
}

function missingTo(hole: Document, downToMm: number): number {
  return gapsIn(hole, downToMm).reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0);
}

/** Foot of the unbroken cover of rows from where logging starts, in millimetres. */
export function loggedDepth(hole: Document): Depth {
  return logHead(hole).foot;
}

/** What the rows of a hole leave to log next. */
interface LogHead {
  readonly header: Header;
  readonly foot: Depth;
  readonly next: Interval;
  readonly logged: { readonly toMm: Depth; readonly missingMm: number };
}

/** Found once for a table of rows: the same rows are asked about many times for one key, and a long hole has thousands. */
const logHeads = new WeakMap<Table, LogHead>();

function logHead(hole: Document): LogHead {
  const header = headerOf(hole);
  const rows = hole.tables.rows ?? NO_ROWS;
  const known = logHeads.get(rows);
  if (known?.header === header) return known;
  const foot = footOf(hole);
  const found = { header, foot, next: intervalBelow(hole, foot), logged: findLogged(hole, foot) };
  logHeads.set(rows, found);
  return found;
}

const NO_ROWS: Table = {};

function footOf(hole: Document): Depth {
  let foot = headerOf(hole).logFromMm;
  for (const [, row] of rowsDown(hole)) {
    if (row.fromMm > foot) break;
    if (row.toMm > foot) foot = row.toMm;
  }
  return foot;
}

/** The interval to log next: from the logged head, the usual length, cut short by a row that is below a gap. */
export function nextInterval(hole: Document): Interval {
  return logHead(hole).next;
}

function intervalBelow(hole: Document, fromMm: Depth): Interval {
  const usual = fromMm + headerOf(hole).intervalMm;
  const below = rowsDown(hole).find(([, row]) => row.fromMm > fromMm)?.[1].fromMm;
  return { fromMm, toMm: depthFromMm(below === undefined ? usual : Math.min(usual, below)) };
}

/** Intervals between where logging starts and the deepest row that no row covers, from the top down. */
export function gapsIn(hole: Document, downToMm: number): readonly Interval[] {
  const gaps: Interval[] = [];
  let foot = headerOf(hole).logFromMm;
  for (const [, row] of rowsDown(hole)) {
    if (row.fromMm > foot && foot < downToMm)
      gaps.push({ fromMm: foot, toMm: depthFromMm(Math.min(row.fromMm, downToMm)) });
    if (row.toMm > foot) foot = row.toMm;
  }
  if (foot < downToMm) gaps.push({ fromMm: foot, toMm: depthFromMm(downToMm) });
  return gaps;
}
