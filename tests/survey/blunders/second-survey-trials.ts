import type { Finding } from '../../../src/finding/finding.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import type { HoleSurvey } from '../../../src/survey/hole-survey.ts';
import {
  asRead,
  COMPANY,
  type Company,
  chanceOf,
  ERRORS,
  type North,
  type Pad,
  runOf,
  type Site,
  siteDrawn,
  surveyed,
  type Taken,
  type Taking,
  type Tool,
} from './second-survey.ts';

/** A trial: what the program says, how far the blunder puts the record off, and one sigma of what is known of that, in one unit. */
interface Trial {
  readonly survey: HoleSurvey;
  readonly effect: number;
  readonly sigma: number;
}

/** A blunder that a second crew makes, and the words by which its first named finding is known. */
export interface Blunder {
  readonly name: string;
  readonly words: string;
  /** A gyro aligned to no one knows what, beside a plan alone, can't be told from a hole set that way. */
  readonly never?: Company;
  readonly trial: (seed: number, wanted: number, company: Company) => Trial;
}

const fold = (deg: number) => ((deg % 360) + 360) % 360;

/** The other run: of another class of tool, clean. */
function companions(site: Site, tool: Tool): readonly Taking[] {
  if (site.company !== 'another run') return [];
  const other = tool === 'north-seeking gyro' ? 'magnetic' : 'north-seeking gyro';
  return [runOf(site.chance, site.bore, { name: 'beside', tool: other, lineUpOff: site.lineUpOff })];
}

/** One sigma of the run's direction beside what stands next to it: its own errors, and the other's. */
function sigmaOf({ company, bore, plan }: Site, { tool, shots }: Taking): number {
  const own = ERRORS[tool];
  // What hangs together over 60 m is seen afresh so many times in a hole.
  const times = Math.max(1, Math.min(shots.length, bore.endM / 60));
  const errors = Math.hypot(own.run, own.slow / Math.sqrt(times), own.own / Math.sqrt(shots.length), 0.1);
  if (company === 'another run') {
    const other = ERRORS[tool === 'north-seeking gyro' ? 'magnetic' : 'north-seeking gyro'];
    const inherited = tool === 'gyro aligned at the collar' ? 0.95 : 0;
    return Math.hypot(errors, other.run, other.slow / Math.sqrt(times), 0.15, inherited);
  }
  // Down to the first shot the hole bends as the ground has it: known of neighbours, else of holes on the whole.
  const rods = (shots[0]?.m ?? shots[shots.length - 1]?.m ?? 0) / 30;
  const bend =
    Math.hypot((company === 'neighbours' ? 0.28 : 0.45) * rods, 0.2) / Math.cos((plan.dip * Math.PI) / 180);
  const start = company === 'the plan' ? 0.95 + 1 : 0.95 + 0.15;
  // A gyro aligned at the collar is off with the line-up: that part does not show, nor hide.
  return Math.hypot(
    errors,
    own.slow,
    own.own,
    bend,
    tool === 'gyro aligned at the collar' && company !== 'the plan' ? 0.3 : start,
  );
}

/** A run whose azimuths were written down from a north that is not theirs. */
function north(
  name: string,
  words: string,
  tool: Tool,
  recorded: North,
  given: (grid: number, pad: Pad) => number,
  off: (pad: Pad) => number,
  zones = 0,
): Blunder {
  return {
    name,
    words,
    trial: (seed, wanted, company) => {
      const site = siteDrawn(seed, wanted, company, wanted > 0 ? zones : -zones);
      const pass = tool === 'magnetic' ? 'single' : 'in';
      const own = {
        ...runOf(site.chance, site.bore, { name: 'own', tool, pass, lineUpOff: site.lineUpOff }),
        north: recorded,
      };
      const survey = surveyed(site, [own, ...companions(site, tool)], (taking, shot) =>
        taking === own ? { azimuthDeg: given(shot.azimuth, site.pad) } : {},
      );
      return { survey, effect: off(site.pad), sigma: sigmaOf(site, own) };
    },
  };
}

const magnetic = (grid: number, pad: Pad) => asRead(grid, 'magnetic', pad);
const trueNorth = (grid: number, pad: Pad) => asRead(grid, 'true', pad);

/** Any other blunder: what is written down of each shot of a run, and how far off that is. */
function blunder(
  name: string,
  words: string,
  tool: Tool,
  made: (
    site: Site,
    own: Taking,
  ) => {
    readonly written: (shot: Taken) => object;
    readonly effect: number;
    readonly sigma?: number;
    readonly more?: readonly Taking[];
    readonly drilledM?: number;
    readonly writtenMore?: (shot: Taken) => object;
  },
  never?: Company,
): Blunder {
  return {
    name,
    words,
    ...(never === undefined ? {} : { never }),
    trial: (seed, wanted, company) => {
      const site = siteDrawn(seed, wanted, company);
      const pass = tool === 'magnetic' ? 'single' : 'in';
      const own = runOf(site.chance, site.bore, { name: 'own', tool, pass, lineUpOff: site.lineUpOff });
      const { written, writtenMore, effect, sigma, more = [], drilledM } = made(site, own);
      const survey = surveyed(
        site,
        [own, ...more, ...companions(site, tool)],
        (taking, shot) =>
          taking === own ? written(shot) : more.includes(taking) ? (writtenMore?.(shot) ?? {}) : {},
        drilledM,
      );
      return { survey, effect, sigma: sigma ?? sigmaOf(site, own) };
    },
  };
}

const drifts = blunder('the gyro drifts', 'drifts', 'gyro aligned at the collar', (site, own) => {
  const bottom = (site.chance.either(0.5) ? 1 : -1) * (0.5 + 3.5 * site.chance.unit());
  const out = runOf(site.chance, site.bore, {
    ...{ name: 'back', tool: 'gyro aligned at the collar', pass: 'out', lineUpOff: site.lineUpOff },
  });
  const deepest = Math.max(...own.shots.map(({ m }) => m));
  const off = (shot: Taken, part: number) => ({ azimuthDeg: fold(shot.azimuth + bottom * part) });
  // In and out differ by twice the drift at the collar and by none at the bottom: a slope through readings whose errors hang together.
  const times = Math.max(2, deepest / 60);
  const each = Math.hypot(
    ERRORS['gyro aligned at the collar'].slow,
    0.2 / Math.sqrt(own.shots.length / times),
  );
  return {
    ...{ more: [out], effect: bottom, sigma: (each * Math.SQRT2 * Math.sqrt(12 / times)) / 2 },
    written: (shot) => off(shot, shot.m / deepest),
    writtenMore: (shot) => off(shot, 2 - shot.m / deepest),
  };
});

/** A gyro aligned at the collar that creeps with time, and a north-seeking one run after it. */
const driftsBeside = blunder(
  'drift of an aligned gyro beside a north-seeking one',
  'drifts',
  'gyro aligned at the collar',
  (site, own) => {
    const bottom = (site.chance.either(0.5) ? 1 : -1) * (1 + 6 * site.chance.unit());
    const check = runOf(site.chance, site.bore, { name: 'check', tool: 'north-seeking gyro', lineUpOff: 0 });
    const deepest = Math.max(...own.shots.map(({ m }) => m));
    const times = Math.max(2, deepest / 60);
    const each = Math.hypot(
      ERRORS['gyro aligned at the collar'].slow,
      ERRORS['north-seeking gyro'].slow,
      0.3,
    );
    return {
      ...{ more: [check], effect: bottom, sigma: each * Math.sqrt(12 / times) },
      // It creeps a little faster while it is cold.
      written: ({ azimuth, m }) => ({ azimuthDeg: fold(azimuth + bottom * (m / deepest) ** 0.85) }),
    };
  },
);

/** Steel casing over the first metres: it draws the sensor as the cube of the distance has it, from somewhere above the first shot. */
const drawnBySteel = blunder('steel near the collar', 'drawn by steel', 'magnetic', (site, own) => {
  const first = (site.chance.either(0.5) ? 1 : -1) * (4 + 16 * site.chance.unit());
  const firstM = Math.min(...own.shots.map(({ m }) => m));
  const awayM = 25 + 25 * site.chance.unit();
  return {
    effect: first,
    written: ({ azimuth, m }) => ({
      azimuthDeg: fold(asRead(azimuth, 'magnetic', site.pad) + first * (awayM / (awayM + m - firstM)) ** 3),
    }),
  };
});

const misaligned = blunder(
  'misaligned gyro',
  'misaligned at the collar',
  'gyro aligned at the collar',
  (site) => {
    const off = (site.chance.either(0.5) ? 1 : -1) * (2 + 7 * site.chance.unit());
    return { effect: off, written: (shot) => ({ azimuthDeg: fold(shot.azimuth + off) }) };
  },
  'the plan',
);

const noSign = blunder(
  'magnetic dip without its sign',
  'the wrong sign, or without one',
  'magnetic',
  (site) => ({
    ...{ effect: 2 * site.pad.fieldDip, sigma: 1 },
    written: () => ({ magneticDipDeg: Number((-site.pad.fieldDip + site.chance.bell(0.3)).toFixed(1)) }),
  }),
);

const swappedDigits = blunder('depth transposed', 'with two digits swapped', 'magnetic', (site, own) => {
  const swap = (m: number) => Number(String(m).replace(/(\d)(\d)$/, '$2$1'));
  const can = own.shots.filter(({ m }) => m > 9 && swap(m) !== m && swap(m) > 0 && swap(m) <= site.bore.endM);
  const slip = can[Math.floor(site.chance.unit() * can.length)];
  return {
    effect: slip === undefined ? 0 : swap(slip.m) - slip.m,
    // Of a schedule that is kept to a rod.
    sigma: 6 / Math.sqrt(12),
    written: (shot) => (shot === slip ? { depthMm: depthFromMetres(swap(shot.m)) } : {}),
  };
});

const inFeet = blunder('depths in feet', 'feet', 'magnetic', (site) => ({
  ...{ effect: 100, sigma: 1, drilledM: Math.ceil(site.bore.endM / 0.3048) + 12 },
  written: (shot) => ({ depthMm: depthFromMetres(Math.round(shot.m / 0.3048)) }),
}));

export const BLUNDERS: readonly Blunder[] = [
  north(
    'declination twice',
    'the declination was applied twice',
    'magnetic',
    'magnetic',
    trueNorth,
    (pad) => pad.declination,
  ),
  north(
    'declination left out',
    'the declination was left out',
    'magnetic',
    'true',
    magnetic,
    (pad) => pad.declination,
  ),
  north(
    'declination with the wrong sign',
    'the declination was applied with the wrong sign',
    'magnetic',
    'true',
    (grid, pad) => fold(magnetic(grid, pad) - pad.declination),
    (pad) => 2 * pad.declination,
  ),
  north(
    'grid for true',
    'grid azimuths were recorded as true',
    'north-seeking gyro',
    'true',
    fold,
    (pad) => pad.convergence,
    1,
  ),
  north(
    'true for grid',
    'true azimuths were recorded as grid',
    'north-seeking gyro',
    'grid',
    trueNorth,
    (pad) => pad.convergence,
    1,
  ),
  north(
    'gyro-true recorded as magnetic',
    'true azimuths of a gyro were recorded as magnetic',
    'north-seeking gyro',
    'magnetic',
    trueNorth,
    (pad) => pad.declination,
  ),
  north(
    'magnetic recorded as a gyro',
    'the declination was left out',
    'north-seeking gyro',
    'true',
    magnetic,
    (pad) => pad.declination,
  ),
  misaligned,
  drifts,
  driftsBeside,
  drawnBySteel,
  noSign,
  swappedDigits,
  inFeet,
];

const NAMES =
  /reads as if|drifts|drawn by steel|feet|digits swapped|wrong sign, or without|off by about the same|of the line-up is off/;

/** How a blunder came out: over three sigma, named first, and of the others what was said. */
export interface Count {
  readonly over: number;
  readonly named: number;
  readonly missed: readonly string[];
  readonly under: number;
  readonly underNamed: number;
  readonly underWrong: readonly string[];
}

export function count(one: Blunder, company: Company, trials: number, firstSeed: number): Count {
  const missed: string[] = [];
  const underWrong: string[] = [];
  const tally = { over: 0, named: 0, under: 0, underNamed: 0 };
  for (let trial = 0; trial < trials; trial++) {
    const size = 1 + (24 * Math.floor(trial / 2)) / Math.max(1, trials / 2 - 1);
    const seed = firstSeed + 1000 * COMPANY.indexOf(company) + trial;
    const { survey, effect, sigma } = one.trial(seed, trial % 2 === 0 ? size : -size, company);
    const first = survey.findings.find(({ problem }) => NAMES.test(problem));
    const isRight = first?.problem.includes(one.words) === true;
    const sigmas = Math.abs(effect) / sigma;
    const what = `${sigmas.toFixed(1)} sigma (${effect.toFixed(1)}), seed ${seed}: ${first?.problem ?? survey.findings[0]?.problem ?? 'nothing'}`;
    if (sigmas < 3) {
      tally.under++;
      if (isRight) tally.underNamed++;
      else if (first !== undefined) underWrong.push(what);
    } else {
      tally.over++;
      if (isRight) tally.named++;
      else missed.push(what);
    }
  }
  return { ...tally, missed, underWrong };
}

/** A hole on which no one blundered; a third of them with magnetite beside the hole. */
export function cleanSurvey(seed: number): {
  readonly findings: readonly Finding[];
  readonly spikes: readonly Taken[];
} {
  const chance = chanceOf(seed + 7_000_000);
  const site = siteDrawn(
    seed,
    (chance.either(0.5) ? 1 : -1) * (1 + 24 * chance.unit()),
    COMPANY[seed % COMPANY.length]!,
  );
  const { bore, lineUpOff } = site;
  const spikes = seed % 3 === 0;
  const run = (name: string, tool: Tool, pass: Taking['pass'] = 'single') =>
    runOf(site.chance, bore, { name, tool, pass, lineUpOff, spikes: spikes && tool === 'magnetic' });
  const gyro = chance.either(0.4) ? 'gyro aligned at the collar' : 'north-seeking gyro';
  const takings = [
    ...(chance.either(0.6) ? [run('shots', 'magnetic')] : []),
    ...(chance.either(0.6) ? [run('in', gyro, 'in'), run('out', gyro, 'out')] : []),
  ];
  const all = takings.length === 0 ? [run('shots', 'magnetic')] : takings;
  return {
    findings: surveyed(site, all).findings,
    spikes: all.flatMap(({ shots }) => shots).filter(({ spikeNt }) => spikeNt !== 0),
  };
}

/** Findings on a clean hole that are of no shot beside magnetite: each is a doubt of what was right. */
export function needless({ findings, spikes }: ReturnType<typeof cleanSurvey>): readonly Finding[] {
  const near = spikes.map(({ m }) => m * 1000);
  const isOfSpike = ({ place: { fromMm, toMm } }: Finding) =>
    fromMm !== undefined &&
    near.some((mm) => Math.abs(mm - fromMm) < 31_000 || Math.abs(mm - (toMm ?? fromMm)) < 31_000);
  // A station that was forgotten is a gap, and rightly called one.
  return findings.filter((each) => each.code !== 'survey-shot-gap' && !isOfSpike(each));
}
