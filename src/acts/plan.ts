import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, planOf } from '../hole/hole.ts';
import { formatAzimuth } from '../quantity/azimuth.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatDip } from '../quantity/dip.ts';
import type { Document, Thing } from '../record/document.ts';
import { readPlan } from './new-hole.ts';

/** Gives a hole the plan that was said (`270g -60 180`), or amends the one it has: what else stands in it stays, and history keeps the old one. */
export function setPlan(hole: Document, said: string): Result<Made> {
  const words = said.trim().split(/\s+/);
  const read =
    words.length === 3
      ? readPlan(words as [string, string, string])
      : { problem: 'Azimuth with its north, dip and depth are wanted.' };
  if ('problem' in read) {
    return refused(
      REFUSALS.planUnread.at(
        { hole: headerOf(hole).name },
        {
          excerpt: said,
          problem: read.problem.replace(/\.$/, ''),
          remedy: 'Type it like ;plan 270g -60 180.',
        },
      ),
    );
  }
  const direction = formatAzimuth({ deg: read.azimuthDeg, north: read.azimuthNorth });
  const what = `planned ${direction}, ${formatDip(read.dipDeg)}, to ${formatDepth(read.depthMm)} m`;
  const thing = read as Thing;
  if (planOf(hole) === undefined) return ok({ what, changes: [{ put: ['plan', 'plan'], thing }] });
  return ok({ what, changes: [{ patch: ['plan', 'plan'], set: thing }] });
}
