import { ellipsoidOf } from './ellipsoid.ts';
import {
  cassini,
  type Forward,
  krovak,
  lambertConic,
  obliqueMercator,
  obliqueStereographic,
  polyconic,
  swissCylinder,
  transverseMercator,
} from './methods.ts';

const RAD = Math.PI / 180;

/** Meridians that longitudes are counted from, degrees east of Greenwich; figures of the EPSG register. */
const MERIDIANS: Readonly<Record<string, number>> = {
  ferro: -(17 + 40 / 60),
  paris: 2.337229167,
  lisbon: -9.131906111111,
  bern: 7.439583333333,
  oslo: 10.722916666667,
  madrid: -3.687938888889,
};

/** A projection written a second time, from the parameters of a proj string: degrees from Greenwich → metres east and north. */
export function secondOpinion(proj: string): (latDeg: number, lonDeg: number) => readonly [number, number] {
  const text = (key: string) => new RegExp(`\\+${key}=(\\S+)`).exec(proj)?.[1];
  const number = (key: string, usual = 0) => Number(text(key) ?? usual);
  const from = forwardOf(proj, text('proj') ?? '', number);
  const meridian = MERIDIANS[text('pm') ?? ''] ?? number('pm');
  const utm = text('proj') === 'utm';
  const falseEast = utm ? 500_000 : number('x_0');
  const falseNorth = utm ? (proj.includes('+south') ? 10_000_000 : 0) : number('y_0');
  // A grid counted west and south is used here as east and north: see formatAxes.
  return (latDeg, lonDeg) => {
    const [east, north] = from(latDeg * RAD, (lonDeg - meridian) * RAD);
    return [east + falseEast, north + falseNorth];
  };
}

function forwardOf(proj: string, method: string, number: (key: string, usual?: number) => number): Forward {
  const shape = ellipsoidOf(proj);
  const phi0 = number('lat_0') * RAD;
  const lambda0 = number('lon_0') * RAD;
  const k = number('k', number('k_0', 1));
  switch (method) {
    case 'utm':
      return transverseMercator(shape, { phi0: 0, lambda0: (number('zone') * 6 - 183) * RAD, k: 0.9996 });
    case 'tmerc':
      return transverseMercator(shape, { phi0, lambda0, k });
    case 'lcc': {
      const second = number('lat_2', Number.NaN);
      const parallels = Number.isNaN(second) ? {} : { phi2: second * RAD };
      return lambertConic(shape, { phi0, lambda0, phi1: number('lat_1') * RAD, ...parallels, k });
    }
    case 'krovak':
      return krovak(shape, { phi0, lambda0, alpha: number('alpha') * RAD, k });
    case 'somerc':
      return swissCylinder(shape, { phi0, lambda0, k });
    case 'sterea':
      return obliqueStereographic(shape, { phi0, lambda0, k });
    case 'cass':
      return cassini(shape, { phi0, lambda0 });
    case 'poly':
      return polyconic(shape, { phi0, lambda0 });
    case 'omerc':
      return obliqueMercator(shape, {
        phi0,
        lambda0: number('lonc') * RAD,
        alpha: number('alpha') * RAD,
        gamma: number('gamma', number('alpha')) * RAD,
        k,
        variant: proj.includes('+no_uoff') ? 'A' : 'B',
      });
    default:
      throw new Error(`no second opinion on ${method}`);
  }
}
