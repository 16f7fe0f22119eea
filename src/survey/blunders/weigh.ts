import type { Evidence, Reading, Source } from './evidence.ts';
import { inner, solveLower } from './factor.ts';

/** A guess at what went wrong, as what it would add to each reading. */
export interface Hypothesis<Name> {
  readonly name: Name;
  /** What is at fault: one source or several that were set up alike, or a single reading. */
  readonly of: readonly (Source | Reading)[];
  /** What it adds to a reading, degrees; where its size is free, per degree of it. */
  readonly adds: (reading: Reading) => number;
  /** One sigma of its size, degrees, where it can have any. */
  readonly freeDeg?: number;
  /** So many sigma it has to be, where that is more than {@link SEEN_SIGMAS}: one of a family that is looked for at once. */
  readonly leastSigmas?: number;
  /** How often it happens, against nothing being wrong. */
  readonly odds: number;
}

/** A hypothesis beside the evidence. */
export interface Weighed<Name> {
  readonly hypothesis: Hypothesis<Name>;
  /** Natural logarithm of its odds against nothing being wrong, with the evidence. */
  readonly score: number;
  /** How many sigma of all that is known its effect is: where it is under {@link SEEN_SIGMAS}, noise hides it. Of a free one: as it comes out. */
  readonly sigmas: number;
  /** The size that the evidence gives it, as a multiple of what it adds, and one sigma of that. */
  readonly size: number;
  readonly sizeSigma: number;
}

/**
 * A hypothesis is only named where its effect is this many sigma of what is known: a little under three, because what is known is itself
 * only known to a tenth or so, and the score has to hold besides.
 */
export const SEEN_SIGMAS = 2.6;

/**
 * A hypothesis against nothing being wrong. Of a set size m: the ratio of two normal likelihoods, exp(v·y − v·v/2), v and y being what it
 * adds and the readings, freed of what binds them. Of a free size, the same averaged over all sizes: ½(v·y)²/(v·v + f⁻²) − ½ ln(1 + f² v·v).
 */
export function weigh<Name>(evidence: Evidence, hypothesis: Hypothesis<Name>): Weighed<Name> | undefined {
  const adds = solveLower(evidence.factor, evidence.readings.map(hypothesis.adds));
  const square = inner(adds, adds);
  if (square < 1e-12) return undefined;
  const fit = inner(adds, evidence.freed);
  const { freeDeg } = hypothesis;
  const ratio =
    freeDeg === undefined
      ? fit - square / 2
      : fit ** 2 / (square + freeDeg ** -2) / 2 - Math.log(1 + freeDeg ** 2 * square) / 2;
  const size = fit / square;
  return {
    hypothesis,
    score: ratio + Math.log(hypothesis.odds),
    sigmas: freeDeg === undefined ? Math.sqrt(square) : Math.abs(size) * Math.sqrt(square),
    size,
    sizeSigma: 1 / Math.sqrt(square),
  };
}

/** What was found wrong, the likeliest first, and what else would fit as well. */
export interface Found<Name> extends Weighed<Name> {
  readonly others: readonly Weighed<Name>[];
}

/** Another hypothesis is as good as the best where its odds are not less than about a fifth of it. */
const AS_GOOD = 1.6;
/** More blunders than this in one hole are no longer told apart. */
const MOST = 6;

/**
 * What is wrong with the readings, one thing after another: the likeliest hypothesis is taken, where it is likelier than nothing being
 * wrong, and what it adds is taken off; then the rest is looked at again, without what was found at fault.
 */
export function findBlunders<Name>(
  evidence: Evidence,
  hypotheses: readonly Hypothesis<Name>[],
): readonly Found<Name>[] {
  const found: Found<Name>[] = [];
  let rest = evidence;
  let open = hypotheses;
  while (found.length < MOST) {
    const likely = open
      .flatMap((one) => weigh(rest, one) ?? [])
      .filter((one) => one.score > 0 && one.sigmas >= (one.hypothesis.leastSigmas ?? SEEN_SIGMAS))
      .sort((a, b) => b.score - a.score);
    const [best] = likely;
    if (best === undefined) break;
    const { hypothesis } = best;
    found.push({
      ...best,
      others: likely.filter(
        (one) =>
          one !== best && best.score - one.score < AS_GOOD && sameSources(one.hypothesis.of, hypothesis.of),
      ),
    });
    const size = hypothesis.freeDeg === undefined ? 1 : best.size;
    const taken = solveLower(rest.factor, rest.readings.map(hypothesis.adds));
    rest = { ...rest, freed: rest.freed.map((value, index) => value - size * taken[index]!) };
    open = open.filter((one) => !one.of.some((each) => hypothesis.of.includes(each)));
  }
  return found;
}

const sameSources = (a: readonly unknown[], b: readonly unknown[]) =>
  a.length === b.length && a.every((one) => b.includes(one));
