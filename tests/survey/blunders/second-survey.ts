import geomagnetism from 'geomagnetism';
import proj4 from 'proj4';
import type { Shot, SurveyRun } from '../../../src/hole/direction.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { stamp } from '../../../src/quantity/stamp.ts';
import type { HoleBend } from '../../../src/survey/blunders/bends.ts';
import { type HoleSurvey, surveyHole } from '../../../src/survey/hole-survey.ts';
import { siteOf } from '../../../src/survey/norths/site.ts';
import { surveySettingsOf } from '../../../src/survey/settings.ts';
import { pointing } from '../build.ts';

/*
 * A second crew's surveys, written without the first ones and with another idea of what goes wrong with a good tool: errors that hang together
 * along a run, a gyro that drifts while it warms up, azimuths rounded to half a degree, a shot beside magnetite, a station forgotten, depths
 * read off a tape. Declination is from a library of its own, convergence from a step north on the map projection.
 */

const DATE = new Date(Date.UTC(2025, 8, 3, 2));
const AT = stamp(DATE.getTime(), 600);
const RAD = Math.PI / 180;
const turned = (deg: number): number => ((deg % 360) + 360) % 360;

/** Repeatable chance: mulberry32, and a bell by Box and Muller (1958). */
export interface Chance {
  readonly unit: () => number;
  readonly bell: (sigma: number) => number;
  /** A bell of which one in ten is twice as wide: people at a line-up, now and then in a hurry. */
  readonly hurried: (sigma: number) => number;
  readonly either: (probability: number) => boolean;
}

export function chanceOf(seed: number): Chance {
  let word = Math.imul(seed, 0x9e3779b9) >>> 0;
  const unit = () => {
    word = (word + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(word ^ (word >>> 15), word | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const bell = (sigma: number) =>
    sigma * Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit());
  const either = (probability: number) => unit() < probability;
  return { unit, bell, either, hurried: (sigma) => bell(either(0.1) ? 2 * sigma : sigma) };
}

/** Where the rig stands: declination and convergence east positive, degrees, and the Earth's field. */
export interface Pad {
  readonly epsg: number;
  readonly eastM: number;
  readonly northM: number;
  readonly declination: number;
  readonly convergence: number;
  readonly fieldNt: number;
  readonly fieldDip: number;
}

/** A pad whose declination is within half a degree of the one wanted; `zonesOff`: the project's grid is that of a zone further on. */
export function padOf(chance: Chance, wanted: number, zonesOff: number): Pad {
  const model = geomagnetism.model(DATE);
  for (;;) {
    // Evenly over the sphere, without the ends of it.
    const lat = Math.asin(chance.unit() * 1.7 - 0.85) / RAD;
    const lon = chance.unit() * 356 - 178;
    const field = model.point([lat, lon, 0.3]);
    if (field.h < 10_000 || Math.abs(field.decl - wanted) > 0.5) continue;
    const zone = (((Math.floor((lon + 180) / 6) + zonesOff) % 60) + 60) % 60;
    const proj = `+proj=utm +zone=${zone + 1} ${lat < 0 ? '+south ' : ''}+datum=WGS84 +units=m`;
    const onMap = (at: [number, number]) => proj4('+proj=longlat +datum=WGS84', proj, at);
    const [eastM, northM] = onMap([lon, lat]);
    const [up, along] = onMap([lon, lat + 0.001]);
    return {
      epsg: (lat < 0 ? 32_701 : 32_601) + zone,
      eastM,
      northM,
      declination: field.decl,
      // A step to true north goes to the west on the map where grid north is east of true north.
      convergence: Math.atan2(eastM - up, along - northM) / RAD,
      fieldNt: field.f,
      fieldDip: field.incl,
    };
  }
}

/** What a north makes of an azimuth of the grid, and back. */
export type North = SurveyRun['north'];
export function asRead(gridAzimuth: number, north: North, { declination, convergence }: Pad): number {
  if (north === 'grid') return turned(gridAzimuth);
  return turned(gridAzimuth + convergence - (north === 'magnetic' ? declination : 0));
}

/** How the ground here bends holes, degrees in space per 30 m. */
export interface Ground {
  readonly turn: number;
  readonly lift: number;
}
export const groundOf = (chance: Chance): Ground => ({
  turn: chance.bell(0.3),
  lift: 0.3 + chance.bell(0.3),
});

/** A hole as it is: azimuth (grid) and dip at a depth, metres. */
export interface Bore {
  readonly endM: number;
  readonly azimuth: (m: number) => number;
  readonly dip: (m: number) => number;
}

/** A hole bends steadily in each rock, a little otherwise below a contact, and spirals a little as the bit turns. */
export function boreOf(chance: Chance, ground: Ground, azimuth: number, dip: number): Bore {
  const endM = 96 + 6 * Math.floor(chance.unit() * 26);
  const contactM = endM * (0.2 + 0.6 * chance.unit());
  const above = { turn: ground.turn + chance.bell(0.25), lift: ground.lift + chance.bell(0.25) };
  const below = { turn: above.turn + chance.bell(0.25), lift: above.lift + chance.bell(0.25) };
  const [pitchM, phase, size] = [40 + 60 * chance.unit(), 2 * Math.PI * chance.unit(), 0.25 * chance.unit()];
  const along = (m: number, part: 'turn' | 'lift') =>
    (above[part] * Math.min(m, contactM) + below[part] * Math.max(0, m - contactM)) / 30;
  const spiral = (m: number, of: (angle: number) => number) =>
    size * (of((2 * Math.PI * m) / pitchM + phase) - of(phase));
  const dipAt = (m: number) => Math.min(-35, Math.max(-82, dip + along(m, 'lift') + spiral(m, Math.sin)));
  return {
    endM,
    dip: dipAt,
    azimuth: (m) => azimuth + (along(m, 'turn') + spiral(m, Math.cos)) / Math.cos(dipAt(m) * RAD),
  };
}

export type Tool = SurveyRun['toolClass'];

/** A shot as it would be recorded in order: depth off the tape, azimuth from the grid, dip. */
export interface Taken {
  readonly m: number;
  readonly azimuth: number;
  readonly dip: number;
  /** Beside magnetite: the azimuth is off, and the field says so. */
  readonly spikeNt: number;
}

/** A run of a good tool, with the errors that good tools have. */
export interface Taking {
  readonly name: string;
  readonly tool: Tool;
  readonly pass: SurveyRun['pass'];
  readonly north: North;
  readonly shots: readonly Taken[];
}

/** How a tool reads: steps of the azimuth and the dip it shows, degrees. */
const SHOWN = {
  magnetic: [0.5, 0.1],
  'north-seeking gyro': [0.1, 0.1],
  'gyro aligned at the collar': [0.1, 0.1],
} as const;
const NORTH: Readonly<Record<Tool, North>> = {
  magnetic: 'magnetic',
  'north-seeking gyro': 'true',
  'gyro aligned at the collar': 'grid',
};

/** One-sigma errors of an azimuth: the same all the way down, what hangs together over some 60 m, and the shot's own, degrees. */
export const ERRORS: Readonly<
  Record<Tool, { readonly run: number; readonly slow: number; readonly own: number }>
> = {
  magnetic: { run: 0.4, slow: 0.4, own: 0.3 },
  'north-seeking gyro': { run: 0.25, slow: 0.2, own: 0.2 },
  'gyro aligned at the collar': { run: 0.6, slow: 0.3, own: 0.2 },
};
const HANGS_TOGETHER_M = 60;
/** How far a gyro is off when it is cold; it warms up over so many metres. */
const COLD_DEG = 0.3;
const WARM_M = 50;

export function runOf(
  chance: Chance,
  bore: Bore,
  how: {
    readonly name: string;
    readonly tool: Tool;
    readonly pass?: SurveyRun['pass'];
    readonly lineUpOff: number;
    readonly spikes?: boolean;
  },
): Taking {
  const { name, tool, pass = 'single', lineUpOff, spikes = false } = how;
  const errors = ERRORS[tool];
  const whole = chance.bell(errors.run) + (tool === 'gyro aligned at the collar' ? lineUpOff : 0);
  const cold = tool === 'magnetic' ? 0 : chance.bell(COLD_DEG);
  const [dipOff, tape] = [chance.bell(0.1), 1 + chance.bell(0.003)];
  const [azimuthStep, dipStep] = SHOWN[tool];
  const stepM = tool === 'magnetic' ? 30 : chance.either(0.5) ? 10 : 12;
  const firstM = tool === 'magnetic' ? 12 + 6 * Math.floor(chance.unit() * 3) : stepM;
  let slow = chance.bell(errors.slow);
  const shots: Taken[] = [];
  for (let m = firstM; m <= bore.endM; m += stepM) {
    const kept = Math.exp(-stepM / HANGS_TOGETHER_M);
    slow = slow * kept + chance.bell(errors.slow * Math.sqrt(1 - kept ** 2));
    const missed = chance.either(0.06) && m > firstM && m + stepM <= bore.endM;
    const spikeNt =
      spikes && chance.either(0.06) ? (chance.either(0.5) ? 1 : -1) * (2500 + 5000 * chance.unit()) : 0;
    const spike = spikeNt === 0 ? 0 : chance.bell(6);
    // The tape is read to a tenth: the tool hangs where the tape says, stretched a little.
    const isM = m * tape + chance.bell(0.1);
    const azimuth =
      bore.azimuth(isM) + whole + slow + cold * Math.exp(-m / WARM_M) + chance.bell(errors.own) + spike;
    const dip = bore.dip(isM) + dipOff + chance.bell(0.15);
    const inSteps = (value: number, step: number) => Number((Math.round(value / step) * step).toFixed(1));
    if (!missed)
      shots.push({ m, azimuth: inSteps(azimuth, azimuthStep), dip: inSteps(dip, dipStep), spikeNt });
  }
  return { name, tool, pass, north: NORTH[tool], shots: pass === 'out' ? shots.reverse() : shots };
}

/** What is beside a run. */
export const COMPANY = ['the line-up', 'the plan', 'another run', 'neighbours'] as const;
export type Company = (typeof COMPANY)[number];

/** A hole drilled, its line-up and its plan, before anybody makes a mistake. */
export interface Site {
  readonly chance: Chance;
  readonly pad: Pad;
  readonly bore: Bore;
  readonly plan: { readonly azimuth: number; readonly dip: number };
  readonly lineUp: { readonly azimuth: number; readonly dip: number };
  readonly lineUpOff: number;
  readonly company: Company;
  readonly neighbours: readonly HoleBend[];
}

export function siteDrawn(seed: number, wanted: number, company: Company, zonesOff = 0): Site {
  const chance = chanceOf(seed);
  const pad = padOf(chance, wanted, zonesOff);
  const ground = groundOf(chance);
  const plan = { azimuth: Math.floor(chance.unit() * 360), dip: -50 - 5 * Math.floor(chance.unit() * 5) };
  const start = { azimuth: plan.azimuth + chance.hurried(0.8), dip: plan.dip + chance.bell(0.4) };
  const lineUpOff = chance.hurried(0.8);
  const near = (deg: number) => Math.round(deg * 2) / 2;
  return {
    ...{ chance, pad, plan, lineUpOff, company, bore: boreOf(chance, ground, start.azimuth, start.dip) },
    // Sight pegs and clinometer are read to half a degree.
    lineUp: { azimuth: turned(near(start.azimuth + lineUpOff)), dip: near(start.dip + chance.bell(0.3)) },
    neighbours:
      company !== 'neighbours'
        ? []
        : Array.from({ length: 4 + Math.floor(chance.unit() * 5) }, () => ({
            turnPer30m: ground.turn + chance.bell(0.3),
            liftPer30m: ground.lift + chance.bell(0.3),
            direction: pointing(turned(plan.azimuth + chance.bell(6)), plan.dip),
          })),
  };
}

/** What is written down of the shots of a run, where it is not what the tool gave. */
export type Written = (taking: Taking, shot: Taken) => Partial<Shot>;

/** A tool keeps its number on the way in and out; another class of tool is another tool. */
function toolName(takings: readonly Taking[], index: number): string {
  return `tool ${3 + takings.findIndex(({ tool }) => tool === takings[index]?.tool)}`;
}

/** The survey as the program reads the record. */
export function surveyed(
  site: Site,
  takings: readonly Taking[],
  written: Written = () => ({}),
  drilledM = site.bore.endM + 3,
): HoleSurvey {
  const { pad, plan, lineUp, company, bore, neighbours } = site;
  const here = siteOf({ grid: { epsg: pad.epsg } }, { file: 'project.json' });
  if (!here.ok) throw new Error(here.findings[0]?.problem);
  return surveyHole({
    place: { hole: 'ZQRC011' },
    plan: {
      ...{ azimuthDeg: plan.azimuth, azimuthNorth: 'grid', dipDeg: plan.dip },
      depthMm: depthFromMetres(bore.endM),
    },
    collars: [
      {
        ...{ rank: 'surveyed', source: 'drawn', at: AT, by: 'RQ', grid: here.value.grid?.name ?? '' },
        eastingMm: Math.round(pad.eastM * 1000),
        northingMm: Math.round(pad.northM * 1000),
        elevationMm: 300_000,
      },
    ],
    lineUps:
      company === 'the plan'
        ? []
        : [
            {
              ...{ azimuthDeg: lineUp.azimuth, azimuthNorth: 'grid', dipDeg: lineUp.dip },
              ...{ way: 'sight pegs', accepted: true, at: AT, by: 'RQ' },
            },
          ],
    runs: takings.map((taking, index) => [
      taking.name,
      {
        ...{ tool: toolName(takings, index), toolClass: taking.tool, north: taking.north, pass: taking.pass },
        ...{ inside: 'open hole', toolOffsetMm: 0, operator: 'T. Vane', at: AT },
        rank: taking.tool === 'north-seeking gyro' ? 60 : taking.tool === 'magnetic' ? 40 : 50,
      } satisfies SurveyRun,
    ]),
    shots: takings.flatMap((taking) =>
      taking.shots.map(
        (shot): Shot => ({
          run: taking.name,
          depthMm: depthFromMetres(shot.m),
          azimuthDeg: asRead(shot.azimuth, taking.north, pad),
          dipDeg: shot.dip,
          ...(taking.tool === 'magnetic'
            ? {
                fieldNt: Math.round(pad.fieldNt + shot.spikeNt + site.chance.bell(120)),
                magneticDipDeg: Number(
                  (pad.fieldDip + site.chance.bell(0.3) + shot.spikeNt / 4000).toFixed(1),
                ),
              }
            : {}),
          at: AT,
          by: 'RQ',
          ...written(taking, shot),
        }),
      ),
    ),
    drilledMm: depthFromMetres(drilledM),
    site: here.value,
    neighbours,
    settings: surveySettingsOf(),
  });
}
