import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { azimuth, degreesBetween, type North } from '../../quantity/azimuth.ts';
import { fieldOff } from '../checks/magnetic-field.ts';
import { azimuthUnusable } from '../checks/magnetic-in-steel.ts';
import { type Direction, isSteep } from '../direction.ts';
import type { MagneticField } from '../norths/declination.ts';
import { type NorthAngles, toNorth } from '../norths/norths.ts';
import type { SurveySettings } from '../settings.ts';
import { type RunWithShots, stands } from '../shots/run-with-shots.ts';
import { expectedBend, type HoleBend } from './bends.ts';
import { blunderFinding, type Unseen } from './blunder-words.ts';
import { type Evidence, evidenceOf, type Reading, type Source } from './evidence.ts';
import { type BlunderName, hypothesesOf } from './hypotheses.ts';
import { isCalledGyro } from './north-blunders.ts';
import { type Found, findBlunders, SEEN_SIGMAS, weigh } from './weigh.ts';

/** A hole's readings of its direction, and what they are weighed by. */
export interface BlundersToCheck {
  readonly place: Place;
  readonly north: North;
  readonly runs: readonly RunWithShots[];
  /** The direction it was set in, in the path's north, with the north it was recorded from and the angles then. */
  readonly lineUp:
    | { readonly direction: Direction; readonly recorded: North; readonly angles: NorthAngles }
    | undefined;
  /** The planned one, used where there is no line-up. */
  readonly planned: Direction | undefined;
  readonly anglesOf: (run: RunWithShots['run']) => NorthAngles;
  readonly fieldOf: (run: RunWithShots['run']) => MagneticField | undefined;
  readonly neighbours: readonly HoleBend[];
  readonly settings: SurveySettings;
}

/** What is wrong with the readings as a whole, likeliest first, and what could not be seen. */
export interface BlundersFound {
  readonly findings: readonly Finding[];
  /** Runs named in a finding: what other checks say of their beginning is the same again. */
  readonly named: ReadonlySet<string>;
  /** Runs recorded as magnetic in steel that read as those of a gyro: steel doesn't draw them. */
  readonly gyros: ReadonlySet<string>;
  readonly unseen: readonly Unseen[];
}

/** How far a hole starts from what it is compared with before anything is read, degrees: the line-up says it, else the plan, else nothing. */
const START_DEG = { 'line-up': 5, plan: 2, nothing: 60 } as const;

/** Readings nearer than this to the opposite way are back-bearings, which have a check of their own, degrees. */
const BACK_DEG = 30;

/** More readings of one run than this say nothing more of what is wrong with it as a whole. */
const MOST_READINGS = 40;

/** Weighs every blunder that is known by name against all readings of a hole's direction together. */
export function checkBlunders(survey: BlundersToCheck): BlundersFound {
  const base = survey.lineUp?.direction ?? survey.planned ?? firstDirection(survey);
  if (base === undefined) return { findings: [], named: new Set(), gyros: new Set(), unseen: [] };
  const gyros = gyrosInSteel(survey, base);
  const kinds = (['azimuth', 'dip'] as const).map((kind) => {
    const evidence = evidenceFor(survey, base, kind, gyros);
    return { kind, evidence, found: findBlunders(evidence, hypothesesOf(evidence, kind)) };
  });
  const named = new Set<string>();
  const findings = kinds.flatMap(({ kind, evidence, found }) =>
    found
      .filter((one) => one.hypothesis.name.what !== 'shot off')
      .map((one) => {
        // Steel near the collar draws some shots: the run below them is sound.
        if (one.hypothesis.name.what !== 'steel')
          for (const each of one.hypothesis.of) if ('id' in each) named.add(each.id);
        return blunderFinding(one, evidence, kind, survey.place);
      }),
  );
  const [azimuths] = kinds;
  return {
    findings,
    named,
    gyros,
    unseen: azimuths === undefined ? [] : unseenIn(azimuths.evidence, azimuths.found),
  };
}

/** The first azimuth of the best run, where neither a line-up nor a plan is known: runs are then compared with each other. */
function firstDirection(survey: BlundersToCheck): Direction | undefined {
  const [first] = survey.runs.flatMap((run) => readingsOf(run, survey));
  return first?.direction;
}

/**
 * Runs of a tool called a gyro that were recorded as magnetic inside or near steel, where their azimuths fit as a gyro's. Steel draws a
 * magnetic azimuth anywhere; one that fits to the degree was not drawn. What does not fit is not evidence of anything.
 */
function gyrosInSteel(survey: BlundersToCheck, base: Direction): ReadonlySet<string> {
  const called = survey.runs.filter(
    ({ run }) =>
      run.north === 'magnetic' && isCalledGyro(run) && azimuthUnusable(run, survey.settings.steelM),
  );
  const fitting = called.filter(({ id }) => {
    const evidence = evidenceFor(survey, base, 'azimuth', new Set([id]));
    const own = findBlunders(evidence, hypothesesOf(evidence, 'azimuth')).filter(({ hypothesis }) =>
      hypothesis.of.some((each) => ('id' in each ? each : each.source).id === id),
    );
    return (
      own.length === 1 &&
      own.some(({ hypothesis: { name } }) => name.what === 'north' && name.blunder.reads.includes('gyro'))
    );
  });
  return new Set(fitting.map(({ id }) => id));
}

function evidenceFor(
  survey: BlundersToCheck,
  base: Direction,
  kind: 'azimuth' | 'dip',
  gyros: ReadonlySet<string>,
): Evidence {
  const off = (direction: Direction) =>
    kind === 'azimuth' ? degreesBetween(direction.azimuth.deg, base.azimuth.deg) : direction.dip - base.dip;
  const steep = isSteep(base);
  const { lineUp } = survey;
  const set: readonly Reading[] =
    lineUp === undefined || (steep && kind === 'azimuth')
      ? []
      : [{ source: lineUpSource(lineUp), depthMm: 0, dipDeg: lineUp.direction.dip, offDeg: 0 }];
  const measured = survey.runs.flatMap((run) => {
    const source = runSource(run, survey);
    return thinned(readingsOf(run, survey, gyros)).flatMap(
      ({ depthMm, direction, azimuthStands }): Reading[] => {
        if (kind === 'azimuth' && (!azimuthStands || isSteep(direction))) return [];
        const offDeg = off(direction);
        return Math.abs(offDeg) > 180 - BACK_DEG ? [] : [{ source, depthMm, dipDeg: direction.dip, offDeg }];
      },
    );
  });
  const start = lineUp !== undefined ? 'line-up' : survey.planned !== undefined ? 'plan' : 'nothing';
  return evidenceOf([...set, ...measured], {
    kind,
    errors: survey.settings.toolErrors,
    bend: expectedBend(kind === 'azimuth' ? 'turn' : 'lift', base, survey.neighbours),
    startDeg: START_DEG[start],
  });
}

function lineUpSource(lineUp: NonNullable<BlundersToCheck['lineUp']>): Source {
  const { recorded: north, angles } = lineUp;
  return { id: 'line-up', tool: 'line-up', toolClass: 'line-up', north, pass: 'single', angles };
}

function runSource({ id, run }: RunWithShots, survey: BlundersToCheck): Source {
  const { tool, toolClass, north, pass } = run;
  return { id, tool, toolClass, north, pass, angles: survey.anglesOf(run) };
}

/** The shots of a run as directions in the path's north; an azimuth that is rejected, void or of a disturbed field doesn't stand. */
function readingsOf(
  { id, run, shots }: RunWithShots,
  survey: BlundersToCheck,
  gyros: ReadonlySet<string> = new Set(),
) {
  const angles = survey.anglesOf(run);
  const field = run.toolClass === 'magnetic' && !gyros.has(id) ? survey.fieldOf(run) : undefined;
  const unusable = !gyros.has(id) && azimuthUnusable(run, survey.settings.steelM);
  return shots
    .filter((shot) => shot.rejected === undefined)
    .flatMap((shot) => {
      const turned = toNorth(azimuth(shot.azimuthDeg ?? 0, run.north), survey.north, angles);
      const clean = field === undefined || !fieldOff(shot, field, survey.settings);
      const azimuthStands = turned !== undefined && stands(shot) && !unusable && clean;
      const direction = { azimuth: turned ?? azimuth(0, survey.north), dip: shot.dipDeg as Direction['dip'] };
      return [{ depthMm: shot.depthMm, direction, azimuthStands }];
    });
}

function thinned<T>(all: readonly T[]): readonly T[] {
  const step = Math.ceil(all.length / MOST_READINGS);
  return step <= 1 ? all : all.filter((_, index) => index % step === 0);
}

/** Mix-ups of norths that would stay hidden in a run that nothing is said of, the largest of each angle. */
function unseenIn(evidence: Evidence, found: readonly Found<BlunderName>[]): readonly Unseen[] {
  const all = hypothesesOf(evidence, 'azimuth').flatMap((hypothesis): Unseen[] => {
    const [source] = hypothesis.of;
    const { name } = hypothesis;
    if (name.what !== 'north' || source === undefined || !('id' in source)) return [];
    // No declination goes into the azimuths of a gyro that are recorded as such: only what it reads like is looked for.
    if (
      source.toolClass === 'north-seeking gyro' &&
      'really' in name.blunder.slip &&
      name.blunder.slip.really === 'magnetic'
    )
      return [];
    if (source.toolClass === 'line-up' || found.some((one) => one.hypothesis.of.includes(source))) return [];
    const weighed = weigh(evidence, hypothesis);
    if (weighed === undefined || weighed.sigmas >= SEEN_SIGMAS) return [];
    const effectDeg = Math.abs(name.addsDeg);
    return [
      { angle: name.blunder.angle, tool: source.tool, effectDeg, sigmaDeg: effectDeg / weighed.sigmas },
    ];
  });
  return all.filter(
    (one, index) => all.findIndex((other) => other.angle === one.angle && other.tool === one.tool) === index,
  );
}
