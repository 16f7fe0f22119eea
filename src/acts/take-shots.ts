import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { recordRun } from '../hole/commands/direction.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import type { Shot, SurveyRun } from '../hole/direction.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';
import { checksBeside, directionsOf, neighbourBends, placeOf, surveyOf } from '../standing/survey.ts';
import { checkShotBelowDrilled } from '../survey/checks/shot-below-drilled.ts';
import type { RunSaid } from '../survey/shots/run-said.ts';
import { readShotTable, type ShotColumns, type TableShot } from '../survey/shots/shot-table.ts';
import type { TextTable } from '../survey/table.ts';
import { dated, isGapBelow, newFindings, ranked } from './shot.ts';

/** A table of shots and how it is meant. */
export interface ShotsGiven {
  readonly table: TextTable;
  readonly columns: ShotColumns;
  readonly run: RunSaid;
  /** Day of the run, `2026-03-12`; today if none is given. */
  readonly on: string | undefined;
  readonly bitDepths: boolean;
  readonly inclinations: boolean;
}

/** What a table of shots comes to: the run with its sound shots, rows that can be none, and what is doubtful about the others. */
export interface ShotsTaken {
  readonly made: Made | undefined;
  readonly shots: number;
  readonly impossible: readonly Finding[];
  readonly doubts: readonly Finding[];
}

/**
 * Reads a table of shots as one run of a hole. Rows that can't be a shot, or lie below the drilled depth, are named by their line with the
 * likely cause and left out. Doubts are those of the checks of every shot, in the path made with the run. A run that is there already,
 * shot by shot, is refused whole.
 */
export function takeShots(
  project: Project,
  hole: Document,
  given: ShotsGiven,
  place: Place,
  maker: Maker,
  documents: Iterable<Document>,
): ShotsTaken {
  const survey = surveyOf(project, hole);
  const read = readShotTable(
    given.table,
    {
      columns: given.columns,
      depthOf: given.bitDepths ? 'bit' : 'station',
      toolOffsetMm: given.run.toolOffsetMm,
      angleAs: given.inclinations ? 'inclination' : 'dip',
      expectedDipDeg:
        survey.stations.find((one) => one.basis === 'set')?.dip ?? survey.planned?.direction.dip,
      hole: headerOf(hole).name,
    },
    place,
  );
  const slips = new Set(read.shots.map(({ place: { line } }) => line));
  const [doubtful, impossible] = parted(read.findings, (one) => slips.has(one.place.line));
  const run: SurveyRun = ranked(given.run, dated(maker, given.on));
  const below = read.shots.flatMap((shot, index) =>
    checkShotBelowDrilled(
      { id: '', run, shots: read.shots.slice(0, index + 1).map((each) => asShot(each, '', maker)) },
      headsOf(hole).drilledMm,
      project.survey,
      shot.place,
    ).filter(({ place: { fromMm } }) => fromMm === shot.depthMm),
  );
  const tooDeep = new Set(below.map((one) => one.place.line));
  const sound = read.shots.filter((shot) => !tooDeep.has(shot.place.line));
  const again = sound.length > 0 && isThere(hole, run, sound);
  if (sound.length === 0 || again)
    return {
      made: undefined,
      shots: 0,
      impossible: [...impossible, ...below, ...(again ? [thereAlready(hole, place)] : [])],
      doubts: [],
    };
  const doubts = doubtsOfRun(project, hole, run, sound, maker, documents);
  return {
    made: recordRun(
      run,
      sound.map((shot) => withoutPlace(shot, maker)),
      maker,
    ),
    shots: sound.length,
    impossible: [...impossible, ...below],
    doubts: [...doubtful.filter((one) => !tooDeep.has(one.place.line)), ...doubts],
  };
}

function parted<T>(all: readonly T[], first: (one: T) => boolean): readonly [readonly T[], readonly T[]] {
  return [all.filter(first), all.filter((one) => !first(one))];
}

function withoutPlace({ place: _place, ...shot }: TableShot, maker: Maker): Omit<Shot, 'run'> {
  return { ...shot, at: maker.at, by: maker.by };
}

function asShot(shot: TableShot, run: string, maker: Maker): Shot {
  return { ...withoutPlace(shot, maker), run };
}

/** What the checks say again with the run in the path; slips of the dip are told row by row already. */
function doubtsOfRun(
  project: Project,
  hole: Document,
  run: SurveyRun,
  shots: readonly TableShot[],
  maker: Maker,
  documents: Iterable<Document>,
): readonly Finding[] {
  const neighbours = neighbourBends(project, hole, documents);
  const directions = directionsOf(project, hole);
  const id = 'run given';
  const withRun = {
    ...directions,
    runs: [...directions.runs, [id, run] as const],
    shots: [...directions.shots, ...shots.map((shot) => asShot(shot, id, maker))],
  };
  const before = checksBeside(project, directions, neighbours).findings;
  const deepest = Math.max(...shots.map(({ depthMm }) => depthMm));
  return newFindings(before, checksBeside(project, withRun, neighbours).findings).filter(
    (one) =>
      one.code !== 'survey-dip-upwards' &&
      one.code !== 'survey-dip-from-vertical' &&
      !isGapBelow(one, deepest),
  );
}

/** True where a run of the same tool, north and pass holds the same shots; rejected ones may be recorded again. */
function isThere(hole: Document, run: SurveyRun, shots: readonly TableShot[]): boolean {
  const sameness = (shot: Pick<Shot, 'depthMm' | 'dipDeg' | 'azimuthDeg'>) =>
    `${shot.depthMm} ${shot.dipDeg} ${shot.azimuthDeg}`;
  const given = shots.map(sameness).sort().join(';');
  return holeThings(hole, 'runs').some(([id, each]) => {
    if (each.tool !== run.tool || each.pass !== run.pass || each.north !== run.north) return false;
    const own = holeThings(hole, 'shots').filter(
      ([, shot]) => shot.run === id && shot.rejected === undefined,
    );
    return (
      own
        .map(([, shot]) => sameness(shot))
        .sort()
        .join(';') === given
    );
  });
}

function thereAlready(hole: Document, place: Place): Finding {
  return REFUSALS.overlap.at(
    { ...place, ...placeOf(hole) },
    {
      problem: 'the hole has a run of this tool with the same shots',
      remedy: 'It was taken in before: nothing is to be done.',
    },
  );
}
