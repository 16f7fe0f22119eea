import { type Evidence, inheritsLineUp, type Reading, type Source } from './evidence.ts';
import { addsDeg as addsOf, NORTH_BLUNDERS, type NorthBlunder } from './north-blunders.ts';
import type { Hypothesis } from './weigh.ts';

/** What a hypothesis is called: one of the blunders of norths, or what is off by an angle of its own. */
export type BlunderName =
  | { readonly what: 'north'; readonly blunder: NorthBlunder; readonly addsDeg: number }
  | { readonly what: 'gyro misaligned' }
  | { readonly what: 'run off' }
  | { readonly what: 'line-up off' }
  | { readonly what: 'drift'; readonly run: 'both' | 'in' | 'out' }
  | { readonly what: 'drift beside'; readonly beside: readonly Source[] }
  | { readonly what: 'steel' }
  | { readonly what: 'shot off'; readonly reading: Reading };

/**
 * Drift is looked for three ways in azimuth and in dip of each run in with its run out, and what a gyro creeps while it warms up looks like it. So
 * that of a hundred sound pairs no more than one is doubted (by surveys drawn with such creep 0.9 % of 6,000; by normal errors alone 1 in 2,600),
 * one way has to be this many sigma.
 */
const DRIFT_SIGMAS = 4;

/** How far off each can be, degrees (one sigma), and how often it is. From memory. */
const FREE = {
  misaligned: { freeDeg: 5, odds: 1 / 8 },
  runOff: { freeDeg: 6, odds: 1 / 150 },
  lineUpOff: { freeDeg: 5, odds: 1 / 150 },
  drift: { freeDeg: 2, odds: 1 / 20, leastSigmas: DRIFT_SIGMAS },
  driftOfOne: { freeDeg: 2, odds: 1 / 40, leastSigmas: DRIFT_SIGMAS },
  driftBeside: { freeDeg: 4, odds: 1 / 40 },
  steel: { freeDeg: 10, odds: 1 / 90 },
  shotOff: { freeDeg: 15, odds: 1 / 300 },
} as const;

/** Everything that may be wrong with the readings of one kind. Norths are mixed up in azimuths only. */
export function hypothesesOf(
  { readings }: Evidence,
  kind: 'azimuth' | 'dip',
): readonly Hypothesis<BlunderName>[] {
  const sources = [...new Set(readings.map((one) => one.source))];
  const groups = setUpAlike(sources);
  return [
    ...(kind === 'azimuth' ? groups.flatMap((of) => [...northBlunders(of), ...misaligned(of)]) : []),
    ...groups.filter(([first]) => first?.toolClass !== 'line-up').flatMap((of) => runOff(of)),
    ...(sources.some((one) => one.toolClass === 'line-up') ? [lineUpOff(sources, kind)] : []),
    ...drifts(sources, readings),
    ...(kind === 'azimuth'
      ? [
          ...sources.flatMap((one) => driftBeside(one, sources, readings)),
          ...sources.flatMap((one) => steel(one, readings)),
        ]
      : []),
    ...readings
      .filter((one) => one.source.toolClass !== 'line-up')
      .map((reading) => ({
        name: { what: 'shot off' as const, reading },
        of: [reading],
        adds: (one: Reading) => (one === reading ? 1 : 0),
        ...FREE.shotOff,
      })),
  ];
}

/** Each source by itself, and those of one tool that give one north together: what was set wrong in one was likely set wrong in all. */
function setUpAlike(sources: readonly Source[]): readonly (readonly Source[])[] {
  const key = ({ tool, toolClass, north }: Source) => `${toolClass} ${north} ${tool}`;
  const together = [...new Set(sources.map(key))].map((each) => sources.filter((one) => key(one) === each));
  return [...together, ...together.filter((one) => one.length > 1).flatMap((all) => all.map((one) => [one]))];
}

const among = (of: readonly Source[], adds: number) => {
  // What the line-up is off, a gyro aligned to it is off.
  const all = of.some((one) => one.toolClass === 'line-up');
  return ({ source }: Reading) => (of.includes(source) || (all && inheritsLineUp(source)) ? adds : 0);
};

function northBlunders(of: readonly Source[]): readonly Hypothesis<BlunderName>[] {
  const [first] = of;
  if (first === undefined) return [];
  return NORTH_BLUNDERS.filter(({ applies }) => applies(first)).flatMap((blunder) => {
    const addsDeg = addsOf(blunder, first);
    if (addsDeg === undefined) return [];
    return [
      {
        name: { what: 'north' as const, blunder, addsDeg },
        of,
        adds: among(of, addsDeg),
        odds: blunder.odds,
      },
    ];
  });
}

function misaligned(of: readonly Source[]): readonly Hypothesis<BlunderName>[] {
  if (of[0]?.toolClass !== 'gyro aligned at the collar') return [];
  return [{ name: { what: 'gyro misaligned' }, of, adds: among(of, 1), ...FREE.misaligned }];
}

function runOff(of: readonly Source[]): readonly Hypothesis<BlunderName>[] {
  return [{ name: { what: 'run off' }, of, adds: among(of, 1), ...FREE.runOff }];
}

function lineUpOff(sources: readonly Source[], kind: 'azimuth' | 'dip'): Hypothesis<BlunderName> {
  const of = sources.filter((one) => one.toolClass === 'line-up');
  const adds =
    kind === 'azimuth' ? among(of, 1) : ({ source }: Reading) => (source.toolClass === 'line-up' ? 1 : 0);
  return { name: { what: 'line-up off' }, of, adds, ...FREE.lineUpOff };
}

/**
 * A run in and the run out of the same tool: what drifts goes on drifting, so that the out run is as far off as the in run at the
 * bottom, and twice as far at the collar; or only one of them drifts. Its size is the drift from one end of the hole to the other.
 */
function drifts(
  sources: readonly Source[],
  readings: readonly Reading[],
): readonly Hypothesis<BlunderName>[] {
  return sources
    .filter(({ pass, toolClass }) => pass === 'in' && toolClass !== 'magnetic')
    .flatMap((inRun) =>
      sources
        .filter((out) => out.pass === 'out' && out.tool === inRun.tool && out.toolClass === inRun.toolClass)
        .flatMap((out) => {
          const deepest = Math.max(
            1,
            ...readings.filter((one) => one.source === inRun || one.source === out).map((one) => one.depthMm),
          );
          const of = [inRun, out];
          const inward = ({ source, depthMm }: Reading) => (source === inRun ? depthMm / deepest : 0);
          const outward = ({ source, depthMm }: Reading) => (source === out ? 1 - depthMm / deepest : 0);
          const bothWays = (one: Reading) => inward(one) + outward(one) + (one.source === out ? 1 : 0);
          const drift = (run: 'both' | 'in' | 'out') => ({ what: 'drift' as const, run });
          return [
            { name: drift('both'), of, adds: bothWays, ...FREE.drift },
            { name: drift('in'), of, adds: inward, ...FREE.driftOfOne },
            { name: drift('out'), of, adds: outward, ...FREE.driftOfOne },
          ];
        }),
    );
}

/** Fewer readings than this show no slope. */
const FEWEST_READINGS = 3;

/**
 * A gyro that was aligned at the collar beside tools that find north: what it drifts grows with the time down the hole, and nothing in its
 * own run shows it. Its size is the drift from the collar to its deepest reading.
 */
function driftBeside(
  gyro: Source,
  sources: readonly Source[],
  readings: readonly Reading[],
): readonly Hypothesis<BlunderName>[] {
  const own = readings.filter((one) => one.source === gyro);
  const deepest = Math.max(1, ...own.map((one) => one.depthMm));
  const beside = sources.filter(
    (one) =>
      !inheritsLineUp(one) &&
      readings.filter((each) => each.source === one && each.depthMm <= deepest).length >= FEWEST_READINGS,
  );
  if (gyro.toolClass !== 'gyro aligned at the collar' || gyro.pass === 'out') return [];
  if (own.length < FEWEST_READINGS || beside.length === 0) return [];
  return [
    {
      name: { what: 'drift beside', beside },
      of: [gyro],
      adds: ({ source, depthMm }) => (source === gyro ? depthMm / deepest : 0),
      ...FREE.driftBeside,
    },
  ];
}

/** Steel at the collar draws a magnetic tool less and less over such lengths of hole: casing of 6 to 30 m and what stands over it. From memory. */
const STEEL_OVER_MM = [12_000, 20_000, 32_000] as const;
/** Below this nothing at the collar draws it. */
const STEEL_TO_MM = 70_000;

/** True of a depth where a magnetic reading that is off may be steel at the collar. */
export function isNearCollar(depthMm: number): boolean {
  return depthMm <= STEEL_TO_MM / 2;
}

/** What steel at the collar (casing, rods stacked, the rig) adds to a magnetic tool. Its size is what it adds to the shallowest reading. */
function steel(run: Source, readings: readonly Reading[]): readonly Hypothesis<BlunderName>[] {
  const own = readings.filter((one) => one.source === run).map((one) => one.depthMm);
  const first = Math.min(...own);
  if (run.toolClass !== 'magnetic' || own.length === 0 || !isNearCollar(first)) return [];
  const part = (depthMm: number, overMm: number) =>
    depthMm > STEEL_TO_MM ? 0 : Math.exp((first - depthMm) / overMm);
  return STEEL_OVER_MM.map((overMm) => ({
    name: { what: 'steel' },
    of: [run],
    adds: ({ source, depthMm }: Reading) => (source === run ? part(depthMm, overMm) : 0),
    ...FREE.steel,
  }));
}
