import type { Tri } from '../../quantity/tri.ts';
import type { BlankSeries, PairSeries, Quality, StandardSeries } from './quality.ts';
import { controlChart } from './results.ts';

/** A figure as it is read aloud: at most four significant digits. */
export function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}

/** What is read off the charts of standards; the run rules are those of Western Electric, 1956, told in plain words. */
const CHART_KEY = '+ certified value, : 2 SD (warn), | 3 SD (fail), * the result';

/** The controls as lines of text, at most 78 wide: a chart a standard, a blank, the pairs. Told by figures and words, not by colour. */
export function qualityLines({ standards, blanks, pairs }: Quality): readonly string[] {
  return [
    ...(standards.length === 0 ? [] : [`Standards: ${CHART_KEY}`, ...standards.flatMap(standardLines)]),
    ...(blanks.length === 0 ? [] : ['', 'Blanks: | is the limit', ...blanks.flatMap(blankLines)]),
    ...(pairs.length === 0
      ? []
      : ['', 'Pairs, field duplicates beside their primaries', ...pairs.flatMap(pairLines)]),
  ];
}

/** One standard: its certified value, how its results lie, a line a result, the runs in them. */
function standardLines(series: StandardSeries): readonly string[] {
  const { lot, analyte, certified, sd, unit, scores, runs } = series;
  const mean = scores.reduce((sum, each) => sum + each.z, 0) / scores.length;
  const off = (state: 'warn' | 'fail') => scores.filter((each) => each.state === state).length;
  return [
    `${lot}, ${analyte} ${certified} ± ${sd} ${unit}: ${scores.length} results, mean ${signed(mean)} SD, ${off('warn')} warn, ${off('fail')} fail`,
    ...controlChart(scores).map((each) => `  ${each}`),
    ...runs.map((run) => `  run ${scores[run.from]?.number} to ${scores[run.at]?.number}: ${run.words}`),
  ];
}

const LIMIT_CELLS = 20;

/** One blank: its limit, a line a result as a bar towards it. */
function blankLines({ material, analyte, unit, limit, results }: BlankSeries): readonly string[] {
  const counted = (how: Tri): number => results.filter((each) => each.over === how).length;
  const untold = counted('cannot tell');
  return [
    `${material}, ${analyte}, limit ${limit} ${unit}: ${results.length} results, ${counted('yes') || 'none'} over${untold === 0 ? '' : `, ${untold} can't tell`}`,
    ...results.map(({ number, value, over, belowLimit }) => {
      if (over === 'cannot tell')
        return `  ${number} ${' '.repeat(LIMIT_CELLS)}| <${figure(belowLimit ?? value)}  can't tell`;
      const cells =
        limit === 0 ? (over === 'yes' ? LIMIT_CELLS + 1 : 0) : Math.round((value / limit) * LIMIT_CELLS);
      const bar = '*'.repeat(Math.min(cells, 2 * LIMIT_CELLS)).padEnd(LIMIT_CELLS);
      const marked = `${bar.slice(0, LIMIT_CELLS)}|${bar.slice(LIMIT_CELLS)}`;
      return `  ${number} ${marked} ${figure(value)}${over === 'yes' ? '  OVER' : ''}`;
    }),
  ];
}

/** Pairs of one analyte: how far apart they are, on the whole and one by one, the furthest apart first. */
export function pairLines({ analyte, unit, pairs, variationPercent }: PairSeries): readonly string[] {
  const whole =
    variationPercent === undefined ? 'no variation' : `root-mean-square CV ${variationPercent.toFixed(1)} %`;
  const sorted = [...pairs].sort((a, b) => (b.difference ?? 0) - (a.difference ?? 0));
  return [
    `${analyte} in ${unit}: ${pairs.length} pairs, ${whole}`,
    ...sorted.map(({ primary, duplicate, a, b, difference }) => {
      const bar = '*'.repeat(Math.round((difference ?? 0) / 10));
      return `  ${primary} ${figure(a).padStart(8)}  ${duplicate} ${figure(b).padStart(8)}  ${`${(difference ?? 0).toFixed(0)} %`.padStart(5)} ${bar}`;
    }),
  ];
}

function signed(value: number): string {
  return `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(1)}`;
}
