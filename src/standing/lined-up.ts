import type { Finding } from '../finding/finding.ts';
import { STANDING_FINDINGS } from '../hole/findings.ts';
import { headerOf, holeNouns, planOf } from '../hole/hole.ts';
import { USUAL_CAUTIONS } from '../project/cautions.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { hazardsMetBeside } from './met-beside.ts';
import { expectedOf } from './survey.ts';

/**
 * True of a hole that is drilled to a plan, here, from its collar, and of which no line-up was accepted: its direction was not checked, and no one is
 * recorded as having read its cautions. A deepening or a tail goes on in the direction that is there.
 */
export function wantsLineUp(hole: Document): boolean {
  const { imported, parent } = headerOf(hole);
  const goesOn = parent?.reason === 'deepening' || parent?.reason === 'tail';
  if (imported !== undefined || goesOn || planOf(hole) === undefined) return false;
  return !holeNouns(hole, 'lineUps').some(({ accepted }) => accepted);
}

/** The same, once the hole is begun. */
export function isNotLinedUp(hole: Document): boolean {
  return wantsLineUp(hole) && holeNouns(hole, 'drilling').length > 0;
}

/** A hole that was begun without a line-up, until one is recorded or someone says why there is none. */
export function lineUpFindings(hole: Document): readonly Finding[] {
  const { name, notLinedUp } = headerOf(hole);
  if (!isNotLinedUp(hole) || notLinedUp !== undefined) return [];
  return [
    STANDING_FINDINGS.notLinedUp.at(
      { hole: name },
      {
        problem: 'it is being drilled and no line-up is recorded: direction not checked, cautions not read',
        remedy:
          'Record it: Ctrl-Y in the console, or offsider line-up. Where that can’t be done any more, say why: ;not-lined-up reason.',
      },
    ),
  ];
}

/** The same for what is not finished: a plain sentence; with the reason where one was given. */
export function lineUpMissing(hole: Document): readonly string[] {
  if (!isNotLinedUp(hole)) return [];
  const { notLinedUp } = headerOf(hole);
  return [
    notLinedUp === undefined
      ? 'NOT LINED UP, cautions not read: Ctrl-Y, or ;not-lined-up and why.'
      : `Not lined up, by ${notLinedUp.by}, because: ${notLinedUp.because}.`,
  ];
}

/** What a hole's own ground and its site hold for people: hazards that are expected in it, then the cautions that the site added to the usual ones. */
export function cautionsOf(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
): readonly string[] {
  const zones = [
    ...expectedOf(project, hole).map(({ expected }) => expected),
    ...hazardsMetBeside(project, hole, documents),
  ];
  const hazards = zones.flatMap(({ name, hazard, fromMm, toMm }) =>
    hazard === undefined
      ? []
      : [
          `${hazard.toUpperCase()} expected ${toMm === undefined ? `from ${formatDepth(fromMm)}` : `at ${formatInterval({ fromMm, toMm })}`} m: ${name}.`,
        ],
  );
  const own = project.settings.hazards.cautions.filter((each) => !USUAL_CAUTIONS.includes(each));
  return [...hazards, ...own];
}
