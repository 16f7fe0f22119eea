import type { Finding } from '../finding/finding.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns, ownFromMm } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { checkTrays, type ListedTray, type TrayedHole, trayList } from '../sampling/trays/trays.ts';
import { headsOf } from './heads.ts';

/** A hole as the list of its chip trays reads it: down to the drilled head. */
export function trayedHole(hole: Document): TrayedHole {
  const { name, state } = headerOf(hole);
  return {
    name,
    isOver: isOver(state),
    startMm: ownFromMm(hole),
    toMm: headsOf(hole).drilledMm,
    trays: holeNouns(hole, 'trays'),
  };
}

/** The chip trays of a hole down to the drilled head, with the photographs registered to them. */
export function traysOf(project: Project, hole: Document): readonly ListedTray[] {
  return trayList(project.sampling, trayedHole(hole));
}

/**
 * What is wrong with the chip trays of a project: full ones without a photograph, ones filled with other metres. Nothing where no tray of
 * any hole is recorded yet: such a project keeps no trays, or photographs them elsewhere.
 */
export function trayFindings(project: Project, documents: Iterable<Document>): readonly Finding[] {
  const holes = [...documents].filter((document) => document.kind === 'hole');
  if (!holes.some((hole) => holeNouns(hole, 'trays').length > 0)) return [];
  return holes.flatMap((hole) => checkTrays(project.sampling, trayedHole(hole)));
}
