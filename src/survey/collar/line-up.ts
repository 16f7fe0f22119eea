import { type Azimuth, degreesBetween, formatAzimuth, type North } from '../../quantity/azimuth.ts';
import { formatDip } from '../../quantity/dip.ts';
import { angleBetweenDeg, type Direction, isSteep, radians } from '../direction.ts';
import type { SurveySettings } from '../settings.ts';

/** The north that each way of setting a rig gives its azimuth from. */
export const NORTH_OF_WAY: Readonly<Record<'sight pegs' | 'alignment device' | 'compass', North>> = {
  'sight pegs': 'grid',
  'alignment device': 'true',
  compass: 'magnetic',
};

/** Metres by which a hole misses at `depthM` along it when its start is out by an angle in space: depth × 2 sin(δ/2). */
export function missAtDepthM(depthM: number, angleDeg: number): number {
  return depthM * 2 * Math.sin(radians(angleDeg) / 2);
}

/** One thing planned and measured: the difference (measured less planned), degrees, and whether it is inside tolerance. */
export interface Compared {
  readonly planned: number;
  readonly measured: number;
  readonly differenceDeg: number;
  readonly toleranceDeg: number;
  readonly inside: boolean;
}

/** A line-up compared with the plan. */
export interface LineUpAnswer {
  readonly azimuth: Compared;
  readonly dip: Compared;
  /** The angle in space, degrees. */
  readonly angleDeg: number;
  /** Where the hole is steep, azimuth says little and the angle in space is what counts. */
  readonly steep: boolean;
  /** The miss at the target that the angle would make, metres. */
  readonly missM: number;
  readonly accepted: boolean;
  /** What to request of the driller, when refused: which way and how much. */
  readonly request: string | undefined;
}

/**
 * A set direction against the planned one, both of one north (throws otherwise: the caller converts). `targetM` is the depth
 * of the target along the hole, metres. Where the hole is steep only the angle in space is held to the dip's tolerance.
 */
export function assessLineUp(
  planned: Direction,
  measured: Direction,
  targetM: number,
  settings: Pick<SurveySettings, 'azimuthToleranceDeg' | 'dipToleranceDeg'>,
): LineUpAnswer {
  if (planned.azimuth.north !== measured.azimuth.north)
    throw new RangeError(`azimuths of ${planned.azimuth.north} and ${measured.azimuth.north} north compared`);
  const { azimuthToleranceDeg, dipToleranceDeg } = settings;
  const turn = degreesBetween(measured.azimuth.deg, planned.azimuth.deg);
  const azimuth = compared(planned.azimuth.deg, measured.azimuth.deg, turn, azimuthToleranceDeg);
  const dip = compared(planned.dip, measured.dip, measured.dip - planned.dip, dipToleranceDeg);
  const angleDeg = angleBetweenDeg(planned, measured);
  const steep = isSteep(planned);
  const accepted = steep ? angleDeg <= dipToleranceDeg : azimuth.inside && dip.inside;
  return {
    azimuth,
    dip,
    angleDeg,
    steep,
    missM: missAtDepthM(targetM, angleDeg),
    accepted,
    request: accepted ? undefined : requestOf(planned, azimuth, dip, steep),
  };
}

function compared(planned: number, measured: number, differenceDeg: number, toleranceDeg: number): Compared {
  const inside = Math.abs(differenceDeg) <= toleranceDeg + 1e-9;
  return { planned, measured, differenceDeg, toleranceDeg, inside };
}

/** The correction in words. It is a request: only the driller moves the rig. */
function requestOf(planned: Direction, azimuth: Compared, dip: Compared, steep: boolean): string {
  const parts: string[] = [];
  if (!azimuth.inside || steep) parts.push(...turnRequest(azimuth.differenceDeg));
  if (!dip.inside || steep) parts.push(...dipRequest(dip.differenceDeg));
  return `Ask the driller to ${parts.join(' and ')}, to reach ${formatAzimuth(planned.azimuth)} and ${formatDip(planned.dip)}.`;
}

const shows = (deg: number) => Math.abs(deg) >= 0.05;

function turnRequest(differenceDeg: number): readonly string[] {
  if (!shows(differenceDeg)) return [];
  const way = differenceDeg > 0 ? 'left' : 'right';
  return [`bring the rig round ${Math.abs(differenceDeg).toFixed(1)}° ${way}, seen along the hole`];
}

function dipRequest(differenceDeg: number): readonly string[] {
  if (!shows(differenceDeg)) return [];
  const way = differenceDeg > 0 ? 'steeper' : 'flatter';
  return [`bring the mast ${Math.abs(differenceDeg).toFixed(1)}° ${way}`];
}

/** `planned 090.0° grid, measured 091.4°, 1.4° to the right: outside 1.0°`. */
export function formatAzimuthCompared(one: Compared, planned: Azimuth): string {
  const side = one.differenceDeg < 0 ? 'left' : 'right';
  return `planned ${formatAzimuth(planned)}, measured ${formatAzimuth({ ...planned, deg: one.measured })}: ${Math.abs(one.differenceDeg).toFixed(1)}° to the ${side}, ${insideWords(one)}`;
}

/** `planned -60.0°, measured -59.2°: 0.8° flatter, outside 0.5°`. */
export function formatDipCompared(one: Compared): string {
  const way = one.differenceDeg < 0 ? 'steeper' : 'flatter';
  return `planned ${formatDip(one.planned)}, measured ${formatDip(one.measured)}: ${Math.abs(one.differenceDeg).toFixed(1)}° ${way}, ${insideWords(one)}`;
}

function insideWords(one: Compared): string {
  return `${one.inside ? 'inside' : 'OUTSIDE'} ${one.toleranceDeg.toFixed(1)}°`;
}
