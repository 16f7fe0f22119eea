import { ok, type Result, refused } from '../finding/finding.ts';
import { recordNotLinedUp } from '../hole/commands/direction.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { startDrilling } from '../hole/commands/states.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';
import { cautionsOf, isNotLinedUp, wantsLineUp } from '../standing/lined-up.ts';

/** Why there is no line-up, for a hole that was begun without one; refused for any other. */
export function notLinedUp(hole: Document, because: string, maker: Maker): Result<Made> {
  if (isNotLinedUp(hole)) return ok(recordNotLinedUp(because, maker));
  return refused(
    REFUSALS.notThere.at(
      { hole: headerOf(hole).name },
      {
        problem: 'no line-up is missing here',
        remedy: 'A reason is for a hole that is drilled to a plan and was not lined up.',
      },
    ),
  );
}

/**
 * What is said where a hole begins without a line-up: how to make one, then the cautions of it and of the site, which no one has read.
 * Nothing for a hole that is lined up or has no plan.
 */
export function beginsUnlined(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
): readonly string[] {
  if (!wantsLineUp(hole) || headerOf(hole).notLinedUp !== undefined) return [];
  return [
    'NOT LINED UP, cautions not read: Ctrl-Y (offsider line-up).',
    ...cautionsOf(project, hole, documents),
  ];
}

/** Drilling starts, or goes on, with a rig of the project, from the drilled head down; its bit is taken from project.json. */
export function startWithRig(project: Project, hole: Document, rig: string, maker: Maker): Result<Made> {
  const { bitMm, method = 'RC' } = project.settings.rigs.find((each) => each.name === rig) ?? {};
  const interval = {
    method,
    rig,
    fromMm: headsOf(hole).drilledMm,
    ...(bitMm === undefined ? {} : { bitMm }),
    startedAt: maker.at,
  };
  return startDrilling(hole, interval, maker);
}
