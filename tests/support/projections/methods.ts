import type { Ellipsoid } from './ellipsoid.ts';

/**
 * Map projections written a second time, straight from the formulas of IOGP Publication 373-7-2 (Geomatics Guidance Note 7 part 2, Coordinate
 * Conversions and Transformations including Formulas) and, where said, others; so that the product's library is compared with something
 * that shares no line with it. Angles in radians; east and north in metres, before false origin. Each is compared with its own
 * worked example in tests/published/projections.test.ts.
 */
export type Forward = (phi: number, lambda: number) => readonly [east: number, north: number];

const { asin, atan, atan2, cos, exp, hypot, log, sign, sin, sinh, sqrt, tan, PI } = Math;

/** tan(π/4 − φ/2) over its ellipsoidal correction: t of the conformal methods. */
function conformalT(phi: number, e: number): number {
  return tan(PI / 4 - phi / 2) / ((1 - e * sin(phi)) / (1 + e * sin(phi))) ** (e / 2);
}

const parallel = (phi: number, e: number) => cos(phi) / sqrt(1 - (e * sin(phi)) ** 2);

/** Lambert conic conformal with one standard parallel (EPSG 9801) or two (9802), about a latitude of origin. */
export function lambertConic(
  { a, e }: Ellipsoid,
  from: {
    readonly phi0: number;
    readonly lambda0: number;
    readonly phi1: number;
    readonly phi2?: number;
    readonly k: number;
  },
): Forward {
  const { phi0, lambda0, phi1, phi2 = phi1, k } = from;
  const [m1, m2] = [parallel(phi1, e), parallel(phi2, e)];
  const [t1, t2] = [conformalT(phi1, e), conformalT(phi2, e)];
  const n = phi1 === phi2 ? sin(phi1) : (log(m1) - log(m2)) / (log(t1) - log(t2));
  const f = m1 / (n * t1 ** n);
  const radius = (phi: number) => a * f * k * conformalT(phi, e) ** n;
  return (phi, lambda) => {
    const theta = n * (lambda - lambda0);
    return [radius(phi) * sin(theta), radius(phi0) - radius(phi) * cos(theta)];
  };
}

/** Krovak (EPSG 9819) with the pseudo standard parallel of Czechoslovakia, 78°30′; east and north, minus its westing and southing. */
export function krovak(
  { a, e }: Ellipsoid,
  from: { readonly phi0: number; readonly lambda0: number; readonly alpha: number; readonly k: number },
): Forward {
  const { phi0, lambda0, alpha, k } = from;
  const pseudo = (78.5 * PI) / 180;
  const big = (a * sqrt(1 - e * e)) / (1 - (e * sin(phi0)) ** 2);
  const b = sqrt(1 + (e * e * cos(phi0) ** 4) / (1 - e * e));
  const gamma = asin(sin(phi0) / b);
  const bulge = (phi: number) => ((1 + e * sin(phi)) / (1 - e * sin(phi))) ** ((e * b) / 2);
  const t0 = (tan(PI / 4 + gamma / 2) * bulge(phi0)) / tan(PI / 4 + phi0 / 2) ** b;
  const n = sin(pseudo);
  const r0 = (k * big) / tan(pseudo);
  return (phi, lambda) => {
    const u = 2 * (atan((t0 * tan(phi / 2 + PI / 4) ** b) / bulge(phi)) - PI / 4);
    const v = b * (lambda0 - lambda);
    const t = asin(cos(alpha) * sin(u) + sin(alpha) * cos(u) * cos(v));
    const d = asin((cos(u) * sin(v)) / cos(t));
    const r = (r0 * tan(PI / 4 + pseudo / 2) ** n) / tan(t / 2 + PI / 4) ** n;
    return [-r * sin(n * d), -r * cos(n * d)];
  };
}

/** Hotine oblique Mercator, variant A (EPSG 9812, from the natural origin) or B (9815, from the centre). */
export function obliqueMercator(
  { a, e }: Ellipsoid,
  from: {
    readonly phi0: number;
    readonly lambda0: number;
    readonly alpha: number;
    readonly gamma: number;
    readonly k: number;
    readonly variant: 'A' | 'B';
  },
): Forward {
  const { phi0, lambda0, alpha, gamma, k, variant } = from;
  const b = sqrt(1 + (e * e * cos(phi0) ** 4) / (1 - e * e));
  const big = (a * b * k * sqrt(1 - e * e)) / (1 - (e * sin(phi0)) ** 2);
  const d = (b * sqrt(1 - e * e)) / (cos(phi0) * sqrt(1 - (e * sin(phi0)) ** 2));
  const root = sqrt(Math.max(0, d * d - 1));
  const f = d + root * sign(phi0);
  const h = f * conformalT(phi0, e) ** b;
  const gamma0 = asin(sin(alpha) / d);
  const lambdaO = lambda0 - asin(((f - 1 / f) / 2) * tan(gamma0)) / b;
  const centre = variant === 'A' ? 0 : Math.abs((big / b) * atan2(root, cos(alpha))) * sign(phi0);
  return (phi, lambda) => {
    const q = h / conformalT(phi, e) ** b;
    const [s, t] = [(q - 1 / q) / 2, (q + 1 / q) / 2];
    const v = sin(b * (lambda - lambdaO));
    const u = (-v * cos(gamma0) + s * sin(gamma0)) / t;
    const across = (big * log((1 - u) / (1 + u))) / (2 * b);
    const along = (big * atan2(s * cos(gamma0) + v * sin(gamma0), cos(b * (lambda - lambdaO)))) / b - centre;
    return [across * cos(gamma) + along * sin(gamma), along * cos(gamma) - across * sin(gamma)];
  };
}

/** The Swiss oblique conformal cylinder: swisstopo, Formulas and constants for the calculation of the Swiss conformal cylindrical projection. */
export function swissCylinder(
  { a, e }: Ellipsoid,
  from: { readonly phi0: number; readonly lambda0: number; readonly k: number },
): Forward {
  const { phi0, lambda0, k } = from;
  const alpha = sqrt(1 + (e * e * cos(phi0) ** 4) / (1 - e * e));
  const b0 = asin(sin(phi0) / alpha);
  const isometric = (phi: number) =>
    alpha * log(tan(PI / 4 + phi / 2)) - ((alpha * e) / 2) * log((1 + e * sin(phi)) / (1 - e * sin(phi)));
  const constant = log(tan(PI / 4 + b0 / 2)) - isometric(phi0);
  const radius = (k * a * sqrt(1 - e * e)) / (1 - (e * sin(phi0)) ** 2);
  return (phi, lambda) => {
    const b = 2 * (atan(exp(isometric(phi) + constant)) - PI / 4);
    const l = alpha * (lambda - lambda0);
    const turned = asin(cos(b0) * sin(b) - sin(b0) * cos(b) * cos(l));
    return [
      radius * atan2(sin(l), sin(b0) * tan(b) + cos(b0) * cos(l)),
      (radius / 2) * log((1 + sin(turned)) / (1 - sin(turned))),
    ];
  };
}

/** Oblique stereographic (EPSG 9809). */
export function obliqueStereographic(
  { a, e }: Ellipsoid,
  from: { readonly phi0: number; readonly lambda0: number; readonly k: number },
): Forward {
  const { phi0, lambda0, k } = from;
  const radius = (a * sqrt(1 - e * e)) / (1 - (e * sin(phi0)) ** 2);
  const n = sqrt(1 + (e * e * cos(phi0) ** 4) / (1 - e * e));
  const w = (phi: number) =>
    (((1 + sin(phi)) / (1 - sin(phi))) * ((1 - e * sin(phi)) / (1 + e * sin(phi))) ** e) ** n;
  const w1 = w(phi0);
  const sinChi = (w1 - 1) / (w1 + 1);
  const c = ((n + sin(phi0)) * (1 - sinChi)) / ((n - sin(phi0)) * (1 + sinChi));
  const conformal = (phi: number) => asin((c * w(phi) - 1) / (c * w(phi) + 1));
  const chi0 = conformal(phi0);
  return (phi, lambda) => {
    const chi = conformal(phi);
    const l = n * (lambda - lambda0);
    const whole = 1 + sin(chi) * sin(chi0) + cos(chi) * cos(chi0) * cos(l);
    const twice = (2 * radius * k) / whole;
    return [twice * cos(chi) * sin(l), twice * (sin(chi) * cos(chi0) - cos(chi) * sin(chi0) * cos(l))];
  };
}

/** Length of the meridian from the equator, metres (the series of the guidance note, Snyder 3-21). */
function meridian({ a, e }: Ellipsoid, phi: number): number {
  const [e2, e4, e6] = [e ** 2, e ** 4, e ** 6];
  return (
    a *
    ((1 - e2 / 4 - (3 * e4) / 64 - (5 * e6) / 256) * phi -
      ((3 * e2) / 8 + (3 * e4) / 32 + (45 * e6) / 1024) * sin(2 * phi) +
      ((15 * e4) / 256 + (45 * e6) / 1024) * sin(4 * phi) -
      ((35 * e6) / 3072) * sin(6 * phi))
  );
}

/** Cassini–Soldner (EPSG 9806). */
export function cassini(
  shape: Ellipsoid,
  from: { readonly phi0: number; readonly lambda0: number },
): Forward {
  const { a, e } = shape;
  return (phi, lambda) => {
    const across = (lambda - from.lambda0) * cos(phi);
    const t = tan(phi) ** 2;
    const c = (e * e * cos(phi) ** 2) / (1 - e * e);
    const nu = a / sqrt(1 - (e * sin(phi)) ** 2);
    return [
      nu * (across - (t * across ** 3) / 6 - ((8 - t + 8 * c) * t * across ** 5) / 120),
      meridian(shape, phi) -
        meridian(shape, from.phi0) +
        nu * tan(phi) * (across ** 2 / 2 + ((5 - t + 6 * c) * across ** 4) / 24),
    ];
  };
}

/** American polyconic (EPSG 9818). */
export function polyconic(
  shape: Ellipsoid,
  from: { readonly phi0: number; readonly lambda0: number },
): Forward {
  const { a, e } = shape;
  return (phi, lambda) => {
    const away = lambda - from.lambda0;
    if (phi === 0) return [a * away, -meridian(shape, from.phi0)];
    const cone = a / sqrt(1 - (e * sin(phi)) ** 2) / tan(phi);
    const turn = away * sin(phi);
    return [cone * sin(turn), meridian(shape, phi) - meridian(shape, from.phi0) + cone * (1 - cos(turn))];
  };
}

/**
 * Transverse Mercator (EPSG 9807) by Krüger's series in the third flattening: Karney 2011, Journal of Geodesy 85, 475–485, equations 7–11 and
 * 35, cut after n⁴ (a tenth of a micrometre).
 */
export function transverseMercator(
  { a, e }: Ellipsoid,
  from: { readonly phi0: number; readonly lambda0: number; readonly k: number },
): Forward {
  const { phi0, lambda0, k } = from;
  const f = 1 - sqrt(1 - e * e);
  const n = f / (2 - f);
  const alpha = [
    n / 2 - (2 * n ** 2) / 3 + (5 * n ** 3) / 16 + (41 * n ** 4) / 180,
    (13 * n ** 2) / 48 - (3 * n ** 3) / 5 + (557 * n ** 4) / 1440,
    (61 * n ** 3) / 240 - (103 * n ** 4) / 140,
    (49561 * n ** 4) / 161280,
  ];
  const rectifying = (k * a * (1 + n ** 2 / 4 + n ** 4 / 64)) / (1 + n);
  const at = (phi: number, away: number): readonly [number, number] => {
    const tau = tan(phi);
    const sigma = sinh(e * Math.atanh((e * tau) / hypot(1, tau)));
    const conformal = tau * hypot(1, sigma) - sigma * hypot(1, tau);
    const xi = atan2(conformal, cos(away));
    const eta = Math.asinh(sin(away) / hypot(conformal, cos(away)));
    let [x, y] = [eta, xi];
    alpha.forEach((value, index) => {
      const twice = 2 * (index + 1);
      y += value * sin(twice * xi) * Math.cosh(twice * eta);
      x += value * cos(twice * xi) * sinh(twice * eta);
    });
    return [rectifying * x, rectifying * y];
  };
  // At a pole the tangent is none: the quarter of the meridian is the limit.
  const origin = Math.abs(phi0) === PI / 2 ? sign(phi0) * rectifying * (PI / 2) : at(phi0, 0)[1];
  return (phi, lambda) => {
    const [x, y] = at(phi, lambda - lambda0);
    return [x, y - origin];
  };
}
