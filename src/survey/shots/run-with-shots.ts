import type { Place } from '../../finding/place.ts';
import type { Shot, SurveyRun } from '../../hole/direction.ts';
import type { Id } from '../../record/document.ts';

/** A run of a tool with its shots, in the order they were recorded. */
export interface RunWithShots {
  readonly id: Id;
  readonly run: SurveyRun;
  readonly shots: readonly Shot[];
}

/** Where a shot is: its hole, its depth, the tool and pass of its run. */
export function placeOfShot(
  place: Place,
  run: Pick<SurveyRun, 'tool' | 'pass'>,
  shot: Pick<Shot, 'depthMm'>,
): Place {
  return {
    ...place,
    fromMm: shot.depthMm,
    thing: `${run.tool}${run.pass === 'single' ? '' : `, ${run.pass}`}`,
  };
}

/** True where both the dip and the azimuth of a shot are to be used as far as anyone has said. */
export function stands(shot: Shot): boolean {
  return shot.rejected === undefined && shot.azimuthRejected === undefined && shot.azimuthDeg !== undefined;
}
