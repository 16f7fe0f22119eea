import { performance } from 'node:perf_hooks';
import { azimuth } from '../../src/quantity/azimuth.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { dip } from '../../src/quantity/dip.ts';
import { pathThrough, type Station } from '../../src/survey/path/path.ts';
import { pathByMetre } from '../../src/survey/path/projection.ts';

const HOLES = 1000;
const SHOTS = 60;
const SPACING_M = 5;

/** What the benchmark of survey found. */
export interface SurveyBench {
  readonly holes: number;
  readonly metres: number;
  readonly pathsMs: number;
  readonly trigonometryMs: number;
  /** The paths' time to that of the same trigonometry alone. */
  readonly ratio: number;
  readonly lines: readonly string[];
}

/** A wandering hole of the benchmark, the same each time. */
function stationsOf(hole: number): readonly Station[] {
  return Array.from({ length: SHOTS + 1 }, (_, index) => ({
    depthMm: depthFromMetres(index * SPACING_M),
    azimuth: azimuth(hole * 7 + index * 0.11 + Math.sin(index + hole) * 0.4, 'grid'),
    dip: dip(-60 + index * 0.08 + Math.cos(index * 1.3 + hole) * 0.3),
    basis: index === 0 ? 'set' : 'measured',
  }));
}

/** The trigonometry that the paths of one hole can't do without, its results summed: nothing kept, nothing made. */
function trigonometryOf(stations: readonly Station[]): number {
  let sum = 0;
  for (let index = 1; index < stations.length; index++) {
    const { azimuth: a, dip: d } = stations[index]!;
    const rad = Math.PI / 180;
    sum += Math.sin(a.deg * rad) + Math.cos(a.deg * rad) + Math.sin(d * rad) + Math.cos(d * rad);
    sum += Math.sin(d * 0.5 * rad) + Math.sin(a.deg * 0.5 * rad) + Math.atan2(sum, 1) + Math.tan(d * rad);
    for (let metre = 0; metre < SPACING_M; metre++) {
      const theta = metre * 0.001 * d;
      sum += Math.sin(theta) + Math.cos(theta) + Math.sin(theta / 2);
      sum += Math.atan2(theta, a.deg) + Math.atan2(d, theta) + Math.hypot(theta, d);
    }
  }
  return sum;
}

/** The shortest of several runs: what else the machine was doing only ever adds. */
function timed(work: () => number): number {
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...times);
}

/** A thousand holes of sixty shots with a position each metre, beside the same loop doing only the trigonometry. */
export function benchSurvey(): SurveyBench {
  const all = Array.from({ length: HOLES }, (_, hole) => stationsOf(hole));
  const foot = depthFromMetres(SHOTS * SPACING_M);
  let metres = 0;
  const pathsMs = timed(() => {
    metres = 0;
    for (const stations of all) {
      const path = pathThrough(stations, {});
      if (path.ok) metres += pathByMetre(path.value, foot).length;
    }
    return metres;
  });
  let kept = 0;
  const trigonometryMs = timed(() => {
    for (const stations of all) kept += trigonometryOf(stations);
    return kept;
  });
  if (!Number.isFinite(kept)) throw new Error('the trigonometry came to nothing');
  const ratio = pathsMs / trigonometryMs;
  return {
    holes: HOLES,
    metres,
    pathsMs,
    trigonometryMs,
    ratio,
    lines: [
      `survey: ${HOLES} holes × ${SHOTS} shots, ${metres} positions in ${pathsMs.toFixed(0)} ms`,
      `survey: the trigonometry alone ${trigonometryMs.toFixed(0)} ms, ratio ${ratio.toFixed(1)}`,
    ],
  };
}
