import type { North } from '../../quantity/azimuth.ts';
import type { Id } from '../../record/document.ts';
import { radians } from '../direction.ts';
import type { NorthAngles } from '../norths/norths.ts';
import type { ErrorClass, ToolErrors } from '../settings.ts';
import { factorOf, solveLower } from './factor.ts';

/** Something that says which way the hole goes: the line-up (or the plan where there is none), or a run. */
export interface Source {
  readonly id: Id | 'line-up';
  readonly tool: string;
  readonly toolClass: ErrorClass;
  readonly north: North;
  readonly pass: 'in' | 'out' | 'single';
  readonly angles: NorthAngles;
}

/** One number read: how far it is from the direction that the hole was set (or planned) in, degrees, both from one north. */
export interface Reading {
  readonly source: Source;
  readonly depthMm: number;
  readonly dipDeg: number;
  readonly offDeg: number;
}

/** How holes of the program bend, degrees in space per 30 m: their mean, and how far one hole is from it (one sigma). */
export interface Bend {
  readonly meanPer30m: number;
  readonly sigmaPer30m: number;
}

/** Readings of one kind (azimuths, or dips) with what one sigma of each may be, and how those hang together. */
export interface Evidence {
  readonly readings: readonly Reading[];
  /** Lower triangle of the covariance, factored. */
  readonly factor: readonly (readonly number[])[];
  /** The readings freed of everything that binds them: independent, each of one sigma. */
  readonly freed: readonly number[];
}

/** What the covariance of readings is made from. */
export interface EvidenceModel {
  readonly kind: 'azimuth' | 'dip';
  readonly errors: Readonly<Record<ErrorClass, ToolErrors>>;
  readonly bend: Bend;
  /** How far the hole may have started from the direction it is compared with, before the line-up is read, degrees. */
  readonly startDeg: number;
}

/** Wander beyond a steady bend: a hole changes its direction by so much in 30 m at random, degrees in space. From memory. */
export const WANDER_PER_30_M = 0.35;

/**
 * Errors of one run hang together over such a length of hole: a gyro warms up, a reading creeps. This part of the random error again is of
 * that kind, so that a run in and a run out of a good tool part a little towards one end. From memory.
 */
const SLOW_OVER_MM = 60_000;
const SLOW_PART = 0.33;

/** A depth is a few decimetres out and two readings at one depth are not quite of one place: this much of a reading is its own. */
const OWN_DEG = 0.05;

/**
 * Evidence from readings: a hole that starts within `startDeg`, bends steadily and wanders; the line-up's error, which a gyro aligned at
 * the collar inherits in azimuth; one systematic error a run, and a slow one that comes and goes along it; one random error a reading. All normal and independent, so that the
 * covariance of two readings is the sum of what they share. A bend is an angle in space; in azimuth it is larger by 1 / cos(dip).
 */
export function evidenceOf(readings: readonly Reading[], model: EvidenceModel): Evidence {
  const factor = factorOf(
    readings.map((a, row) => readings.slice(0, row + 1).map((b) => shared(a, b, model))),
  );
  const expected = readings.map((one) => (model.bend.meanPer30m * one.depthMm) / 30_000 / across(one, model));
  return {
    readings,
    factor,
    freed: solveLower(
      factor,
      readings.map((one, index) => one.offDeg - expected[index]!),
    ),
  };
}

/** The covariance of two readings, square degrees. */
function shared(a: Reading, b: Reading, model: EvidenceModel): number {
  const [inA, inB] = [a, b].map((one) => one.depthMm / 30_000) as [number, number];
  const bends = model.bend.sigmaPer30m ** 2 * inA * inB + WANDER_PER_30_M ** 2 * Math.min(inA, inB);
  const tool = model.errors[a.source.toolClass];
  const [systematic, random] =
    model.kind === 'azimuth'
      ? [tool.azimuthSystematicDeg, tool.azimuthRandomDeg]
      : [tool.dipSystematicDeg, tool.dipRandomDeg];
  const run = a.source.id === b.source.id && a.source.toolClass !== 'line-up' ? systematic ** 2 : 0;
  const own = a === b ? random ** 2 + OWN_DEG ** 2 : 0;
  const slow =
    a.source === b.source && a.source.toolClass !== 'line-up'
      ? (SLOW_PART * random) ** 2 * Math.exp(-Math.abs(a.depthMm - b.depthMm) / SLOW_OVER_MM)
      : 0;
  const set = model.errors['line-up'];
  const lineUp =
    model.kind === 'azimuth'
      ? inheritsLineUp(a.source) && inheritsLineUp(b.source)
        ? set.azimuthSystematicDeg ** 2
        : 0
      : a.source.toolClass === 'line-up' && b.source.toolClass === 'line-up'
        ? set.dipSystematicDeg ** 2
        : 0;
  return model.startDeg ** 2 + bends / (across(a, model) * across(b, model)) + run + own + slow + lineUp;
}

/** True where an azimuth hangs on the line-up: its own, and those of a gyro that was aligned to it. */
export function inheritsLineUp({ toolClass }: Pick<Source, 'toolClass'>): boolean {
  return toolClass === 'line-up' || toolClass === 'gyro aligned at the collar';
}

/** What a degree in space is of a degree read. */
function across({ dipDeg }: Reading, { kind }: EvidenceModel): number {
  return kind === 'azimuth' ? Math.max(0.05, Math.cos(radians(dipDeg))) : 1;
}
