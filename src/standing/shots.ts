import { holeNouns } from '../hole/hole.ts';
import { type Depth, depthFromMetres, depthFromMm } from '../quantity/depth.ts';
import type { Document } from '../record/document.ts';
import type { SurveySettings } from '../survey/settings.ts';
import { headsOf } from './heads.ts';

/** Depth of the deepest shot, of any run, that is not wholly rejected; undefined while there is none. */
export function deepestShotMm(hole: Document): Depth | undefined {
  const depths = holeNouns(hole, 'shots')
    .filter((shot) => shot.rejected === undefined)
    .map((shot) => shot.depthMm);
  return depths.length === 0 ? undefined : depthFromMm(Math.max(...depths));
}

/** The shot that is due next, and whether the rig is past it already. Counted at the drilled head. */
export function nextShot(
  hole: Document,
  settings: SurveySettings,
): { readonly atMm: Depth; readonly overdue: boolean } {
  const last = deepestShotMm(hole);
  const atMm =
    last === undefined
      ? depthFromMetres(settings.firstShotM)
      : depthFromMm(last + depthFromMetres(settings.shotEveryM));
  return { atMm, overdue: headsOf(hole).drilledMm > atMm };
}
