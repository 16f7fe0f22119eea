import type { Result } from '../../finding/finding.ts';
import type { Decision } from '../../hole/ending.ts';
import { headerOf, planOf } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import type { Depth } from '../../quantity/depth.ts';
import type { Stamp } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { hashJson } from '../../record/hash.ts';
import { adviceOn, situationOf } from '../../standing/advice.ts';
import { decide } from '../../termination/decision.ts';

/** What a person decides at the end of a hole. */
export interface EndGiven {
  readonly depthMm: Depth;
  readonly reason: string;
  readonly at: Stamp;
  readonly by: string;
}

/**
 * The decision to end a hole at a depth, with the verdict and the rules as they stand at that moment; refused where it goes
 * against the advice and gives no reason. Short of the planned depth it is an early end.
 */
export function endingDecision(project: Project, hole: Document, given: EndGiven): Result<Decision> {
  const situation = { ...situationOf(project, hole), drilledMm: given.depthMm };
  const { outcomes } = adviceOn(project, hole, situation);
  const planned = planOf(hole)?.depthMm;
  const kind = planned !== undefined && given.depthMm < planned ? 'ended early' : 'ended';
  return decide(
    {
      kind,
      reason: given.reason,
      at: given.at,
      by: given.by,
      rulesHash: hashJson(project.settings.termination),
      schemaHash: hashJson(project.schema),
    },
    outcomes,
    situation,
    { hole: headerOf(hole).name },
  );
}
