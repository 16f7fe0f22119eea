import { planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { type Picture, planPicture, sectionPicture } from '../survey/pictures/picture.ts';
import { headsOf } from './heads.ts';
import { expectedOf, surveyOf } from './survey.ts';

/** A hole from above or from the side, with its plan, target and expected zones; undefined while no direction is known. */
export function pictureOf(project: Project, hole: Document, view: 'plan' | 'section'): Picture | undefined {
  const { path, planned: plan } = surveyOf(project, hole);
  if (path === undefined) return undefined;
  const source = {
    path,
    plan,
    plannedMm: planOf(hole)?.depthMm,
    drilledMm: headsOf(hole).drilledMm,
    expected: expectedOf(project, hole),
  };
  return view === 'plan' ? planPicture(source) : sectionPicture(source);
}
