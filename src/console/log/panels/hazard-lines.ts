import type { Project } from '../../../project/project.ts';
import type { Document } from '../../../record/document.ts';
import { headsOf } from '../../../standing/heads.ts';
import { hazardsOf } from '../../../standing/survey.ts';
import { type Line, line } from '../../widgets/line.ts';

/**
 * Hazard zones that the drilled head is near, each in a line that fits the narrowest panel, and that no warning is no clearance.
 * Depths are cut down to the metre: a zone never comes above the figure. Nothing where no zone is near.
 */
export function hazardLines(project: Project, hole: Document): readonly Line[] {
  const warnings = [...hazardsOf(project, hole)].sort((a, b) => a.earliestMm - b.earliestMm);
  if (warnings.length === 0) return [];
  const { drilledMm } = headsOf(hole);
  const lines = warnings.map(({ hazard, earliestMm }) => {
    const ahead = earliestMm - drilledMm;
    const where = ahead > 0 ? `${Math.floor(ahead / 1000)} m ahead` : 'at it now';
    return line(`${hazard.toUpperCase()} from ${Math.floor(earliestMm / 1000)} m: ${where}`, 'alert');
  });
  return [...lines, line('No warning is no clearance.', 'alert')];
}
