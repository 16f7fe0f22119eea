import { type Depth, depthFromMm, metres } from '../../quantity/depth.ts';
import { radians } from '../direction.ts';
import type { DepthRange, ExpectedHere } from '../expected/expected.ts';
import type { PlannedLine } from '../path/miss.ts';
import { plannedPoint } from '../path/miss.ts';
import type { Path } from '../path/path.ts';
import { lastStation, type PathPoint } from '../path/path.ts';
import { pathByMetre } from '../path/projection.ts';
import type { Vector } from '../path/vector.ts';

/** A point of a picture, metres: x to the right, y down. */
export interface PicturePoint {
  readonly x: number;
  readonly y: number;
}

/** A line of a picture. What it is can be told without colour: planned lines are dotted, projected ones dashed. */
export interface PictureLine {
  readonly what: 'planned' | 'surveyed' | 'projected';
  readonly points: readonly PicturePoint[];
}

/** A marked place of a picture, with the letter that stands for it and what it means. */
interface PictureMark {
  readonly letter: string;
  readonly meaning: string;
  readonly at: PicturePoint;
}

/** An expected zone along the hole, from the earliest depth of its top to the latest of its foot. */
interface PictureZone {
  readonly meaning: string;
  readonly hazard: boolean;
  readonly points: readonly PicturePoint[];
}

/** A drawing of a hole in metres, to be painted as text or as SVG. */
export interface Picture {
  readonly title: string;
  /** What the right-hand and the lower edge look towards. */
  readonly rightward: string;
  readonly downward: string;
  readonly lines: readonly PictureLine[];
  readonly marks: readonly PictureMark[];
  readonly zones: readonly PictureZone[];
  /** Depths along the hole at round steps, to be written beside it. */
  readonly ticks: readonly { readonly depthM: number; readonly at: PicturePoint }[];
}

/** What a picture is drawn from. */
export interface PictureSource {
  readonly path: Path;
  readonly plan: PlannedLine | undefined;
  /** Planned depth of the hole; undefined without a plan. */
  readonly plannedMm: Depth | undefined;
  readonly drilledMm: Depth;
  readonly expected: readonly ExpectedHere[];
}

type Look = (at: Vector) => PicturePoint;

/** The hole from above: east to the right, north up. */
export function planPicture(source: PictureSource): Picture {
  const look: Look = (at) => ({ x: at.east, y: -at.north });
  return { title: 'plan', rightward: 'east', downward: 'south', ...drawn(source, look) };
}

/** The hole from the side, in the section of its plan (of its own start, where it has none): along the section to the right. */
export function sectionPicture(source: PictureSource): Picture {
  const bearingDeg = source.plan?.direction.azimuth.deg ?? source.path.stations[0].azimuth.deg;
  const bearing = radians(bearingDeg);
  const look: Look = (at) => ({
    x: at.north * Math.cos(bearing) + at.east * Math.sin(bearing),
    y: at.down,
  });
  const towards = `${bearingDeg.toFixed(0).padStart(3, '0')}°`;
  return {
    title: `section along ${towards}`,
    rightward: towards,
    downward: 'depth',
    ...drawn(source, look),
  };
}

function drawn(source: PictureSource, look: Look): Pick<Picture, 'lines' | 'marks' | 'zones' | 'ticks'> {
  const { path, plan } = source;
  const deepest = lastStation(path).depthMm;
  const toMm = pictureDepthMm(source);
  const points = pathByMetre(path, toMm);
  const surveyed = points.filter((one) => one.depthMm <= deepest);
  const below = points.filter((one) => one.depthMm >= Math.floor(deepest / 1000) * 1000);
  const lines: readonly PictureLine[] = [
    ...(plan === undefined
      ? []
      : [
          {
            what: 'planned' as const,
            points: [plan.from, plannedPoint(plan, plannedEndMm(source))].map(look),
          },
        ]),
    { what: 'surveyed', points: seen(surveyed, look) },
    { what: 'projected', points: seen(below, look) },
  ];
  return {
    lines: lines.filter((line) => line.points.length > 1),
    marks: marksOf(source, points, look),
    zones: zonesOf(source.expected, points, look),
    ticks: ticksOf(points, look),
  };
}

/** How deep a picture goes: to what is drilled and planned, and through every hazard that is expected. */
function pictureDepthMm(source: PictureSource): Depth {
  const feet = source.expected.flatMap((zone) => hazardRange(zone)?.latestMm ?? []);
  const deepest = Math.max(source.drilledMm, lastStation(source.path).depthMm, plannedEndMm(source), ...feet);
  // Whole metres are drawn: the metre that holds the foot of a hazard is drawn to its end.
  return depthFromMm(Math.ceil(deepest / 1000) * 1000);
}

function plannedEndMm({ plan, plannedMm }: PictureSource): number {
  return Math.max(plan?.targetMm ?? 0, plannedMm ?? 0);
}

/**
 * From the earliest depth that a hazard could come at to the latest of its foot, the planned depths among them; undefined for a zone
 * that is not a hazard. One that the hole as projected doesn't reach is drawn at its planned depth.
 */
function hazardRange({ expected, top, foot }: ExpectedHere): DepthRange | undefined {
  if (expected.hazard === undefined) return undefined;
  const earliestMm = Math.min(top?.earliestMm ?? expected.fromMm, expected.fromMm);
  const latest = [top?.latestMm ?? 0, foot?.latestMm ?? 0, expected.toMm ?? expected.fromMm];
  return { earliestMm: depthFromMm(earliestMm), latestMm: depthFromMm(Math.max(...latest)) };
}

function zonesOf(
  expected: PictureSource['expected'],
  points: readonly PathPoint[],
  look: Look,
): readonly PictureZone[] {
  return expected.flatMap((zone) => {
    const { expected: one, top, foot } = zone;
    const range =
      hazardRange(zone) ?? (top && { earliestMm: top.earliestMm, latestMm: (foot ?? top).latestMm });
    if (range === undefined) return [];
    const inside = points.filter(({ depthMm }) => depthMm >= range.earliestMm && depthMm <= range.latestMm);
    return inside.length < 2
      ? []
      : [{ meaning: one.name, hazard: one.hazard !== undefined, points: seen(inside, look) }];
  });
}

/** About this many depths are written along a hole. */
const TICKS = 6;

function ticksOf(points: readonly PathPoint[], look: Look): Picture['ticks'] {
  const deepestM = metres(points.at(-1)?.depthMm ?? depthFromMm(0));
  const stepM = Math.max(1, roundLength(Math.max(1, deepestM / TICKS) * 2));
  return points
    .filter(({ depthMm }) => depthMm > 0 && depthMm % (stepM * 1000) === 0)
    .map((point) => ({ depthM: metres(point.depthMm), at: look(point.offset) }));
}

const seen = (points: readonly PathPoint[], look: Look) => points.map((point) => look(point.offset));

function marksOf(
  { path, plan, expected }: PictureSource,
  points: readonly PathPoint[],
  look: Look,
): readonly PictureMark[] {
  const at = (letter: string, meaning: string, depthMm: number): readonly PictureMark[] => {
    const here = points.find((point) => point.depthMm >= depthMm);
    return here === undefined ? [] : [{ letter, meaning, at: look(here.offset) }];
  };
  const zones = expected.flatMap((zone, index) => {
    const { expected: one, top } = zone;
    const hazard = hazardRange(zone);
    if (hazard === undefined) return top ? at(String((index + 1) % 10), one.name, top.earliestMm) : [];
    const foot = one.toMm === undefined ? [] : at('!', `bottom of ${one.name}`, hazard.latestMm);
    return [...at('!', one.name, hazard.earliestMm), ...foot];
  });
  return [
    { letter: 'C', meaning: 'collar', at: look({ north: 0, east: 0, down: 0 }) },
    ...zones,
    ...(path.legs.length === 0 ? [] : [{ letter: 'S', meaning: 'last shot', at: look(path.end) }]),
    ...(plan === undefined
      ? []
      : [{ letter: 'T', meaning: 'target', at: look(plannedPoint(plan, plan.targetMm)) }]),
  ];
}

/** The box around everything in a picture, metres; never of no size. */
export function boundsOf(picture: Picture): {
  readonly left: number;
  readonly top: number;
  readonly widthM: number;
  readonly heightM: number;
} {
  const all = [...picture.lines.flatMap((line) => line.points), ...picture.marks.map((mark) => mark.at)];
  const xs = all.map((point) => point.x);
  const ys = all.map((point) => point.y);
  const left = Math.min(...xs);
  const top = Math.min(...ys);
  return {
    left,
    top,
    widthM: Math.max(1, Math.max(...xs) - left),
    heightM: Math.max(1, Math.max(...ys) - top),
  };
}

/** The longest round length (1, 2 or 5 times a power of ten) of at most `longestM` metres. */
export function roundLength(longestM: number): number {
  const power = 10 ** Math.floor(Math.log10(longestM));
  return [5, 2, 1].map((factor) => factor * power).find((one) => one <= longestM + 1e-9) ?? power;
}
