import type { Finding } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { checkContaminated, checkHygiene } from '../sampling/recovery/hygiene.ts';
import { checkRecovery } from '../sampling/recovery/recovery-check.ts';
import { checkUnmended } from '../sampling/rod/unmended.ts';
import { checkUnbagged } from '../sampling/stream/issue.ts';
import { checkMovedRows } from '../sampling/stream/moved-rows.ts';
import { checkNoSamples } from '../sampling/stream/no-sample.ts';
import { rodsDown } from './hygiene.ts';
import { waitingMismatches } from './mismatches.ts';
import { streamMetres } from './recovery.ts';
import { bagsOnGround, streamStateOf } from './stream.ts';

/** What stands out in the sample stream of a hole: mismatches not mended, numbers kept as no sample, rows moved over issued bags, hygiene by rod, contaminated and wet metres, recovery, splits off their target. */
export function streamFindings(project: Project, hole: Document): readonly Finding[] {
  const { name } = headerOf(hole);
  const metres = streamMetres(project, hole);
  return [
    ...checkUnmended(
      name,
      waitingMismatches(hole).map(([, rod]) => rod),
    ),
    ...checkUnbagged(project.sampling, name, streamStateOf(hole)),
    ...checkMovedRows(hole),
    ...checkNoSamples(name, bagsOnGround(hole)),
    ...checkHygiene(name, rodsDown(hole), project.sampling.hygieneEveryRods),
    ...checkContaminated(name, metres),
    ...checkRecovery(project.sampling, name, metres),
  ];
}
