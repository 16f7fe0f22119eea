import type { Project } from '../project/project.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import type { LineUpTaken, PlannedHere } from './line-up.ts';

/** The steps of a line-up, in the order of work. */
const LINE_UP_STEPS = [
  'cautions',
  'permission',
  'way',
  'azimuth',
  'distance',
  'compass',
  'crew dip',
  'clinometer',
  'collar',
  'result',
] as const;
export type LineUpStep = (typeof LINE_UP_STEPS)[number];

/** A line-up being made: which step is in hand and what was read so far. */
export interface LineUpReading {
  readonly step: LineUpStep;
  readonly taken: LineUpTaken;
  /** Metres from the rig at which the compass is read now. */
  readonly distanceM?: number;
}

/** What the steps are read against. */
export interface LineUpContext {
  readonly project: Project;
  readonly hole: Document;
  readonly documents: readonly Document[];
  readonly here: PlannedHere;
  readonly person: string;
  readonly now: Stamp;
}

/** Steps of a line-up that are asked: no azimuth of the mast where it is set by compass, no compass where its reading can't be told. */
export function stepsOf(form: Pick<LineUpReading, 'taken'>, context: LineUpContext): readonly LineUpStep[] {
  const alone = form.taken.way === 'compass';
  return LINE_UP_STEPS.filter(
    (step) =>
      (step !== 'azimuth' || !alone) &&
      ((step !== 'distance' && step !== 'compass') || context.here.magnetic !== undefined),
  );
}
