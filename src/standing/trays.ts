import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { type ListedTray, trayList } from '../sampling/trays.ts';
import { headsOf } from './heads.ts';

/** A hole as the list of its chip trays reads it: down to the drilled head. */
export function trayedHole(hole: Document) {
  const { name, logFromMm } = headerOf(hole);
  return { name, startMm: logFromMm, toMm: headsOf(hole).drilledMm, trays: holeNouns(hole, 'trays') };
}

/** The chip trays of a hole down to the drilled head, with the photographs registered to them. */
export function traysOf(project: Project, hole: Document): readonly ListedTray[] {
  return trayList(project.sampling, trayedHole(hole));
}
