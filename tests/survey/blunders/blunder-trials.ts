import type { Shot, SurveyRun } from '../../../src/hole/direction.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { type HoleSurvey, surveyHole } from '../../../src/survey/hole-survey.ts';
import {
  type Draw,
  drawFrom,
  fromGrid,
  holeDrawn,
  LINE_UP,
  neighboursDrawn,
  type PlaceDrawn,
  placeDrawn,
  programDrawn,
  type RunDrawn,
  recordOf,
  runDrawn,
  TOOL,
  type TrueHole,
} from './drawn-holes.ts';

/** What a run is beside. */
export const BESIDE = ['line-up', 'plan', 'another run', 'neighbours'] as const;
export type Beside = (typeof BESIDE)[number];

/** A hole drawn, its line-up and its runs, before anything goes wrong. */
interface Drawn {
  readonly draw: Draw;
  readonly place: PlaceDrawn;
  readonly hole: TrueHole;
  readonly plan: { readonly azimuthDeg: number; readonly dipDeg: number };
  readonly lineUp: { readonly azimuthDeg: number; readonly dipDeg: number } | undefined;
  readonly lineUpErrorDeg: number;
  readonly beside: Beside;
  readonly program: ReturnType<typeof programDrawn>;
}

function drawn(seed: number, wantedDeg: number, beside: Beside, zonesOff = 0): Drawn {
  const draw = drawFrom(seed);
  const place = placeDrawn(draw, wantedDeg, zonesOff);
  const program = programDrawn(draw);
  const plan = { azimuthDeg: draw.uniform() * 360, dipDeg: -50 - draw.uniform() * 20 };
  const start = { azimuthDeg: plan.azimuthDeg + draw.normal(0.7), dipDeg: plan.dipDeg + draw.normal(0.3) };
  const hole = holeDrawn(draw, program, start.azimuthDeg, start.dipDeg);
  const lineUpErrorDeg = draw.normal(LINE_UP.azimuth);
  const lineUp = {
    azimuthDeg: (((start.azimuthDeg + lineUpErrorDeg) % 360) + 360) % 360,
    dipDeg: Number((start.dipDeg + draw.normal(LINE_UP.dip)).toFixed(1)),
  };
  return {
    draw,
    place,
    hole,
    plan,
    lineUp: beside === 'plan' ? undefined : lineUp,
    lineUpErrorDeg,
    beside,
    program,
  };
}

const otherTool = (one: Drawn, toolClass: RunDrawn['toolClass']): readonly RunDrawn[] =>
  one.beside !== 'another run'
    ? []
    : [
        runDrawn(one.draw, one.hole, {
          id: 'other',
          tool: 'tool 9',
          toolClass: toolClass === 'north-seeking gyro' ? 'magnetic' : 'north-seeking gyro',
          ...(toolClass === 'north-seeking gyro' ? {} : { pass: 'in' as const, everyM: 10 }),
        }),
      ];

const neighbours = ({ beside, draw, program, plan }: Drawn) =>
  beside === 'neighbours' ? neighboursDrawn(draw, program, plan.azimuthDeg, plan.dipDeg) : [];

/** One sigma of what is known of an azimuth all the way down a run, worked out by hand: tools, line-up or plan, the bend down to its first shot. */
function knownSigmaDeg({ beside, plan }: Drawn, run: RunDrawn): number {
  const own = TOOL[run.toolClass];
  const count = run.shots.length;
  const tool = Math.hypot(own.systematic, own.random / Math.sqrt(count));
  if (beside === 'another run') {
    const other = TOOL[run.toolClass === 'north-seeking gyro' ? 'magnetic' : 'north-seeking gyro'];
    const inherits = run.toolClass === 'gyro aligned at the collar' ? LINE_UP.azimuth : 0;
    return Math.hypot(tool, other.systematic, other.random / Math.sqrt(count), inherits);
  }
  const across = Math.cos((plan.dipDeg * Math.PI) / 180);
  const rate = beside === 'neighbours' ? 0.3 : 0.45;
  const deep = (run.shots[0]?.[0] ?? 0) / 30;
  const bend = Math.hypot(rate * deep, 0.25 * Math.sqrt(deep)) / across;
  const start = beside === 'plan' ? 2 : LINE_UP.azimuth;
  // A gyro that is aligned to the line-up is off with it.
  return run.toolClass === 'gyro aligned at the collar' && beside !== 'plan'
    ? Math.hypot(tool, bend)
    : Math.hypot(
        tool,
        start,
        bend,
        own.random,
        run.toolClass === 'gyro aligned at the collar' ? LINE_UP.azimuth : 0,
      );
}

/** One blunder of a trial: the run as recorded, what every azimuth of it is off, what is to be read of it. */
interface Trial {
  readonly survey: HoleSurvey;
  readonly effectDeg: number;
  readonly sigmaDeg: number;
}

/** A kind of blunder: how it is made, and what the first named finding is to say. */
export interface BlunderKind {
  readonly name: string;
  readonly reads: string;
  readonly make: (seed: number, wantedDeg: number, beside: Beside) => Trial;
}

/** A run whose azimuths are recorded from a north that is not theirs. */
function northKind(
  name: string,
  reads: string,
  toolClass: RunDrawn['toolClass'],
  recorded: SurveyRun['north'],
  given: (gridDeg: number, place: PlaceDrawn) => number,
  offDeg: (place: PlaceDrawn) => number,
  zonesOff = 0,
): BlunderKind {
  return {
    name,
    reads,
    make: (seed, wantedDeg, beside) => {
      const one = drawn(seed, wantedDeg, beside, wantedDeg > 0 ? zonesOff : -zonesOff);
      const everyM = toolClass === 'north-seeking gyro' ? 10 : 30;
      const run = {
        ...runDrawn(one.draw, one.hole, {
          id: 'own',
          tool: 'tool 7',
          toolClass,
          everyM,
          pass: toolClass === 'magnetic' ? 'single' : 'in',
          lineUpErrorDeg: one.lineUpErrorDeg,
        }),
        north: recorded,
      };
      const survey = surveyHole(
        recordOf(one.place, one.hole, {
          ...one,
          runs: [run, ...otherTool(one, toolClass)],
          neighbours: neighbours(one),
          given: (each, index) =>
            each === run ? { azimuthDeg: given(run.shots[index]![1], one.place) } : {},
        }),
      );
      return { survey, effectDeg: offDeg(one.place), sigmaDeg: knownSigmaDeg(one, run) };
    },
  };
}

const fold = (deg: number) => ((deg % 360) + 360) % 360;
const asTrue = (gridDeg: number, place: PlaceDrawn) => fromGrid(gridDeg, 'true', place);

const NORTH_KINDS: readonly BlunderKind[] = [
  northKind(
    'declination twice',
    'the declination was applied twice',
    'magnetic',
    'magnetic',
    asTrue,
    (place) => place.declinationDeg,
  ),
  northKind(
    'declination left out',
    'the declination was left out',
    'magnetic',
    'true',
    (deg, place) => fromGrid(deg, 'magnetic', place),
    (place) => place.declinationDeg,
  ),
  northKind(
    'declination left out, recorded as grid',
    'the declination was left out',
    'magnetic',
    'grid',
    (deg, place) => fromGrid(deg, 'magnetic', place),
    (place) => place.declinationDeg - place.convergenceDeg,
  ),
  northKind(
    'declination with the wrong sign',
    'the declination was applied with the wrong sign',
    'magnetic',
    'true',
    (deg, place) => fold(fromGrid(deg, 'magnetic', place) - place.declinationDeg),
    (place) => 2 * place.declinationDeg,
  ),
  northKind(
    'grid for true',
    'grid azimuths were recorded as true',
    'north-seeking gyro',
    'true',
    (deg) => fold(deg),
    (place) => place.convergenceDeg,
    2,
  ),
  northKind(
    'true for grid',
    'true azimuths were recorded as grid',
    'north-seeking gyro',
    'grid',
    asTrue,
    (place) => place.convergenceDeg,
    2,
  ),
  northKind(
    'gyro-true recorded as magnetic',
    'true azimuths of a gyro were recorded as magnetic',
    'north-seeking gyro',
    'magnetic',
    asTrue,
    (place) => place.declinationDeg,
  ),
  northKind(
    'magnetic recorded as a gyro',
    'the declination was left out',
    'north-seeking gyro',
    'true',
    (deg, place) => fromGrid(deg, 'magnetic', place),
    (place) => place.declinationDeg,
  ),
  northKind(
    'declination taken off already',
    'the declination was taken off its magnetic azimuths',
    'magnetic',
    'magnetic',
    (deg, place) => fold(fromGrid(deg, 'magnetic', place) - place.declinationDeg),
    (place) => place.declinationDeg,
  ),
];

const driftBeside: BlunderKind = {
  name: 'drift of an aligned gyro beside a north-seeking one',
  reads: 'the gyro drifts',
  make: (seed, wantedDeg, beside) => {
    const one = drawn(seed, wantedDeg, beside);
    const byBottomDeg = (wantedDeg > 0 ? 1 : -1) * (0.8 + one.draw.uniform() * 6);
    const taken = (id: string, toolClass: RunDrawn['toolClass']) =>
      runDrawn(one.draw, one.hole, {
        ...{ id, tool: `tool ${id}`, toolClass, pass: 'in', everyM: 10 },
        lineUpErrorDeg: one.lineUpErrorDeg,
      });
    const [run, other] = [taken('own', 'gyro aligned at the collar'), taken('other', 'north-seeking gyro')];
    const deepest = Math.max(...run.shots.map(([depthM]) => depthM));
    const survey = surveyHole(
      recordOf(one.place, one.hole, {
        ...one,
        runs: [run, other],
        neighbours: neighbours(one),
        given: (each, index) => {
          const [depthM = 0, azimuthDeg = 0] = run.shots[index] ?? [];
          return each === run ? { azimuthDeg: fold(azimuthDeg + (byBottomDeg * depthM) / deepest) } : {};
        },
      }),
    );
    // The slope of the differences of two readings, with what is the same all the way not known.
    const sigmaDeg = 0.3 * Math.SQRT2 * Math.sqrt(12 / run.shots.length);
    return { survey, effectDeg: byBottomDeg, sigmaDeg };
  },
};

const steel: BlunderKind = {
  name: 'steel near the collar',
  reads: 'drawn by steel',
  make: (seed, wantedDeg, beside) => {
    const one = drawn(seed, wantedDeg, beside);
    const firstDeg = (wantedDeg > 0 ? 1 : -1) * (3 + one.draw.uniform() * 17);
    const overM = 15 + one.draw.uniform() * 20;
    const run = runDrawn(one.draw, one.hole, { id: 'own', tool: 'tool 7', toolClass: 'magnetic' });
    const firstM = Math.min(...run.shots.map(([depthM]) => depthM));
    const survey = surveyHole(
      recordOf(one.place, one.hole, {
        ...one,
        runs: [run, ...otherTool(one, run.toolClass)],
        neighbours: neighbours(one),
        given: (each, index) => {
          const [depthM = 0] = run.shots[index] ?? [];
          const read = fromGrid(run.shots[index]?.[1] ?? 0, 'magnetic', one.place);
          return each === run
            ? { azimuthDeg: fold(read + firstDeg * Math.exp((firstM - depthM) / overM)) }
            : {};
        },
      }),
    );
    return { survey, effectDeg: firstDeg, sigmaDeg: knownSigmaDeg(one, run) };
  },
};

const misaligned: BlunderKind = {
  name: 'misaligned gyro',
  reads: 'misaligned at the collar',
  make: (seed, wantedDeg, beside) => {
    const one = drawn(seed, wantedDeg, beside);
    const offDeg = (wantedDeg > 0 ? 1 : -1) * (2 + one.draw.uniform() * 8);
    const run = runDrawn(one.draw, one.hole, {
      id: 'own',
      tool: 'tool 7',
      toolClass: 'gyro aligned at the collar',
      pass: 'in',
      everyM: 10,
      lineUpErrorDeg: one.lineUpErrorDeg,
    });
    const survey = surveyHole(
      recordOf(one.place, one.hole, {
        ...one,
        runs: [run, ...otherTool(one, run.toolClass)],
        neighbours: neighbours(one),
        given: (each, index) => (each === run ? { azimuthDeg: fold(run.shots[index]![1] + offDeg) } : {}),
      }),
    );
    return { survey, effectDeg: offDeg, sigmaDeg: knownSigmaDeg(one, run) };
  },
};

const drift: BlunderKind = {
  name: 'in/out drift',
  reads: 'the gyro drifts',
  make: (seed, wantedDeg, beside) => {
    const one = drawn(seed, wantedDeg, beside);
    const byBottomDeg = (wantedDeg > 0 ? 1 : -1) * (0.4 + one.draw.uniform() * 4);
    const [inRun, out] = (['in', 'out'] as const).map((pass) =>
      runDrawn(one.draw, one.hole, {
        id: pass,
        tool: 'tool 7',
        toolClass: 'gyro aligned at the collar',
        pass,
        everyM: 10,
        lineUpErrorDeg: one.lineUpErrorDeg,
      }),
    ) as [RunDrawn, RunDrawn];
    const deepest = Math.max(...inRun.shots.map(([depthM]) => depthM));
    const driftAt = (run: RunDrawn, depthM: number) =>
      byBottomDeg * (run.pass === 'in' ? depthM / deepest : 2 - depthM / deepest);
    const survey = surveyHole(
      recordOf(one.place, one.hole, {
        ...one,
        runs: [inRun, out, ...otherTool(one, inRun.toolClass)],
        neighbours: neighbours(one),
        given: (run, index) => {
          const [depthM = 0, azimuthDeg = 0] = run.shots[index] ?? [];
          return run === inRun || run === out ? { azimuthDeg: fold(azimuthDeg + driftAt(run, depthM)) } : {};
        },
      }),
    );
    // What shows the drift is how the two part from the bottom to the collar: a slope through differences of two readings.
    const count = inRun.shots.length;
    const sigmaDeg = ((0.3 * Math.SQRT2) / (2 * Math.sqrt(count))) * Math.sqrt(12);
    return { survey, effectDeg: byBottomDeg, sigmaDeg };
  },
};

const swapped = (depthM: number) =>
  Number(
    String(depthM)
      .padStart(2, '0')
      .replace(/(\d)(\d)$/, '$2$1'),
  );

const transposed: BlunderKind = {
  name: 'depth transposed',
  reads: 'with two digits swapped',
  make: (seed, wantedDeg, beside) => {
    const one = drawn(seed, wantedDeg, beside);
    const run = runDrawn(one.draw, one.hole, { id: 'own', tool: 'tool 7', toolClass: 'magnetic' });
    const can = run.shots.flatMap(([depthM], index) => {
      const as = swapped(depthM);
      return as !== depthM && as > 0 && as <= one.hole.depthM ? [{ index, as, depthM }] : [];
    });
    const slip = one.draw.pick(can);
    const survey = surveyHole(
      recordOf(one.place, one.hole, {
        ...one,
        runs: [run, ...otherTool(one, run.toolClass)],
        neighbours: neighbours(one),
        given: (each, index) =>
          each === run && index === slip.index ? { depthMm: depthFromMetres(slip.as) } : {},
      }),
    );
    // A shot is taken at a rod's end: within a rod of 6 m, evenly, of the schedule.
    return { survey, effectDeg: slip.as - slip.depthM, sigmaDeg: 6 / Math.sqrt(12) };
  },
};

const feet: BlunderKind = {
  name: 'depths in feet',
  reads: 'feet',
  make: (seed, wantedDeg, beside) => {
    const one = drawn(seed, wantedDeg, beside);
    const run = runDrawn(one.draw, one.hole, { id: 'own', tool: 'tool 7', toolClass: 'magnetic' });
    const survey = surveyHole(
      recordOf(one.place, one.hole, {
        ...one,
        runs: [run, ...otherTool(one, run.toolClass)],
        neighbours: neighbours(one),
        drilledM: one.hole.depthM * 3.4,
        given: (each, index) =>
          each === run ? { depthMm: depthFromMetres(Math.round((run.shots[index]?.[0] ?? 0) / 0.3048)) } : {},
      }),
    );
    return { survey, effectDeg: 100, sigmaDeg: 1 };
  },
};

const dipWithoutSign: BlunderKind = {
  name: 'magnetic dip without its sign',
  reads: 'the wrong sign, or without one',
  make: (seed, wantedDeg, beside) => {
    const one = drawn(seed, wantedDeg, beside);
    const run = runDrawn(one.draw, one.hole, { id: 'own', tool: 'tool 7', toolClass: 'magnetic' });
    const magneticDipDeg = Number((-one.place.magneticDipDeg + one.draw.normal(0.3)).toFixed(1));
    const given = (each: RunDrawn): Partial<Shot> => (each === run ? { magneticDipDeg } : {});
    const survey = surveyHole(
      recordOf(one.place, one.hole, {
        ...one,
        runs: [run, ...otherTool(one, run.toolClass)],
        neighbours: neighbours(one),
        given,
      }),
    );
    return { survey, effectDeg: 2 * one.place.magneticDipDeg, sigmaDeg: 0.5 };
  },
};

export const BLUNDER_KINDS: readonly BlunderKind[] = [
  ...NORTH_KINDS,
  misaligned,
  drift,
  driftBeside,
  steel,
  dipWithoutSign,
  transposed,
  feet,
];

/** A clean hole: every context, every tool, realistic noise with the line-up's errors in it. */
export function cleanHole(seed: number): HoleSurvey {
  const draw = drawFrom(seed + 500_000);
  const wantedDeg = (draw.uniform() < 0.5 ? -1 : 1) * (1 + draw.uniform() * 24);
  const one = drawn(seed, wantedDeg, BESIDE[seed % BESIDE.length]!);
  const shape = Math.floor(draw.uniform() * 4);
  const gyro = {
    id: 'gyro',
    tool: 'tool 7',
    toolClass: (shape === 2 ? 'gyro aligned at the collar' : 'north-seeking gyro') as RunDrawn['toolClass'],
    everyM: 10,
    lineUpErrorDeg: one.lineUpErrorDeg,
  };
  const runs: readonly RunDrawn[] =
    shape === 0
      ? [runDrawn(one.draw, one.hole, { id: 'own', tool: 'tool 5', toolClass: 'magnetic' })]
      : [
          runDrawn(one.draw, one.hole, { ...gyro, pass: 'in' }),
          ...(shape === 3 ? [] : [runDrawn(one.draw, one.hole, { ...gyro, id: 'back', pass: 'out' })]),
          ...(draw.uniform() < 0.5
            ? [runDrawn(one.draw, one.hole, { id: 'own', tool: 'tool 5', toolClass: 'magnetic' })]
            : []),
        ];
  return surveyHole(recordOf(one.place, one.hole, { ...one, runs, neighbours: neighbours(one) }));
}

/** How a kind of blunder came out over its trials. */
export interface Tally {
  readonly kind: string;
  readonly beside: Beside;
  readonly over: number;
  readonly named: number;
  /** Those over three sigma that got no name or another: their effect in sigma, and what was said. */
  readonly missed: readonly string[];
  /** Those under: their sigma. */
  readonly hidden: readonly string[];
  /** Of those under three sigma: named rightly, and given another blunder's name. */
  readonly hiddenNamed: number;
  readonly hiddenWrong: number;
}

const NAMES =
  /reads as if|drifts|drawn by steel|feet|digits swapped|wrong sign, or without|off by about the same|of the line-up is off/;

export function tally(kind: BlunderKind, beside: Beside, trials: number): Tally {
  const result = { over: 0, named: 0, hiddenNamed: 0, hiddenWrong: 0 };
  const missed: string[] = [];
  const hidden: string[] = [];
  for (let trial = 0; trial < trials; trial++) {
    const wantedDeg =
      (trial % 2 === 0 ? 1 : -1) * (1 + (24 * Math.floor(trial / 2)) / Math.max(1, trials / 2 - 1));
    const { survey, effectDeg, sigmaDeg } = kind.make(
      1000 * BESIDE.indexOf(beside) + trial + 1,
      wantedDeg,
      beside,
    );
    const first = survey.findings.find((each) => NAMES.test(each.problem));
    const right = first?.problem.includes(kind.reads) === true;
    const sigmas = Math.abs(effectDeg) / sigmaDeg;
    if (sigmas >= 3) {
      result.over++;
      if (right) result.named++;
      else
        missed.push(
          `${sigmas.toFixed(1)} sigma (${effectDeg.toFixed(1)}): ${first?.problem ?? survey.findings[0]?.problem ?? 'nothing'}`,
        );
    } else {
      if (right) result.hiddenNamed++;
      else if (first !== undefined) result.hiddenWrong++;
      hidden.push(`${Math.abs(effectDeg).toFixed(1)}/${sigmaDeg.toFixed(1)}`);
    }
  }
  return { kind: kind.name, beside, ...result, missed, hidden };
}
