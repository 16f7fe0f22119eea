import type { Finding } from '../finding/finding.ts';
import type { Bag } from '../hole/bags.ts';
import { blankHigh } from './findings/blank-high.ts';
import { duplicateApart } from './findings/duplicate-apart.ts';
import { resultOfNoBag } from './findings/result-of-no-bag.ts';
import { standardOff } from './findings/standard-off.ts';
import { standardRun } from './findings/standard-run.ts';
import { blankResults, duplicateResults, type StandardScore, standardScores } from './results.ts';
import type { Assay } from './results-read.ts';
import { runSignals } from './run-rules.ts';
import type { Sampling } from './sampling.ts';

/** A pair further apart than this, percent of its mean, is remarked on; common practice for field duplicates of gold. */
const FAR_APART = 50;

/** What the controls say of returned results. `assays` stand in the order in which the laboratory reported them. */
export function checkResults(
  sampling: Sampling,
  bags: readonly Bag[],
  assays: readonly Assay[],
): readonly Finding[] {
  return [
    ...strangers(bags, assays),
    ...checkStandards(standardScores(sampling, bags, assays)),
    ...checkBlanks(sampling, bags, assays),
    ...checkDuplicates(bags, assays),
  ];
}

function strangers(bags: readonly Bag[], assays: readonly Assay[]): readonly Finding[] {
  const known = new Set(bags.filter((bag) => bag.kind !== 'void').map((bag) => bag.number));
  return assays
    .filter((assay) => !known.has(assay.number))
    .map((assay) =>
      resultOfNoBag.at(
        { thing: `sample ${assay.number}` },
        {
          problem: `No bag of this project has the number ${assay.number}.`,
          remedy: 'Ask the laboratory whose it is. Look for two digits the wrong way round.',
        },
      ),
    );
}

function checkStandards(scores: readonly StandardScore[]): readonly Finding[] {
  const off = scores
    .filter((score) => score.state !== 'in')
    .map((score) =>
      standardOff.at(
        { thing: `sample ${score.number}`, field: score.analyte },
        {
          excerpt: `${score.value}`,
          problem: `Standard ${score.lot} reads ${inDeviations(score.z)}${score.state === 'fail' ? ': it fails' : ''}.`,
          remedy:
            score.state === 'fail'
              ? 'Ask the laboratory to run its batch again, and look whether the sachet was another one.'
              : 'One is chance. Look at the standards before and after it.',
        },
      ),
    );
  return [...off, ...seriesOf(scores).flatMap(checkRuns)];
}

/** Scores apart by standard and analyte, each series in its order. */
function seriesOf(scores: readonly StandardScore[]): readonly (readonly StandardScore[])[] {
  const series = new Map<string, StandardScore[]>();
  for (const score of scores) {
    const key = `${score.lot}\n${score.analyte}`;
    series.set(key, [...(series.get(key) ?? []), score]);
  }
  return [...series.values()];
}

/** Runs of one standard and analyte. A single point over 3 SD is a failure already, not a run. */
function checkRuns(scores: readonly StandardScore[]): readonly Finding[] {
  const runs = runSignals(scores.map((score) => score.z)).filter(
    (signal) => signal.words !== 'more than 3 SD off',
  );
  return runs.flatMap(({ at, words }) => {
    const score = scores[at];
    if (score === undefined) return [];
    return [
      standardRun.at(
        { thing: `sample ${score.number}`, field: score.analyte },
        {
          problem: `Standard ${score.lot}: ${words}, up to here.`,
          remedy: 'Ask the laboratory what changed since the run began.',
        },
      ),
    ];
  });
}

function inDeviations(z: number): string {
  return `${Math.abs(z).toFixed(1)} SD ${z < 0 ? 'low' : 'high'}`;
}

function checkBlanks(sampling: Sampling, bags: readonly Bag[], assays: readonly Assay[]): readonly Finding[] {
  return blankResults(sampling, bags, assays)
    .filter((blank) => blank.over)
    .map((blank) =>
      blankHigh.at(
        { thing: `sample ${blank.number}`, field: blank.analyte },
        {
          excerpt: `${blank.value}`,
          problem: `Blank ${blank.material} shows ${blank.value}; its limit is ${blank.limit}.`,
          remedy: 'Look at the samples before it for a high one, and ask for them to be run again.',
        },
      ),
    );
}

function checkDuplicates(bags: readonly Bag[], assays: readonly Assay[]): readonly Finding[] {
  const analytes = new Set(assays.flatMap((assay) => Object.keys(assay.values)));
  return [...analytes].flatMap((analyte) =>
    duplicateResults(bags, assays, analyte)
      .filter((pair) => (pair.difference ?? 0) > FAR_APART)
      .map((pair) =>
        duplicateApart.at(
          { thing: `samples ${pair.primary} and ${pair.duplicate}`, field: analyte },
          {
            excerpt: `${pair.a}, ${pair.b}`,
            problem: `The pair lies ${pair.difference?.toFixed(0)} % apart.`,
            remedy: 'One pair says little: look at all pairs together, and at the splitter if many are so.',
          },
        ),
      ),
  );
}
