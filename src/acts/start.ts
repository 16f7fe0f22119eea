import type { Result } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { startDrilling } from '../hole/commands/states.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';

/** Drilling starts, or goes on, with a rig of the project, from the drilled head down; its bit is taken from project.json. */
export function startWithRig(project: Project, hole: Document, rig: string, maker: Maker): Result<Made> {
  const bitMm = project.settings.rigs.find((each) => each.name === rig)?.bitMm;
  const interval = {
    method: 'RC',
    rig,
    fromMm: headsOf(hole).drilledMm,
    ...(bitMm === undefined ? {} : { bitMm }),
    startedAt: maker.at,
  };
  return startDrilling(hole, interval, maker);
}
