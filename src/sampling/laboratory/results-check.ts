import type { Finding } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import {
  blankHigh,
  blankUntold,
  duplicateApart,
  resultOfNoBag,
  standardOff,
  standardRun,
} from '../findings.ts';
import { isTransposed } from '../numbers/bag-number.ts';
import { NEAR_SPLITTER } from '../rod/mismatch.ts';
import type { Sampling } from '../sampling.ts';
import { blankResults, duplicateResults, type StandardScore, standardScores } from './results.ts';
import type { Assay } from './results-read.ts';
import { runsIn } from './run-rules.ts';
import { suspectedSwap } from './swaps.ts';

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
    ...checkStandards(sampling, bags, assays),
    ...checkBlanks(sampling, bags, assays),
    ...checkDuplicates(bags, assays),
  ];
}

/** Results of numbers that no bag has; the bag that it may be, where two of its digits swapped make one without a result. */
function strangers(bags: readonly Bag[], assays: readonly Assay[]): readonly Finding[] {
  const known = new Map(bags.map((bag) => [bag.number, bag]));
  const returned = new Set(assays.map((assay) => assay.number));
  return assays
    .filter((assay) => (known.get(assay.number)?.kind ?? 'spoiled') === 'spoiled')
    .map(({ number }) => {
      const near = bags.find(
        (bag) => bag.kind !== 'spoiled' && !returned.has(bag.number) && isTransposed(bag.number, number),
      );
      return resultOfNoBag.at(
        { thing: `sample ${number}` },
        {
          problem: known.has(number)
            ? `${number} is spoiled and has a result.`
            : `No bag of this project has the number ${number}.`,
          remedy:
            near === undefined
              ? 'Ask the laboratory whose it is, and to read the calico again.'
              : `${near.number} has no result: ask the laboratory whether two digits are the wrong way round.`,
        },
      );
    });
}

function checkStandards(
  sampling: Sampling,
  bags: readonly Bag[],
  assays: readonly Assay[],
): readonly Finding[] {
  const scores = standardScores(sampling, bags, assays);
  const off = scores
    .filter((score) => score.state !== 'in')
    .map((score) =>
      standardOff.at(
        { thing: `sample ${score.number}`, field: score.analyte },
        {
          excerpt: `${score.value}`,
          problem: `Standard ${score.lot} reads ${inDeviations(score.z)}${score.state === 'fail' ? ': it fails' : ''}.`,
          remedy:
            score.state === 'warn'
              ? 'One is chance. Look at the standards before and after it.'
              : (suspectedSwap(sampling, bags, assays, score) ??
                'Ask the laboratory to run its batch again.'),
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

/** Runs of one standard and analyte. */
function checkRuns(scores: readonly StandardScore[]): readonly Finding[] {
  return runsIn(scores.map((score) => score.z)).flatMap(({ from, at, words }) => {
    const score = scores[at];
    if (score === undefined) return [];
    return [
      standardRun.at(
        { thing: `sample ${score.number}`, field: score.analyte },
        {
          problem: `Standard ${score.lot}: ${words}, from ${scores[from]?.number} to here.`,
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
  const blanks = blankResults(sampling, bags, assays);
  const untold = blanks
    .filter((blank) => blank.over === 'cannot tell')
    .map((blank) =>
      blankUntold.at(
        { thing: `sample ${blank.number}`, field: blank.analyte },
        {
          excerpt: `<${blank.belowLimit}`,
          problem: `Can't tell whether blank ${blank.material} is clean: it shows <${blank.belowLimit}, and its limit is ${blank.limit}.`,
          remedy:
            'Ask the laboratory for a method that reads below the limit, or set a limit that this one can show.',
        },
      ),
    );
  const high = blanks
    .filter((blank) => blank.over === 'yes')
    .map((blank) =>
      blankHigh.at(
        { thing: `sample ${blank.number}`, field: blank.analyte },
        {
          excerpt: `${blank.value}`,
          problem: `Blank ${blank.material} shows ${blank.value}; its limit is ${blank.limit}.`,
          remedy:
            suspectedSwap(sampling, bags, assays, blank) ??
            'Look at the samples before it for a high one, and ask for them to be run again.',
        },
      ),
    );
  return [...high, ...untold];
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
            problem: `The pair is ${pair.difference?.toFixed(0)} % apart.`,
            remedy: `One pair says little: look at all pairs together. If many are so, the splitter may be out of level. ${NEAR_SPLITTER}`,
          },
        ),
      ),
  );
}
