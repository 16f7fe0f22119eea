import type { Plan } from '../../hole/header.ts';
import { type Depth, depthFromMm, formatDepth } from '../../quantity/depth.ts';
import { tangentOf } from '../direction.ts';
import { type PlannedLine, plannedPoint } from '../path/miss.ts';
import type { Path, PathPoint } from '../path/path.ts';
import { pathByMetre } from '../path/projection.ts';
import { dot, minus, type Vector } from '../path/vector.ts';

/** A contact or zone that the plan expects, by depth along the planned hole. */
export type Expected = NonNullable<Plan['expects']>[number];

/** A range of depths along the hole as it runs; undefined where the hole doesn't come there. */
export interface DepthRange {
  readonly earliestMm: Depth;
  readonly latestMm: Depth;
}

/** An expected contact or zone, where it should come in the hole as it really runs. */
export interface ExpectedHere {
  readonly expected: Expected;
  readonly top: DepthRange | undefined;
  /** No direction, or no plan to hold it against, is known: where it comes can't be told. */
  readonly blind?: true;
  /** Foot of a zone; undefined for a contact, and where the hole doesn't come through it. */
  readonly foot: DepthRange | undefined;
}

const LEVEL: Vector = { north: 0, east: 0, down: 1 };

/**
 * Where contacts and zones of the plan should come in the hole as it runs, down to `toMm`. The plan gives depths along the planned
 * hole and no attitude, so each surface is taken both ways through its planned point, level and square to the planned hole; below
 * the last station the hole is taken both straight on and on its trend; and the depths are the range of all these. Without a path
 * or a plan in the path's north no depths are known, and hazards count from their planned depths.
 */
export function expectedHere(
  expects: readonly Expected[],
  path: Path | undefined,
  plan: PlannedLine | undefined,
  toMm: Depth,
): readonly ExpectedHere[] {
  if (path === undefined || plan === undefined)
    return expects.map((expected) => ({ expected, top: undefined, foot: undefined, blind: true }));
  const ways = (['straight', 'trend'] as const).map((projection) => pathByMetre(path, toMm, projection));
  return expects.map((expected) => ({
    expected,
    top: rangeOf(expected.fromMm, ways, plan),
    foot: expected.toMm === undefined ? undefined : rangeOf(expected.toMm, ways, plan),
  }));
}

function rangeOf(
  plannedMm: Depth,
  ways: readonly (readonly PathPoint[])[],
  plan: PlannedLine,
): DepthRange | undefined {
  const through = plannedPoint(plan, plannedMm);
  const depths = ways.flatMap((points) =>
    [LEVEL, tangentOf(plan.direction)].flatMap((square) => crossing(points, through, square) ?? []),
  );
  if (depths.length === 0) return undefined;
  return { earliestMm: depthFromMm(Math.min(...depths)), latestMm: depthFromMm(Math.max(...depths)) };
}

/** The first depth at which points go through the plane that is square to `square` at `through`, between them in proportion. */
function crossing(points: readonly PathPoint[], through: Vector, square: Vector): number | undefined {
  let above: { readonly depthMm: number; readonly height: number } | undefined;
  for (const point of points) {
    const height = dot(minus(point.offset, through), square);
    if (height >= 0) {
      if (above === undefined) return point.depthMm;
      const part = above.height / (above.height - height);
      return Math.round(above.depthMm + part * (point.depthMm - above.depthMm));
    }
    above = { depthMm: point.depthMm, height };
  }
  return undefined;
}

/** How far a logged contact is from where it was expected: millimetres below (+) or above (−) the range, 0 inside it. */
export function offExpectedMm(range: DepthRange, loggedMm: number): number {
  if (loggedMm < range.earliestMm) return loggedMm - range.earliestMm;
  return loggedMm > range.latestMm ? loggedMm - range.latestMm : 0;
}

/** Said with every hazard warning, and where there is none. */
export const NO_CLEARANCE =
  'No warning is no clearance: a zone can come where it is not expected. Site procedures and the driller come first.';

/** A hazard zone that the drilling is near, in words. */
export interface HazardWarning {
  readonly name: string;
  readonly hazard: 'fibre' | 'void';
  readonly earliestMm: Depth;
  /** Where the bit is: above the zone, at a depth that it could come at, or below the last of them. */
  readonly where: 'ahead' | 'here' | 'passed';
  /** Millimetres, at most, from the bit down to the zone; where it is passed, from its last foot down to the bit. */
  readonly offMm: number;
  readonly text: string;
}

/**
 * Hazard zones (fibre, void) that the bit is at or within the site's stand-off of, counted from the earliest depth the zone could come
 * at. `bitMm` is how deep the bit is at least; `rodEndMm` is where it will be at the end of the rod in hand: a zone is announced before a rod is drilled that
 * brings the bit within the stand-off, not after it, for nobody is asked between two rods. A zone stays announced until it is past its latest foot by the stand-off; one without a foot for good. A
 * hazard that the projected hole doesn't reach at all is announced from its planned depth.
 */
export function hazardWarnings(
  zones: readonly ExpectedHere[],
  bitMm: Depth,
  standOffM: number,
  rodEndMm: Depth = bitMm,
): readonly HazardWarning[] {
  const standOffMm = standOffM * 1000;
  const deepestMm = depthFromMm(Math.max(bitMm, rodEndMm));
  return zones.flatMap(({ expected, top, foot }) => {
    if (expected.hazard === undefined) return [];
    const earliestMm = depthFromMm(Math.min(top?.earliestMm ?? expected.fromMm, expected.fromMm));
    const past = foot !== undefined && bitMm > Math.max(foot.latestMm, expected.toMm ?? 0) + standOffMm;
    if (deepestMm < earliestMm - standOffMm || past) return [];
    const latestMm =
      expected.toMm === undefined ? undefined : Math.max(expected.toMm, foot?.latestMm ?? expected.toMm);
    const stands = standing(bitMm, earliestMm, latestMm);
    const rod = deepestMm > bitMm && stands.where === 'ahead' ? ` ${rodWords(deepestMm, earliestMm)}` : '';
    const text = `${hazardWords(expected, earliestMm, latestMm, stands)}${rod} ${NO_CLEARANCE}`;
    return [{ name: expected.name, hazard: expected.hazard, earliestMm, ...stands, text }];
  });
}

type Standing = Pick<HazardWarning, 'where' | 'offMm'>;

function standing(bitMm: number, earliestMm: number, latestMm: number | undefined): Standing {
  if (bitMm < earliestMm) return { where: 'ahead', offMm: earliestMm - bitMm };
  if (latestMm !== undefined && bitMm > latestMm) return { where: 'passed', offMm: bitMm - latestMm };
  return { where: 'here', offMm: 0 };
}

/** Where the rod in hand brings the bit: `The rod in hand ends at 60 m, 2 m above that.` */
function rodWords(rodEndMm: number, earliestMm: number): string {
  const offMm = earliestMm - rodEndMm;
  const where = offMm > 0 ? `${formatDepth(offMm)} m above that` : offMm < 0 ? 'below that' : 'just there';
  return `The rod in hand ends at ${formatDepth(rodEndMm)} m, ${where}.`;
}

function hazardWords(
  expected: Expected,
  earliestMm: number,
  latestMm: number | undefined,
  { where, offMm }: Standing,
): string {
  const what =
    expected.hazard === 'fibre'
      ? `FIBRE (${expected.name}): it may be in the dust`
      : `VOID (${expected.name}): the bit may drop`;
  if (where === 'ahead')
    return `${what} from ${formatDepth(earliestMm)} m, the earliest it could come: ${formatDepth(offMm)} m below the bit or less.`;
  if (where === 'passed' && latestMm !== undefined)
    return `${what} from ${formatDepth(earliestMm)} m, expected to ${formatDepth(latestMm)} m: the bit is ${formatDepth(offMm)} m below that.`;
  return `${what} from ${formatDepth(earliestMm)} m on: the hole is there now.`;
}
