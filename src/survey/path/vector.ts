/** A displacement in metres, or a unit direction, in a right-handed frame of the map: north, east, down. */
export interface Vector {
  readonly north: number;
  readonly east: number;
  readonly down: number;
}

/** No displacement. */
export const ORIGIN: Vector = { north: 0, east: 0, down: 0 };

export function plus(a: Vector, b: Vector): Vector {
  return { north: a.north + b.north, east: a.east + b.east, down: a.down + b.down };
}

export function minus(a: Vector, b: Vector): Vector {
  return { north: a.north - b.north, east: a.east - b.east, down: a.down - b.down };
}

export function times(a: Vector, factor: number): Vector {
  return { north: a.north * factor, east: a.east * factor, down: a.down * factor };
}

export function dot(a: Vector, b: Vector): number {
  return a.north * b.north + a.east * b.east + a.down * b.down;
}

export function cross(a: Vector, b: Vector): Vector {
  return {
    north: a.east * b.down - a.down * b.east,
    east: a.down * b.north - a.north * b.down,
    down: a.north * b.east - a.east * b.north,
  };
}

export function length(a: Vector): number {
  return Math.sqrt(dot(a, a));
}

/** The unit vector along `a`; the zero vector has no direction and comes back as it is. */
export function unit(a: Vector): Vector {
  const size = length(a);
  return size === 0 ? a : times(a, 1 / size);
}
