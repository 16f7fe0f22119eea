import type { Outside } from '../desk/outside.ts';
import { formatFinding } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatAzimuth } from '../quantity/azimuth.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatDip } from '../quantity/dip.ts';
import type { Document } from '../record/document.ts';
import { csvText } from '../sampling/sheet-text.ts';
import { headsOf } from '../standing/heads.ts';
import { surveyOf, targetOf } from '../standing/survey.ts';
import type { PathPoint } from '../survey/path.ts';
import { MINE_COLUMNS, POSITION_COLUMNS, positionRows } from '../survey/position-table.ts';
import { pathByMetre } from '../survey/projection.ts';
import { atProject, holeNamed } from './at-project.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { tableText } from './table-text.ts';

/** What `offsider survey` is given. */
export interface SurveyAsked {
  readonly folder: string;
  readonly hole: string;
  readonly json: boolean;
  /** Positions by metre as CSV. */
  readonly csv: boolean;
}

/** Says where a hole goes: its stations, how it comes out at the target, and what is wrong with the shots. */
export function survey(outside: Outside, asked: SurveyAsked): Promise<number> {
  return atProject(outside, { folder: asked.folder }, async ({ project, ...at }) => {
    const hole = holeNamed({ project, ...at }, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const standing = surveyOf(project, hole.value);
    if (asked.csv) outside.stdout.write(positionsCsv(project, hole.value));
    else if (asked.json) {
      const { path: _path, site: _site, ...facts } = standing;
      sayJson(outside, {
        ...facts,
        target: targetOf(project, hole.value),
        positions: pointsOf(project, hole.value),
      });
    } else say(outside, surveyText(project, hole.value));
    return standing.findings.some((finding) => finding.severity !== 'note') ? EXIT.findings : EXIT.fine;
  });
}

function pointsOf(project: Project, hole: Document): readonly PathPoint[] {
  const { path } = surveyOf(project, hole);
  return path === undefined ? [] : pathByMetre(path, headsOf(hole).drilledMm);
}

function positionsCsv(project: Project, hole: Document): string {
  const { collar, site } = surveyOf(project, hole);
  const mineGrid = collar === undefined ? undefined : site.mineGrid;
  return csvText([
    [...POSITION_COLUMNS, ...(mineGrid === undefined ? [] : MINE_COLUMNS)],
    ...positionRows(pointsOf(project, hole), collar, mineGrid),
  ]);
}

function surveyText(project: Project, hole: Document): string {
  const { stations, findings } = surveyOf(project, hole);
  const rows = stations.map((station) => [
    formatDepth(station.depthMm),
    formatAzimuth(station.azimuth),
    formatDip(station.dip),
    station.basis,
  ]);
  return [
    `${headerOf(hole).name}, drilled ${formatDepth(headsOf(hole).drilledMm)} m`,
    ...(rows.length === 0
      ? ['No direction is recorded.']
      : [tableText([['depth m', 'azimuth', 'dip', ''], ...rows])]),
    ...targetLines(project, hole),
    ...findings.map(formatFinding),
  ].join('\n');
}

function targetLines(project: Project, hole: Document): readonly string[] {
  const target = targetOf(project, hole);
  if (target === undefined) return [];
  return [
    '',
    `Measured to ${formatDepth(target.measuredMm)} m, ${target.offPlanM.toFixed(1)} m off the plan there. Target at ${formatDepth(target.targetMm)} m:`,
    ...target.ways.map(
      ({ projection, miss, nearest, chance }) =>
        `  ${projection === 'straight' ? 'straight on' : 'on the trend'}: misses by ${miss.totalM.toFixed(1)} m; closest ${nearest.distanceM.toFixed(1)} m at ${(nearest.depthMm / 1000).toFixed(1)} m; ${Math.round(chance * 100)} % within ${project.survey.targetRadiusM} m by the errors of the tools`,
    ),
  ];
}
