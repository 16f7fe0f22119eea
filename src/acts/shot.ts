import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { recordRun, recordShot } from '../hole/commands/direction.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import type { Shot, SurveyRun } from '../hole/direction.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, holeThing, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Depth, formatDepth } from '../quantity/depth.ts';
import { instantMs, parseStamp } from '../quantity/stamp.ts';
import type { Document, Id } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';
import { checksBeside, directionsOf, neighbourBends, placeOf } from '../standing/survey.ts';
import { checkShotBelowDrilled } from '../survey/checks/shot-below-drilled.ts';
import { shotGap } from '../survey/findings.ts';
import { RUN_FORM, type RunSaid, readRunSaid } from '../survey/shots/run-said.ts';

/** A shot as the driller read it out; its depth is the station's. */
export interface ShotRead {
  readonly depthMm: Depth;
  readonly dipDeg: number;
  readonly azimuthDeg?: number;
  /** Total field in nanotesla and magnetic dip, down positive, where the tool gives them. */
  readonly fieldNt?: number;
  readonly magneticDipDeg?: number;
}

/** The better of two tools where both were run: what north it finds by itself, what it is told, what steel can draw. Common practice. */
const RANK_OF_CLASS: Readonly<Record<SurveyRun['toolClass'], number>> = {
  'north-seeking gyro': 60,
  'gyro aligned at the collar': 50,
  magnetic: 40,
};

/** The run that the next shot belongs to: the one begun last. */
export function openRun(hole: Document): readonly [Id, SurveyRun] | undefined {
  return holeThings(hole, 'runs').at(-1);
}

/** A run with its rank (as said, else by its class of tool) and its time. */
export function ranked(said: RunSaid, maker: Pick<Maker, 'at'>): SurveyRun {
  return { ...said, rank: said.rank ?? RANK_OF_CLASS[said.toolClass], at: maker.at };
}

/** The run begun last on any hole: most likely the next one is like it. */
export function latestRun(documents: Iterable<Document>): SurveyRun | undefined {
  return [...documents]
    .filter((document) => document.kind === 'hole')
    .flatMap((hole) => holeNouns(hole, 'runs'))
    .reduce<SurveyRun | undefined>(
      (last, run) => (last === undefined || instantMs(run.at) >= instantMs(last.at) ? run : last),
      undefined,
    );
}

/** Begins a run of shots, as yet without one. */
export function beginRun(said: RunSaid, maker: Maker): Made {
  const made = recordRun(ranked(said, maker), [], maker);
  return { ...made, what: `Survey run begun: ${said.toolClass}, ${said.north} north` };
}

/** Begins a run said on one line (`north-seeking in open tool gyro 2`); refused, with the form, where it can't be read. */
export function beginRunSaid(hole: Document, said: string, maker: Maker): Result<Made> {
  const read = readRunSaid(said);
  if (read.ok) {
    const made = beginRun(read.run, dated(maker, read.on));
    // A run turned by the angle to another north looks sound by itself: what was not said is not taken in silence.
    return ok(read.northSaid ? made : { ...made, what: `${made.what} (the usual one, as none was given)` });
  }
  return refused(
    REFUSALS.shotUnread.at(placeOf(hole), {
      excerpt: said,
      problem: read.problem,
      remedy: `Say it as: ${RUN_FORM}.`,
    }),
  );
}

/** The maker at noon of another day by the same clock, where a day was said. */
export function dated(maker: Maker, on: string | undefined): Maker {
  if (on === undefined) return maker;
  const at = parseStamp(`${on}T12:00:00${maker.at.slice(19)}`);
  return at === undefined ? maker : { ...maker, at };
}

/** Records a shot in the run that is open. Refused without a run, below the drilled depth, or where the run has one at its depth. */
export function recordShotRead(
  project: Pick<Project, 'survey'>,
  hole: Document,
  read: ShotRead,
  maker: Maker,
): Result<Made> {
  const open = openRun(hole);
  const place = { ...placeOf(hole), fromMm: read.depthMm };
  if (open === undefined)
    return refused(
      REFUSALS.notThere.at(place, {
        problem: 'no survey run is begun: which tool reads, and from which north, is not known',
        remedy: 'Begin one: ;run and what reads it, like ;run north-seeking tool gyro 2; or F6, then r.',
      }),
    );
  const [id, run] = open;
  const shot: Shot = { ...read, run: id, at: maker.at, by: maker.by };
  // Beside the run's other shots: what a slipped depth likely was is the next one of the schedule.
  const before = holeThings(hole, 'shots').flatMap(([, each]) => (each.run === id ? [each] : []));
  const below = checkShotBelowDrilled(
    { id, run, shots: [...before, shot] },
    headsOf(hole).drilledMm,
    project.survey,
    placeOf(hole),
  ).filter(({ place: { fromMm } }) => fromMm === read.depthMm);
  if (below.length > 0) return refused(...below);
  const there = holeThings(hole, 'shots').find(
    ([, each]) => each.run === id && each.depthMm === read.depthMm && each.rejected === undefined,
  );
  if (there !== undefined)
    return refused(
      REFUSALS.overlap.at(place, {
        problem: `the run has a shot at ${formatDepth(read.depthMm)} m`,
        remedy:
          'If it was only misread or mistyped, type corrects at the end. If the tool was run again, reject the first one (F6, x) or begin a new run.',
      }),
    );
  return ok(recordShot(shot, maker));
}

/** What the checks would say anew, were a shot recorded. */
export interface ShotDoubts {
  /** Of the shot itself or of its run; the gravest first, as it names the likely cause. */
  readonly own: readonly Finding[];
  /** Of shots recorded before, that it brings to light: a misread one shows once the next, good one is there. */
  readonly earlier: readonly Finding[];
}

/**
 * What the checks would say anew, were a shot recorded: those of the survey page, in the path made with it, beside the other holes
 * (`documents`). Empty where nothing is doubtful, and where no run is open.
 */
export function doubtsOfShot(
  project: Project,
  hole: Document,
  read: ShotRead,
  maker: Pick<Maker, 'at' | 'by'>,
  documents: Iterable<Document>,
): ShotDoubts {
  const open = openRun(hole);
  if (open === undefined) return { own: [], earlier: [] };
  const directions = directionsOf(project, hole);
  const shot: Shot = { ...read, run: open[0], at: maker.at, by: maker.by };
  const neighbours = neighbourBends(project, hole, documents);
  const known = checksBeside(project, directions, neighbours).findings;
  const others = directions.shots.filter((each) => each.run !== shot.run || each.depthMm !== shot.depthMm);
  const after = checksBeside(project, { ...directions, shots: [...others, shot] }, neighbours).findings;
  const all = newFindings(known, after).filter((one) => !isGapBelow(one, read.depthMm));
  const earlier = all.filter((one) => isOfAnotherShot(one, read.depthMm));
  return {
    own: all
      .filter((one) => !earlier.includes(one))
      .filter((one, index, own) => own.findIndex((other) => other.code === one.code) === index)
      .sort((a, b) => Number(b.severity === 'fault') - Number(a.severity === 'fault')),
    earlier,
  };
}

/** True of a finding about a shot, or metres between shots, at other depths. */
function isOfAnotherShot({ place: { fromMm, toMm = fromMm } }: Finding, depthMm: number): boolean {
  return fromMm !== undefined && toMm !== undefined && (depthMm < fromMm || depthMm > toMm);
}

/** Doubts about shots recorded before, in words: `the shot at 90 m looks wrong: …`. */
export function earlierWords(earlier: readonly Finding[]): readonly string[] {
  return earlier.map(({ place: { fromMm = 0, toMm }, problem }) =>
    toMm === undefined || toMm === fromMm
      ? `the shot at ${formatDepth(fromMm)} m looks wrong: ${problem}`
      : `${formatDepth(fromMm)}–${formatDepth(toMm)} m: ${problem}`,
  );
}

/** True of metres without a shot that lie below a depth: the next shots fill them, and no shot above is in doubt for them. */
export function isGapBelow({ code, place: { fromMm } }: Finding, depthMm: number): boolean {
  return code === shotGap.code && fromMm !== undefined && fromMm >= depthMm;
}

/** Findings that were not there before. */
export function newFindings(before: readonly Finding[], after: readonly Finding[]): readonly Finding[] {
  const known = new Set(before.map(sameness));
  return after.filter((finding) => !known.has(sameness(finding)));
}

function sameness(finding: Finding): string {
  return `${finding.code} ${finding.place.fromMm} ${finding.place.thing} ${finding.problem}`;
}

/** Which part of a shot is not used: its azimuth alone (keep the dip), or all of it. */
export type RejectedPart = 'azimuth' | 'shot';

const FIELD = { azimuth: 'azimuthRejected', shot: 'rejected' } as const;

/** True where that part of a shot is rejected now. */
export function isRejected(shot: Shot, part: RejectedPart): boolean {
  return shot[FIELD[part]] !== undefined;
}

/**
 * Rejects a shot or its azimuth alone, or takes it into use again where it is rejected; either way with the reason, which stays in
 * the history. Refused where the shot is gone or has no azimuth.
 */
export function turnRejection(hole: Document, id: Id, part: RejectedPart, reason: string): Result<Made> {
  const shot = holeThing(hole, 'shots', id);
  if (shot === undefined || (part === 'azimuth' && shot.azimuthDeg === undefined))
    return refused(
      REFUSALS.notThere.at(
        { hole: headerOf(hole).name },
        {
          problem: shot === undefined ? 'the shot is not there' : 'the shot has no azimuth',
          remedy: 'Look at the shots again.',
        },
      ),
    );
  const what = `${part === 'azimuth' ? 'azimuth' : 'shot'} at ${formatDepth(shot.depthMm)} m`;
  return ok(
    isRejected(shot, part)
      ? {
          what: `${what} used again: ${reason}`,
          changes: [{ patch: ['shots', id], unset: [FIELD[part]] }],
        }
      : {
          what: `${what} rejected: ${reason}`,
          changes: [{ patch: ['shots', id], set: { [FIELD[part]]: reason } }],
        },
  );
}
