/** Spread of a point in a plane: variances and covariance, square metres. */
export interface PlaneCovariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** One-sigma ellipse: semi-axes in metres, the longer first, and the angle of the longer one from x towards y, degrees. */
export interface Ellipse {
  readonly longM: number;
  readonly shortM: number;
  readonly angleDeg: number;
}

/** The one-sigma ellipse of a spread: the eigenvalues and eigenvectors of its matrix. */
export function ellipseOf({ xx, xy, yy }: PlaneCovariance): Ellipse {
  const middle = (xx + yy) / 2;
  const apart = Math.hypot((xx - yy) / 2, xy);
  return {
    longM: Math.sqrt(Math.max(0, middle + apart)),
    shortM: Math.sqrt(Math.max(0, middle - apart)),
    angleDeg: (Math.atan2(2 * xy, xx - yy) / 2) * (180 / Math.PI),
  };
}

/**
 * The error function to 1.5 × 10⁻⁷: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 7.1.26.
 */
export function errorFunction(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const sum =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const size = 1 - sum * Math.exp(-x * x);
  return x < 0 ? -size : size;
}

/** Probability that a normal value of mean 0 and spread `sigma` is at most `x`; a step where there is no spread. */
export function normalBelow(x: number, sigma: number): number {
  if (sigma === 0) return x >= 0 ? 1 : 0;
  return (1 + errorFunction(x / (sigma * Math.SQRT2))) / 2;
}

/** Spread below this is none, metres: a micrometre. */
const NO_SPREAD_M = 1e-6;
/** Intervals of the sum; even, for Simpson's rule. */
const INTERVALS = 400;

/**
 * Probability that a point spread normally about `(meanX, meanY)` lies within `radiusM` of the origin, metres. Integrated along the
 * longer axis of the ellipse by Simpson's rule, in the angle x = R sin θ, which is smooth at the rim.
 */
export function probabilityWithin(
  meanX: number,
  meanY: number,
  spread: PlaneCovariance,
  radiusM: number,
): number {
  const ellipse = ellipseOf(spread);
  if (ellipse.longM < NO_SPREAD_M) return Math.hypot(meanX, meanY) <= radiusM ? 1 : 0;
  const angle = ellipse.angleDeg * (Math.PI / 180);
  const along = meanX * Math.cos(angle) + meanY * Math.sin(angle);
  const across = meanY * Math.cos(angle) - meanX * Math.sin(angle);
  const reach = 8 * ellipse.longM;
  const edge = (x: number) => Math.asin(Math.min(1, Math.max(-1, x / radiusM)));
  const from = edge(along - reach);
  const to = edge(along + reach);
  const step = (to - from) / INTERVALS;
  let sum = 0;
  for (let index = 0; index <= INTERVALS; index++) {
    const theta = from + index * step;
    const weight = index === 0 || index === INTERVALS ? 1 : index % 2 === 1 ? 4 : 2;
    sum += weight * slice(radiusM * Math.sin(theta), radiusM * Math.cos(theta), along, across, ellipse);
  }
  return Math.min(1, (sum * step) / 3);
}

/** Density at `x` of the longer axis times the chance of lying within ± `half` on the shorter one, times dx/dθ (= half). */
function slice(x: number, half: number, along: number, across: number, ellipse: Ellipse): number {
  const z = (x - along) / ellipse.longM;
  const density = Math.exp((-z * z) / 2) / (ellipse.longM * Math.sqrt(2 * Math.PI));
  const short = ellipse.shortM < NO_SPREAD_M ? 0 : ellipse.shortM;
  const inside = normalBelow(half - across, short) - normalBelow(-half - across, short);
  return density * inside * half;
}
