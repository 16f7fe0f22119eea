import type { Made, Maker } from '../../hole/commands/made.ts';
import { planHole } from '../../hole/commands/plan-hole.ts';
import type { Project } from '../../project/project.ts';
import { type Depth, depthFromMetres } from '../../quantity/depth.ts';
import type { DocumentName } from '../../record/document.ts';
import type { PlannedHole } from './read-line.ts';

/** A position of the program in whole millimetres. */
export function collarMm({ eastM, northM, elevationM }: PlannedHole['collar']) {
  return {
    eastingMm: Math.round(eastM * 1000),
    northingMm: Math.round(northM * 1000),
    elevationMm: Math.round(elevationM * 1000),
  };
}

/** A planned hole as an edit: the document it makes, and what is in it. Rod length and offset are those of the project's first rig. */
export function plannedHole(
  project: Project,
  planned: PlannedHole,
  from: { readonly grid: string; readonly source: string },
  maker: Maker,
): { readonly document: DocumentName; readonly made: Made } {
  const [rig] = project.settings.rigs;
  const made = planHole(
    {
      header: {
        name: planned.name,
        plannedName: planned.name,
        state: 'planned',
        logFromMm: 0 as Depth,
        intervalMm: depthFromMetres(project.settings.log.intervalM),
        rodMm: depthFromMetres(rig?.rodM ?? 6),
        firstRodOffsetMm: depthFromMetres(rig?.firstRodOffsetM ?? 0),
      },
      plan: planned.plan,
      collar: {
        rank: 'planned',
        ...collarMm(planned.collar),
        grid: from.grid,
        source: from.source,
        at: maker.at,
        by: maker.by,
      },
    },
    maker,
  );
  return { document: { kind: 'hole', id: planned.name }, made };
}
