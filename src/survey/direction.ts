import { type Azimuth, azimuth, type North } from '../quantity/azimuth.ts';
import { type Dip, dip } from '../quantity/dip.ts';
import type { Vector } from './path/vector.ts';

/** Which way a hole points: an azimuth with its north, and a dip. */
export interface Direction {
  readonly azimuth: Azimuth;
  readonly dip: Dip;
}

/** Steeper than this an azimuth is weak: small wobbles of the rod turn it far. Common practice. */
const STEEP_DIP_DEG = -85;

export const radians = (deg: number): number => (deg * Math.PI) / 180;
export const degrees = (rad: number): number => (rad * 180) / Math.PI;

/** True where the hole is so steep that its azimuth says little; compare directions in space there. */
export function isSteep(direction: { readonly dip: number }): boolean {
  return direction.dip < STEEP_DIP_DEG;
}

/** The unit vector that points down the hole. */
export function tangentOf(direction: Direction): Vector {
  const across = Math.cos(radians(direction.dip));
  const bearing = radians(direction.azimuth.deg);
  return {
    north: across * Math.cos(bearing),
    east: across * Math.sin(bearing),
    down: -Math.sin(radians(direction.dip)),
  };
}

/** The direction of a unit vector, its azimuth counted from `north`. A vertical one has azimuth 0. */
export function directionOf(tangent: Vector, north: North, epoch?: number): Direction {
  const across = Math.sqrt(tangent.north * tangent.north + tangent.east * tangent.east);
  return {
    azimuth: azimuth(degrees(Math.atan2(tangent.east, tangent.north)), north, epoch),
    dip: dip(degrees(Math.atan2(-tangent.down, across))),
  };
}

/**
 * The angle in space between two directions, 0 to π radians, both of one north. The half-angle form
 * sin²(β/2) = sin²(ΔI/2) + sin I₁ sin I₂ sin²(ΔA/2), taken through atan2: an arc cosine returns 0 below about
 * a millionth of a degree.
 */
export function angleBetweenRad(from: Direction, to: Direction): number {
  const halfDip = Math.sin(radians(to.dip - from.dip) / 2);
  const halfTurn = Math.sin(radians(to.azimuth.deg - from.azimuth.deg) / 2);
  const across = Math.cos(radians(from.dip)) * Math.cos(radians(to.dip));
  const squared = Math.min(1, halfDip * halfDip + across * halfTurn * halfTurn);
  return 2 * Math.atan2(Math.sqrt(squared), Math.sqrt(1 - squared));
}

/** The angle in space between two directions, 0 to 180 degrees. */
export function angleBetweenDeg(from: Direction, to: Direction): number {
  return degrees(angleBetweenRad(from, to));
}
