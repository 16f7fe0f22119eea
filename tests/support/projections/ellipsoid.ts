/** An ellipsoid: its longer half-axis in metres, its first eccentricity. */
export interface Ellipsoid {
  readonly a: number;
  readonly e: number;
}

/** From the longer half-axis and 1/f. */
function ellipsoid(a: number, inverseFlattening: number): Ellipsoid {
  const f = 1 / inverseFlattening;
  return { a, e: Math.sqrt(f * (2 - f)) };
}

/** From both half-axes. */
function fromAxes(a: number, b: number): Ellipsoid {
  return { a, e: Math.sqrt(1 - (b * b) / (a * a)) };
}

/** Ellipsoids by their short name in proj strings; figures of the EPSG register. */
const BY_NAME: Readonly<Record<string, Ellipsoid>> = {
  GRS80: ellipsoid(6378137, 298.257222101),
  WGS84: ellipsoid(6378137, 298.257223563),
  WGS72: ellipsoid(6378135, 298.26),
  GRS67: ellipsoid(6378160, 298.247167427),
  IAU76: ellipsoid(6378140, 298.257),
  airy: fromAxes(6377563.396, 6356256.91),
  mod_airy: fromAxes(6377340.189, 6356034.446),
  aust_SA: ellipsoid(6378160, 298.25),
  bessel: ellipsoid(6377397.155, 299.1528128),
  clrk66: fromAxes(6378206.4, 6356583.8),
  clrk80: ellipsoid(6378249.145, 293.4663),
  clrk80ign: ellipsoid(6378249.2, 293.4660212936269),
  bess_nam: ellipsoid(6377483.865, 299.1528128),
  evrst30: ellipsoid(6377276.345, 300.8017),
  evrst48: ellipsoid(6377304.063, 300.8017),
  evrst69: ellipsoid(6377295.664, 300.8017),
  evrstSS: ellipsoid(6377298.556, 300.8017),
  helmert: ellipsoid(6378200, 298.3),
  intl: ellipsoid(6378388, 297),
  krass: ellipsoid(6378245, 298.3),
};

/** The ellipsoid that a proj string names or describes. */
export function ellipsoidOf(proj: string): Ellipsoid {
  const said = (key: string) => new RegExp(`\\+${key}=(\\S+)`).exec(proj)?.[1];
  const [a, b, rf] = ['a', 'b', 'rf'].map((key) => Number(said(key)));
  if (said('a') !== undefined) return said('b') === undefined ? ellipsoid(a!, rf!) : fromAxes(a!, b!);
  const found = BY_NAME[said('ellps') ?? said('datum') ?? ''];
  if (found === undefined) throw new Error(`no ellipsoid in ${proj}`);
  return found;
}
