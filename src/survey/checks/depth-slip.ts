import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Shot } from '../../hole/direction.ts';
import { type Depth, depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { depthSlip } from '../findings.ts';
import type { SurveySettings } from '../settings.ts';
import { placeOfShot, type RunWithShots } from '../shots/run-with-shots.ts';
import { METRES_PER_FOOT, swappedDigits } from './misread-depth.ts';
import { isDown, keepOneStep } from './shot-order.ts';

/** A step from shot to shot may be out by this much and still be the run's own step, metres, or this part of it. */
const STEP_SLACK_M = 1.5;
const STEP_SLACK_PART = 0.06;
/** So many of the other steps must be the run's own before it counts as having one. */
const REGULAR_PART = 0.7;
/** Fewer steps than this are no habit: single shots are then compared with the project's schedule. */
const FEWEST_STEPS = 3;
/** Steps that runs are taken in, metres: common practice. */
const WHOLE_STEPS_M = [3, 5, 6, 10, 12, 15, 20, 25, 30, 50] as const;
/** Fewer depths than this fall on whole metres by chance once they are taken as feet. */
const FEWEST_IN_FEET = 4;

type DepthSettings = Pick<SurveySettings, 'firstShotM' | 'shotEveryM'>;

/** Depths that look slipped, and the run without those shots: where they really are is not known. */
export interface DepthSlips {
  readonly findings: readonly Finding[];
  readonly sound: RunWithShots;
  /** Where the shots that slipped would be: each as its finding says, a run that reads as feet in metres; millimetres. */
  readonly meantMm: readonly Depth[];
}

/** Depths of a run that look slipped: the whole run in feet, or single ones with two digits swapped or in feet. */
export function checkDepthSlips(
  { id, run, shots }: RunWithShots,
  drilledMm: Depth,
  settings: DepthSettings,
  place: Place,
): DepthSlips {
  const kept = shots.filter((shot) => shot.rejected === undefined);
  const isUp = run.pass === 'out' && !isDown(kept.map(({ depthMm }) => depthMm));
  const typed = isUp ? [...kept].reverse() : kept;
  const isLate = keepOneStep(kept.map(({ depthMm }) => depthMm));
  const down = isLate ? kept.toSorted((a, b) => a.depthMm - b.depthMm) : typed;
  const depths = down.map((shot) => shot.depthMm / 1000);
  const first = down[0];
  if (first === undefined) return { findings: [], sound: { id, run, shots }, meantMm: [] };
  if (inFeet(depths, run.pass === 'single', settings))
    return {
      findings: [runInFeet(down, run, place)],
      sound: { id, run, shots: [] },
      meantMm: depths.map((depth) => depthFromMetres(depth * METRES_PER_FOOT)),
    };
  const slipped = new Map<Shot, Depth>();
  const findings = down.flatMap((shot, index) => {
    const slip = slipAt(depths, index, { run, settings, drilledM: drilledMm / 1000 });
    if (slip === undefined) return [];
    slipped.set(shot, depthFromMetres(slip.asM));
    return [
      depthSlip.at(placeOfShot(place, run, shot), {
        excerpt: `${formatDepth(shot.depthMm)} m${neighbourWords(depths, index)}`,
        problem: `the depth is out of step with the others; ${slip.what} it would be ${slip.asM.toFixed(1)} m, in step`,
        remedy: `Check the depth on the driller's sheet; if it is ${slip.asM.toFixed(1)} m, reject this shot and record it again.`,
      }),
    ];
  });
  const sound = { id, run, shots: shots.filter((shot) => !slipped.has(shot)) };
  return { findings, sound, meantMm: [...slipped.values()] };
}

interface Context {
  readonly run: RunWithShots['run'];
  readonly settings: DepthSettings;
  readonly drilledM: number;
}

/** What would bring a depth that is out of step back into it; undefined where it is in step or nothing does. */
function slipAt(
  depths: readonly number[],
  index: number,
  { run, settings, drilledM }: Context,
): { readonly what: string; readonly asM: number } | undefined {
  const single = run.pass === 'single';
  const depthM = depths[index]!;
  const stepM = stepOf(
    depths.filter((_, each) => each !== index),
    single,
    settings,
  );
  if (stepM === undefined) return undefined;
  const slackM = Math.max(STEP_SLACK_M, STEP_SLACK_PART * stepM);
  const above = depths[index - 1];
  const below = depths[index + 1];
  const gaps = (asM: number) => [
    ...(above === undefined ? [] : [asM - above]),
    ...(below === undefined ? [] : [below - asM]),
    // The first shot is at the project's depth as far as nothing below it says more: a rod more or less is not a slip.
    ...(above === undefined && below === undefined && single ? [asM - settings.firstShotM + stepM] : []),
  ];
  const inStep = (gap: number) =>
    gap > 0 && Math.abs(gap - Math.max(1, Math.round(gap / stepM)) * stepM) <= slackM;
  const asIs = gaps(depthM);
  if (asIs.every(inStep)) return undefined;
  const possible = candidates(depthM, run.toolOffsetMm / 1000).filter(
    ({ asM }) => asM > 0 && asM <= drilledM,
  );
  const next = possible.find(({ asM }) => gaps(asM).every((gap) => Math.abs(gap - stepM) <= slackM));
  if (next !== undefined || !single) return next;
  // Stations were left out beside it: then only a depth of the schedule, in the place of one that is not, and of none that its neighbours bear out.
  const isAlone = above === undefined && below === undefined;
  if (isAlone || asIs.some(inStep) || isScheduled(depthM, settings)) return undefined;
  return possible.find(({ asM }) => isScheduled(asM, settings) && gaps(asM).every(inStep));
}

/** The step of the other depths of a run: its own, or the project's where they are few, or keep to it with stations left out. */
function stepOf(
  others: readonly number[],
  single: boolean,
  { shotEveryM }: DepthSettings,
): number | undefined {
  if (others.length <= FEWEST_STEPS) return single ? shotEveryM : undefined;
  const own = ownStep(others);
  if (own !== undefined || !single) return own;
  const isMultiple = (gap: number) =>
    gap > 0 && Math.abs(gap - Math.max(1, Math.round(gap / shotEveryM)) * shotEveryM) <= STEP_SLACK_M;
  const gaps = others.slice(1).map((depth, at) => depth - others[at]!);
  return gaps.filter(isMultiple).length / gaps.length >= REGULAR_PART ? shotEveryM : undefined;
}

/** True of a depth that the project's schedule has a shot at. */
function isScheduled(depthM: number, { firstShotM, shotEveryM }: DepthSettings): boolean {
  const steps = Math.round((depthM - firstShotM) / shotEveryM);
  return steps >= 0 && Math.abs(depthM - firstShotM - steps * shotEveryM) <= STEP_SLACK_M;
}

/** The step that most of the others keep, metres; undefined where they are too few or keep none. */
function ownStep(others: readonly number[]): number | undefined {
  const gaps = others.slice(1).map((depth, index) => depth - others[index]!);
  const sorted = [...gaps].sort((a, b) => a - b);
  const stepM = sorted[Math.floor((sorted.length - 1) / 2)]!;
  const slackM = Math.max(STEP_SLACK_M, STEP_SLACK_PART * stepM);
  // Where the one in doubt was taken out, its two steps make one of twice the length.
  const near = gaps.filter((gap) => [1, 2].some((times) => Math.abs(gap - times * stepM) <= slackM));
  return stepM > 0 && near.length / gaps.length >= REGULAR_PART ? stepM : undefined;
}

/** What a depth may have been: two digits the other way round, neighbours first, of the station or of the bit; or feet. */
function candidates(
  depthM: number,
  offsetM: number,
): readonly { readonly what: string; readonly asM: number }[] {
  const swapped = [0, ...(offsetM > 0 ? [offsetM] : [])].flatMap((behind) =>
    swappedDigits(depthM + behind).map((asM) => ({ what: 'with two digits swapped', asM: asM - behind })),
  );
  return [...swapped, { what: 'as feet', asM: depthM * METRES_PER_FOOT }];
}

/**
 * True where the depths of a run are feet: its steps are those of the schedule in feet (of two shots, the first of them too), or every
 * depth is a whole step in metres.
 */
function inFeet(depths: readonly number[], single: boolean, settings: DepthSettings): boolean {
  const gaps = depths.slice(1).map((depth, index) => depth - depths[index]!);
  // A station that was left out makes a gap of two or three steps.
  const scheduled = (gap: number) =>
    [1, 2, 3].some((steps) => Math.abs(gap * METRES_PER_FOOT - steps * settings.shotEveryM) <= 1);
  if (single && gaps.length >= 2 && gaps.every(scheduled)) return true;
  if (single && gaps.length === 1 && gaps.every(scheduled))
    return Math.abs(depths[0]! * METRES_PER_FOOT - settings.firstShotM) <= 1;
  if (depths.length < FEWEST_IN_FEET) return areFewInFeet(depths, settings);
  const whole = depths.every((depth) => Math.abs(depth - Math.round(depth)) < 0.005);
  return whole ? inWholeFeet(depths) : depths.every(wholeMetresInFeet) && !depths.some(isWhole);
}

/** Whole steps that hole after hole is surveyed at, metres: common practice. */
const USUAL_STEP_M = 30;

/** One to three shots that leave out the first stations of the schedule, each of them the whole feet of a usual station: 98, 197 for 30, 60. */
function areFewInFeet(depths: readonly number[], { firstShotM, shotEveryM }: DepthSettings): boolean {
  const isStation = (depth: number) =>
    [USUAL_STEP_M, shotEveryM].some((stepM) => {
      const steps = Math.round((depth * METRES_PER_FOOT) / stepM);
      return steps >= 1 && Math.round((steps * stepM) / METRES_PER_FOOT) === depth;
    });
  return (depths[0] ?? 0) > firstShotM + 2 * shotEveryM && depths.every(isStation);
}

/** Whole feet that are the rounded feet of one step in metres, where as metres their steps are uneven. */
function inWholeFeet(depths: readonly number[]): boolean {
  const gaps = new Set(depths.slice(1).map((depth, index) => depth - depths[index]!));
  if (gaps.size < 2) return false;
  return WHOLE_STEPS_M.some((stepM) =>
    depths.every((depth, index) => {
      const metres = Math.round((depth * METRES_PER_FOOT) / stepM) * stepM;
      const before =
        index === 0 ? metres - stepM : Math.round((depths[index - 1]! * METRES_PER_FOOT) / stepM) * stepM;
      const steps = (metres - before) / stepM;
      return metres > 0 && Math.round(metres / METRES_PER_FOOT) === depth && steps >= 1 && steps <= 3;
    }),
  );
}

const isWhole = (depth: number) => Math.abs(depth - Math.round(depth)) < 0.05;
const wholeMetresInFeet = (depth: number) => {
  const asM = depth * METRES_PER_FOOT;
  return Math.abs(asM - Math.round(asM)) < 0.04;
};

function runInFeet(down: readonly Shot[], run: RunWithShots['run'], place: Place): Finding {
  const first = down[0]!;
  const last = down[down.length - 1]!;
  const metres = ({ depthMm }: Shot) => ((depthMm / 1000) * METRES_PER_FOOT).toFixed(1);
  return depthSlip.at(
    { ...placeOfShot(place, run, first), ...(last === first ? {} : { toMm: last.depthMm }) },
    {
      excerpt:
        last === first
          ? `${formatDepth(first.depthMm)} m; × ${METRES_PER_FOOT} it is ${metres(first)} m`
          : `${formatDepth(first.depthMm)} to ${formatDepth(last.depthMm)} m; × ${METRES_PER_FOOT} it is ${metres(first)} to ${metres(last)} m`,
      problem: 'the depths of the run read as feet: so taken they fall on whole steps in metres',
      remedy: 'Check the unit on the sheet; if it is feet, reject these shots and record them in metres.',
    },
  );
}

function neighbourWords(depths: readonly number[], index: number): string {
  const above = depths[index - 1];
  const below = depths[index + 1];
  return [
    ...(above === undefined ? [] : [`, after ${above.toFixed(1)} m`]),
    ...(below === undefined ? [] : [`, before ${below.toFixed(1)} m`]),
  ].join('');
}
