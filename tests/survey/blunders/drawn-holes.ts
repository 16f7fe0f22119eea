import geomagnetism from 'geomagnetism';
import proj4 from 'proj4';
import type { LineUp, Shot, SurveyRun } from '../../../src/hole/direction.ts';
import type { Collar, Plan } from '../../../src/hole/header.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { stamp } from '../../../src/quantity/stamp.ts';
import type { HoleBend } from '../../../src/survey/blunders/bends.ts';
import type { HoleDirections } from '../../../src/survey/hole-survey.ts';
import { siteOf } from '../../../src/survey/norths/site.ts';
import { surveySettingsOf } from '../../../src/survey/settings.ts';
import { pointing } from '../build.ts';

/*
 * Holes drawn at random whose truth is known: a place on the Earth, a hole that bends and wanders there, a line-up and tools that err.
 * Declination and convergence are worked out here a second time, with no code of the program.
 */

/** When every invented hole is surveyed. */
const WHEN = stamp(Date.UTC(2026, 2, 14, 4), 480);
const MODEL_DATE = new Date(Date.UTC(2026, 2, 14, 4));

/** Numbers from 0 to 1, the same every time (Park & Miller 1988, the multiplier of 1993), and normal ones (sum of twelve). */
export interface Draw {
  readonly uniform: () => number;
  readonly normal: (sigma: number) => number;
  readonly pick: <T>(of: readonly T[]) => T;
}

export function drawFrom(seed: number): Draw {
  let state = (seed * 7919 + 12_345) % 2_147_483_647;
  const uniform = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  for (let skip = 0; skip < 20; skip++) uniform();
  return {
    uniform,
    normal: (sigma) => {
      let sum = -6;
      for (let each = 0; each < 12; each++) sum += uniform();
      return sum * sigma;
    },
    pick: (of) => of[Math.floor(uniform() * of.length)]!,
  };
}

const rad = Math.PI / 180;

/** A place in a zone of the universal transverse Mercator grid, with its norths. */
export interface PlaceDrawn {
  readonly epsg: number;
  readonly eastM: number;
  readonly northM: number;
  readonly declinationDeg: number;
  readonly convergenceDeg: number;
  readonly totalNt: number;
  readonly magneticDipDeg: number;
}

/** A place whose declination is about as far from north as asked, either side; `zonesOff`: a grid carried on beyond its zone, as projects do. */
export function placeDrawn(draw: Draw, wantedDeg: number, zonesOff = 0): PlaceDrawn {
  for (;;) {
    const latDeg = -55 + draw.uniform() * 118;
    const lonDeg = -179 + draw.uniform() * 358;
    const field = geomagnetism.model(MODEL_DATE).point([latDeg, lonDeg, 0.3]);
    if (field.h < 9000 || Math.abs(field.decl - wantedDeg) > 0.5) continue;
    const zone = ((Math.floor((lonDeg + 180) / 6) + zonesOff + 60) % 60) + 1;
    const middleDeg = zone * 6 - 183;
    const proj = `+proj=utm +zone=${zone} ${latDeg < 0 ? '+south ' : ''}+datum=WGS84 +units=m`;
    const [eastM, northM] = proj4('+proj=longlat +datum=WGS84', proj, [lonDeg, latDeg]);
    return {
      epsg: (latDeg < 0 ? 32_700 : 32_600) + zone,
      eastM,
      northM,
      declinationDeg: field.decl,
      // Bearing of grid north from true north, east positive, to the first order on a sphere: good to a few hundredths here.
      convergenceDeg:
        Math.atan(Math.tan((((lonDeg - middleDeg + 540) % 360) - 180) * rad) * Math.sin(latDeg * rad)) / rad,
      totalNt: field.f,
      magneticDipDeg: field.incl,
    };
  }
}

/** A hole as it is: grid azimuth and dip at a depth in metres. */
export interface TrueHole {
  readonly azimuthAt: (depthM: number) => number;
  readonly dipAt: (depthM: number) => number;
  readonly depthM: number;
}

/** How holes of a program bend on the whole, degrees in space per 30 m. */
export interface ProgramBend {
  readonly turn: number;
  readonly lift: number;
}

export const programDrawn = (draw: Draw): ProgramBend => ({
  turn: draw.normal(0.3),
  lift: 0.3 + draw.normal(0.3),
});

const STEP_M = 3;

export function holeDrawn(draw: Draw, program: ProgramBend, azimuthDeg: number, dipDeg: number): TrueHole {
  const depthM = 120 + Math.floor(draw.uniform() * 5) * 30;
  const turn = program.turn + draw.normal(0.3);
  const lift = program.lift + draw.normal(0.3);
  const azimuths = [azimuthDeg];
  const dips = [dipDeg];
  for (let at = STEP_M; at <= depthM + STEP_M; at += STEP_M) {
    const dip = Math.max(
      -80,
      Math.min(-35, dips[dips.length - 1]! + (lift * STEP_M) / 30 + draw.normal(0.08)),
    );
    const across = Math.cos(dip * rad);
    azimuths.push(azimuths[azimuths.length - 1]! + ((turn * STEP_M) / 30 + draw.normal(0.08)) / across);
    dips.push(dip);
  }
  const between = (values: readonly number[]) => (at: number) => {
    const index = Math.min(values.length - 2, Math.floor(at / STEP_M));
    const part = at / STEP_M - index;
    return values[index]! * (1 - part) + values[index + 1]! * part;
  };
  return { azimuthAt: between(azimuths), dipAt: between(dips), depthM };
}

/** One-sigma errors of the tools, degrees: makers' figures of the usual size. */
export const TOOL = {
  magnetic: { systematic: 0.5, random: 0.5 },
  'north-seeking gyro': { systematic: 0.3, random: 0.3 },
  'gyro aligned at the collar': { systematic: 1, random: 0.3 },
} as const;
export const LINE_UP = { azimuth: 1, dip: 0.5 } as const;

type ToolClass = keyof typeof TOOL;

/** A run of a tool, its azimuths true to the grid but for the tool's errors. */
export interface RunDrawn {
  readonly id: string;
  readonly tool: string;
  readonly toolClass: ToolClass;
  readonly pass: SurveyRun['pass'];
  /** Depth, grid azimuth, dip. */
  readonly shots: readonly (readonly [number, number, number])[];
  /** The same as recorded, from this north. */
  readonly north: SurveyRun['north'];
}

export function runDrawn(
  draw: Draw,
  hole: TrueHole,
  said: {
    id: string;
    tool: string;
    toolClass: ToolClass;
    pass?: SurveyRun['pass'];
    everyM?: number;
    lineUpErrorDeg?: number;
  },
): RunDrawn {
  const { id, tool, toolClass, pass = 'single', everyM = 30, lineUpErrorDeg = 0 } = said;
  const errors = TOOL[toolClass];
  const inherited = toolClass === 'gyro aligned at the collar' ? lineUpErrorDeg : 0;
  const turned = draw.normal(errors.systematic) + inherited;
  const lifted = draw.normal(0.1);
  const first = pass === 'single' ? 12 : everyM;
  const depths: number[] = [];
  for (let at = first; at <= hole.depthM; at += everyM) depths.push(at);
  const shots = depths.map(
    (at) =>
      [
        at,
        Number((hole.azimuthAt(at) + turned + draw.normal(errors.random)).toFixed(1)),
        Number((hole.dipAt(at) + lifted + draw.normal(0.2)).toFixed(1)),
      ] as const,
  );
  const north = toolClass === 'magnetic' ? 'magnetic' : toolClass === 'north-seeking gyro' ? 'true' : 'grid';
  return { id, tool, toolClass, pass, north, shots: pass === 'out' ? [...shots].reverse() : shots };
}

/** A grid azimuth as a tool of a north gives it. */
export function fromGrid(
  gridDeg: number,
  north: SurveyRun['north'],
  { declinationDeg, convergenceDeg }: PlaceDrawn,
) {
  const deg =
    north === 'grid' ? gridDeg : gridDeg + convergenceDeg - (north === 'magnetic' ? declinationDeg : 0);
  return ((deg % 360) + 360) % 360;
}

/** What a hole's record holds. `given`: each shot's azimuth as recorded, where it is not what the tool's north makes of it. */
export function recordOf(
  place: PlaceDrawn,
  hole: TrueHole,
  said: {
    readonly plan: { readonly azimuthDeg: number; readonly dipDeg: number };
    readonly lineUp?: { readonly azimuthDeg: number; readonly dipDeg: number } | undefined;
    readonly runs: readonly RunDrawn[];
    readonly given?: (run: RunDrawn, index: number) => Partial<Shot>;
    readonly neighbours?: readonly HoleBend[];
    readonly drilledM?: number;
  },
): HoleDirections {
  const site = siteOf({ grid: { epsg: place.epsg } }, { file: 'project.json' });
  if (!site.ok) throw new Error(site.findings[0]?.problem);
  const plan: Plan = {
    azimuthDeg: said.plan.azimuthDeg,
    azimuthNorth: 'grid',
    dipDeg: said.plan.dipDeg,
    depthMm: depthFromMetres(hole.depthM),
  };
  const collar: Collar = {
    rank: 'surveyed',
    eastingMm: Math.round(place.eastM * 1000),
    northingMm: Math.round(place.northM * 1000),
    elevationMm: 300_000,
    grid: site.value.grid?.name ?? '',
    source: 'drawn',
    at: WHEN,
    by: 'RQ',
  };
  const lineUps: readonly LineUp[] =
    said.lineUp === undefined
      ? []
      : [
          {
            ...said.lineUp,
            azimuthNorth: 'grid',
            way: 'sight pegs',
            accepted: true,
            at: WHEN,
            by: 'RQ',
          },
        ];
  const shots = said.runs.flatMap((run) =>
    run.shots.map(
      ([depthM, azimuthDeg, dipDeg], index): Shot => ({
        run: run.id,
        depthMm: depthFromMetres(depthM),
        azimuthDeg: fromGrid(azimuthDeg, run.north, place),
        dipDeg,
        ...(run.toolClass === 'magnetic'
          ? { fieldNt: Math.round(place.totalNt), magneticDipDeg: Number(place.magneticDipDeg.toFixed(1)) }
          : {}),
        at: WHEN,
        by: 'RQ',
        ...said.given?.(run, index),
      }),
    ),
  );
  return {
    place: { hole: 'ZQRC004' },
    plan,
    collars: [collar],
    lineUps,
    runs: said.runs.map((run) => [
      run.id,
      {
        tool: run.tool,
        toolClass: run.toolClass,
        north: run.north,
        pass: run.pass,
        inside: 'open hole',
        toolOffsetMm: 0,
        operator: 'R. Quill',
        at: WHEN,
        rank: run.toolClass === 'north-seeking gyro' ? 60 : run.toolClass === 'magnetic' ? 40 : 50,
      } satisfies SurveyRun,
    ]),
    shots,
    drilledMm: depthFromMetres(said.drilledM ?? hole.depthM + 6),
    site: site.value,
    neighbours: said.neighbours ?? [],
    settings: surveySettingsOf(),
  };
}

/** Neighbours of a program as their surveys give their bends: the truth of each and what a run's random errors do to a slope. */
export function neighboursDrawn(
  draw: Draw,
  program: ProgramBend,
  azimuthDeg: number,
  dipDeg: number,
): readonly HoleBend[] {
  return Array.from({ length: 6 }, () => ({
    turnPer30m: program.turn + draw.normal(0.35),
    liftPer30m: program.lift + draw.normal(0.35),
    direction: pointing(azimuthDeg + draw.normal(8), dipDeg),
  }));
}
