import type { Bag } from '../../hole/bags.ts';
import type { Sampling } from '../sampling.ts';
import { rootMeanSquareVariation } from './pairs.ts';
import {
  type BlankResult,
  blankResults,
  type DuplicateResult,
  duplicateResults,
  type StandardScore,
  standardScores,
} from './results.ts';
import { type Assay, countedUnit } from './results-read.ts';
import { type Run, runsIn } from './run-rules.ts';

/** One standard and analyte: its certified value, its scores in the laboratory's order, the runs in them. */
export interface StandardSeries {
  readonly lot: string;
  readonly analyte: string;
  readonly unit: string;
  readonly certified: number;
  readonly sd: number;
  readonly scores: readonly StandardScore[];
  readonly runs: readonly Run[];
}

/** One blank and analyte with its limit. */
export interface BlankSeries {
  readonly material: string;
  readonly analyte: string;
  readonly unit: string;
  readonly limit: number;
  readonly results: readonly BlankResult[];
}

/** Pairs of one analyte, with their root-mean-square coefficient of variation in percent; undefined where there is none. */
export interface PairSeries {
  readonly analyte: string;
  readonly unit: string;
  readonly pairs: readonly DuplicateResult[];
  readonly variationPercent?: number;
}

/** What the controls say of returned results, apart by what they are: for charts, on the screen and in the report. */
export interface Quality {
  readonly standards: readonly StandardSeries[];
  readonly blanks: readonly BlankSeries[];
  readonly pairs: readonly PairSeries[];
}

/** The controls of results, `assays` in the order in which the laboratory reported them. Series without a result are left out. */
export function qualityOf(sampling: Sampling, bags: readonly Bag[], assays: readonly Assay[]): Quality {
  const scores = standardScores(sampling, bags, assays);
  const blanks = blankResults(sampling, bags, assays);
  const analytes = [...new Set(sampling.results?.analytes.map((each) => each.analyte) ?? [])];
  return {
    standards: sampling.standards
      .flatMap((standard) =>
        (standard.certified ?? []).map((value) => standardSeries(sampling, standard.lot, value, scores)),
      )
      .filter((series) => series.scores.length > 0),
    blanks: sampling.blanks
      .flatMap((blank) =>
        (blank.limits ?? []).map(({ analyte, limit }) => ({
          material: blank.name,
          analyte,
          unit: countedUnit(sampling.results, analyte),
          limit,
          results: blanks.filter((each) => each.material === blank.name && each.analyte === analyte),
        })),
      )
      .filter((series) => series.results.length > 0),
    pairs: analytes
      .map((analyte) => pairSeries(sampling, bags, assays, analyte))
      .filter((series) => series.pairs.length > 0),
  };
}

function standardSeries(
  sampling: Sampling,
  lot: string,
  { analyte, value, sd }: { readonly analyte: string; readonly value: number; readonly sd: number },
  scores: readonly StandardScore[],
): StandardSeries {
  const own = scores.filter((each) => each.lot === lot && each.analyte === analyte);
  const unit = countedUnit(sampling.results, analyte);
  const runs = runsIn(own.map((each) => each.z));
  return { lot, analyte, unit, certified: value, sd, scores: own, runs };
}

function pairSeries(
  sampling: Sampling,
  bags: readonly Bag[],
  assays: readonly Assay[],
  analyte: string,
): PairSeries {
  const pairs = duplicateResults(bags, assays, analyte);
  const variation = rootMeanSquareVariation(pairs);
  return {
    analyte,
    unit: countedUnit(sampling.results, analyte),
    pairs,
    ...(variation === undefined ? {} : { variationPercent: variation }),
  };
}
