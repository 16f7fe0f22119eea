import type { StreamFact } from '../../hole/drilled.ts';
import { type Mass, massFromGrams } from '../../quantity/mass.ts';

/**
 * Mass of rock in a length of hole, π/4 · d² · L · ρ, in whole grams. `bitMm` is the bit as measured, `densityGcm3` the rock's
 * density in g/cm³ (t/m³). Throws RangeError unless all are over 0.
 */
export function expectedMass(bitMm: number, lengthMm: number, densityGcm3: number): Mass {
  if (!(bitMm > 0 && lengthMm > 0 && densityGcm3 > 0))
    throw new RangeError(`bit, length and density must be over 0, got ${bitMm}, ${lengthMm}, ${densityGcm3}`);
  const cubicMm = (Math.PI / 4) * bitMm ** 2 * lengthMm;
  return massFromGrams(Math.round((cubicMm / 1000) * densityGcm3));
}

/** What a metre was drilled with and in. */
export interface DrilledMetre {
  readonly fromMm: number;
  readonly toMm: number;
  readonly bitMm: number;
  readonly densityGcm3: number;
  /** It is logged as a void from top to bottom: it holds no rock, and what came up of it is of another metre. */
  readonly isVoid?: boolean;
  /** Water in what was weighed, in percent of its mass, where the laboratory or an oven gave it; else it counts as dry. */
  readonly moisturePercent?: number;
  readonly fact: Pick<StreamFact, 'bulkG' | 'splitG' | 'duplicateG' | 'moisture' | 'recovery'>;
}

/** Recovery of a metre: from masses, or by eye. */
export interface Recovery {
  readonly fromMm: number;
  readonly toMm: number;
  /** What it holds; none of a void. */
  readonly expectedG?: number;
  /** Dry mass of bulk and all splits; only where the bulk bag was weighed. */
  readonly recoveredG?: number;
  readonly percent?: number;
  readonly seen?: StreamFact['recovery'];
  readonly splitG?: number;
  readonly moisture?: StreamFact['moisture'];
}

/** Recovery of a metre: bulk and every split, less their water, in percent of the mass that the metre holds. Splits alone give none, nor does a void. */
export function recoveryOf(metre: DrilledMetre): Recovery {
  const { fact } = metre;
  const expectedG =
    metre.isVoid === true
      ? undefined
      : expectedMass(metre.bitMm, metre.toMm - metre.fromMm, metre.densityGcm3);
  const dry = 1 - (metre.moisturePercent ?? 0) / 100;
  const recoveredG =
    fact.bulkG === undefined
      ? undefined
      : Math.round((fact.bulkG + (fact.splitG ?? 0) + (fact.duplicateG ?? 0)) * dry);
  return {
    fromMm: metre.fromMm,
    toMm: metre.toMm,
    ...(expectedG === undefined ? {} : { expectedG }),
    ...(recoveredG === undefined ? {} : { recoveredG }),
    ...(recoveredG === undefined || expectedG === undefined
      ? {}
      : { percent: (100 * recoveredG) / expectedG }),
    ...(fact.recovery === undefined ? {} : { seen: fact.recovery }),
    ...(fact.splitG === undefined ? {} : { splitG: fact.splitG }),
    ...(fact.moisture === undefined ? {} : { moisture: fact.moisture }),
  };
}

/**
 * Change of recovery with depth, percent a hundred metres: the middle of the slopes between every two weighed metres, so that a
 * few odd weights don't make it (Theil–Sen; Sen 1968, Journal of the American Statistical Association 63, 1379–1389). Undefined
 * under ten weighed metres.
 */
export function recoveryTrend(metres: readonly Recovery[]): number | undefined {
  const weighed = metres.flatMap(({ fromMm, percent }) =>
    percent === undefined ? [] : [{ fromMm, percent }],
  );
  if (weighed.length < 10) return undefined;
  const slopes = weighed.flatMap((upper, index) =>
    weighed
      .slice(index + 1)
      .filter((lower) => lower.fromMm !== upper.fromMm)
      .map((lower) => ((lower.percent - upper.percent) / (lower.fromMm - upper.fromMm)) * 100_000),
  );
  return middle(slopes);
}

function middle(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half];
  if (upper === undefined) return undefined;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? upper)) / 2;
}
