import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Shot, SurveyRun } from '../../hole/direction.ts';
import { type Azimuth, azimuth, degreesBetween, type North } from '../../quantity/azimuth.ts';
import { type Depth, depthFromMm } from '../../quantity/depth.ts';
import { dip } from '../../quantity/dip.ts';
import { instantMs } from '../../quantity/stamp.ts';
import type { Id } from '../../record/document.ts';
import { azimuthUnusable } from '../checks/magnetic-in-steel.ts';
import { northNotKnown } from '../checks/north-not-known.ts';
import type { Direction } from '../direction.ts';
import { type NorthAngles, toNorth } from '../norths/norths.ts';
import type { Station } from '../path/path.ts';
import type { ErrorClass, SurveySettings } from '../settings.ts';
import type { RunWithShots } from './run-with-shots.ts';

/** The reading that an azimuth, or a share of it, comes from. */
export interface AzimuthShare {
  readonly toolClass: ErrorClass;
  /** The run of the reading; undefined for the line-up. */
  readonly run: Id | undefined;
  readonly depthMm: number;
  /** 0 to 1; the shares of a station make 1. */
  readonly share: number;
}

/** A station of the path that knows where it is from. */
export interface RankedStation extends Station {
  readonly toolClass: ErrorClass;
  /** The run it was measured in; undefined for the line-up. */
  readonly run: Id | undefined;
  /** Where its azimuth was not measured: the readings it is taken from, whose errors it inherits. */
  readonly azimuthFrom?: readonly AzimuthShare[];
}

/** The stations of the path and what stood in the way of some of them. */
export interface RankedStations {
  readonly stations: readonly RankedStation[];
  readonly findings: readonly Finding[];
}

/** What the best stations are made from. */
export interface StationSources {
  readonly place: Place;
  /** The north that the path is counted from. */
  readonly north: North;
  /** The accepted line-up, in any north, and the angles at its date. */
  readonly lineUp: { readonly direction: Direction; readonly angles: NorthAngles } | undefined;
  readonly runs: readonly RunWithShots[];
  /** The angles between norths that hold for a run: its declination is that of its date. */
  readonly anglesOf: (run: SurveyRun) => NorthAngles;
  readonly settings: Pick<SurveySettings, 'longestGapM' | 'steelM'>;
}

/** A shot as it is in the choice: its azimuth in the path's north, or undefined when rejected, unusable or not to be had. */
interface Reading {
  readonly depthMm: Depth;
  readonly dipDeg: number;
  readonly azimuthDeg: number | undefined;
  readonly from: RunWithShots;
}

/** Two stations nearer to each other than this are of one place, millimetres. */
const SAME_PLACE_MM = 1000;

/** Runs from the best down: by rank, the later one first among equals. */
export function runsByRank(runs: readonly RunWithShots[]): readonly RunWithShots[] {
  return [...runs].sort((a, b) => b.run.rank - a.run.rank || instantMs(b.run.at) - instantMs(a.run.at));
}

/**
 * The stations of the path: at each depth the shots of the best run that covers it (a run covers from one of its shots to the next
 * where they are not further apart than the longest allowed gap), the line-up as station 0 (a shot at the collar is there only
 * when there is none). A shot that is rejected is left out; one
 * whose azimuth alone is rejected, unusable in steel or not convertible keeps its dip and takes its azimuth from a poorer run at the
 * same place, else from the stations about it.
 */
export function bestStations(sources: StationSources): RankedStations {
  const findings: Finding[] = [];
  const byRank = runsByRank(sources.runs).map((run) => readingsOf(run, sources, findings));
  const chosen: Reading[] = [];
  const covers: (readonly [number, number])[] = [];
  for (const readings of byRank) {
    chosen.push(...readings.filter((one) => !covers.some((cover) => isCovered(one.depthMm, cover))));
    covers.push(...coversOf(readings, sources.settings.longestGapM * 1000));
  }
  const first = lineUpStation(sources, findings);
  const down = onceADepth(chosen).filter((one) => first === undefined || one.depthMm > 0);
  const lent = down.map((one) => ({
    ...one,
    lentBy: one.azimuthDeg === undefined ? lender(one, byRank) : one,
  }));
  return { stations: withAzimuths(first, lent, sources), findings };
}

/** Readings in order of depth; of two at one depth in a run, the one recorded later. */
function onceADepth(readings: readonly Reading[]): readonly Reading[] {
  const byDepth = new Map(readings.map((one) => [one.depthMm, one]));
  return [...byDepth.values()].sort((a, b) => a.depthMm - b.depthMm);
}

function readingsOf(run: RunWithShots, sources: StationSources, findings: Finding[]): readonly Reading[] {
  const angles = sources.anglesOf(run.run);
  const unknown = run.shots.some((shot) => shot.azimuthDeg !== undefined)
    ? toNorth(azimuth(0, run.run.north), sources.north, angles) === undefined
    : false;
  if (unknown)
    findings.push(northNotKnown(run.run.north, sources.north, { ...sources.place, thing: run.run.tool }));
  return run.shots
    .filter((shot) => shot.rejected === undefined)
    .map((shot) => ({
      depthMm: shot.depthMm,
      dipDeg: shot.dipDeg,
      azimuthDeg: standingAzimuth(shot, run.run, sources, angles)?.deg,
      from: run,
    }));
}

/** The azimuth of a shot in the path's north, if it stands. */
function standingAzimuth(
  shot: Shot,
  run: SurveyRun,
  sources: StationSources,
  angles: NorthAngles,
): Azimuth | undefined {
  if (shot.azimuthDeg === undefined || shot.azimuthRejected !== undefined) return undefined;
  if (azimuthUnusable(run, sources.settings.steelM)) return undefined;
  return toNorth(azimuth(shot.azimuthDeg, run.north), sources.north, angles);
}

function coversOf(
  readings: readonly Reading[],
  longestGapMm: number,
): readonly (readonly [number, number])[] {
  const depths = readings.map((one) => one.depthMm).sort((a, b) => a - b);
  return depths.map((depth, index) => {
    const next = depths[index + 1];
    return [depth, next !== undefined && next - depth <= longestGapMm ? next : depth] as const;
  });
}

function isCovered(depthMm: number, [from, to]: readonly [number, number]): boolean {
  return depthMm > from - SAME_PLACE_MM && depthMm < to + SAME_PLACE_MM;
}

/** The reading of a poorer run at the same place that has the azimuth a shot lacks. */
function lender(one: Reading, byRank: readonly (readonly Reading[])[]): Reading | undefined {
  return byRank
    .flat()
    .find((other) => other.azimuthDeg !== undefined && Math.abs(other.depthMm - one.depthMm) < SAME_PLACE_MM);
}

function lineUpStation(sources: StationSources, findings: Finding[]): RankedStation | undefined {
  if (sources.lineUp === undefined) return undefined;
  const { direction, angles } = sources.lineUp;
  const turned = toNorth(direction.azimuth, sources.north, angles);
  if (turned === undefined) {
    findings.push(
      northNotKnown(direction.azimuth.north, sources.north, { ...sources.place, thing: 'line-up' }),
    );
    return undefined;
  }
  const depthMm = depthFromMm(0);
  return { depthMm, azimuth: turned, dip: direction.dip, basis: 'set', toolClass: 'line-up', run: undefined };
}

/** Gives each reading without an azimuth one from the stations about it; leaves out those that can have none. */
function withAzimuths(
  first: RankedStation | undefined,
  readings: readonly (Reading & { readonly lentBy: Reading | undefined })[],
  sources: StationSources,
): readonly RankedStation[] {
  const known: Known[] = [
    ...(first === undefined ? [] : [{ depthMm: 0, deg: first.azimuth.deg, from: shareOf(first) }]),
    ...readings.flatMap(({ depthMm, lentBy }) =>
      lentBy?.azimuthDeg === undefined ? [] : [{ depthMm, deg: lentBy.azimuthDeg, from: readBy(lentBy) }],
    ),
  ];
  const stations = readings.flatMap((one): RankedStation[] => {
    const taken = azimuthAmong(known, one.depthMm);
    const deg = one.lentBy?.azimuthDeg ?? taken?.deg;
    const measured = one.azimuthDeg !== undefined;
    return deg === undefined || taken === undefined
      ? []
      : [
          {
            depthMm: one.depthMm,
            azimuth: azimuth(deg, sources.north),
            dip: dip(one.dipDeg),
            basis: measured ? 'measured' : 'dip measured',
            toolClass: one.from.run.toolClass,
            run: one.from.id,
            ...(measured
              ? {}
              : { azimuthFrom: one.lentBy === undefined ? taken.from : [readBy(one.lentBy)] }),
          },
        ];
  });
  return first === undefined ? stations : [first, ...stations];
}

/** An azimuth known at a depth, and the reading it is. */
interface Known {
  readonly depthMm: number;
  readonly deg: number;
  readonly from: AzimuthShare;
}

const readBy = ({ from, depthMm }: Reading): AzimuthShare => ({
  toolClass: from.run.toolClass,
  run: from.id,
  depthMm,
  share: 1,
});

const shareOf = ({ toolClass, run, depthMm }: RankedStation): AzimuthShare => ({
  toolClass,
  run,
  depthMm,
  share: 1,
});

/** The azimuth at a depth between the known ones about it, in proportion to depth; beyond them, the nearest. */
function azimuthAmong(
  known: readonly Known[],
  depthMm: number,
): { readonly deg: number; readonly from: readonly AzimuthShare[] } | undefined {
  const above = known.findLast((one) => one.depthMm <= depthMm);
  const below = known.find((one) => one.depthMm >= depthMm);
  const only = above ?? below;
  if (only === undefined) return undefined;
  if (above === undefined || below === undefined || above === below)
    return { deg: only.deg, from: [only.from] };
  const part = (depthMm - above.depthMm) / (below.depthMm - above.depthMm);
  return {
    deg: above.deg + part * degreesBetween(below.deg, above.deg),
    from: [
      { ...above.from, share: 1 - part },
      { ...below.from, share: part },
    ],
  };
}
