import type { Outside } from '../desk/outside.ts';
import type { Finding } from '../finding/finding.ts';
import { csvText } from '../finding/sheet-text.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';
import {
  expectedFindingsOf,
  expectedLoggedOf,
  hazardsOf,
  surveyChecksOf,
  surveyOf,
  targetOf,
} from '../standing/survey.ts';
import type { PathPoint } from '../survey/path/path.ts';
import { MINE_COLUMNS, POSITION_COLUMNS, positionRows } from '../survey/path/position-table.ts';
import { pathByMetre } from '../survey/path/projection.ts';
import { atProject, holeNamed, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayFile, sayJson } from './say.ts';
import { surveyPage, surveySvg } from './survey-page.ts';
import { surveyText } from './survey-text.ts';

/** What `offsider survey` is given. */
export interface SurveyAsked extends Shared {
  readonly hole: string;
  readonly json: boolean;
  /** Positions by metre as CSV. */
  readonly csv: boolean;
  /** The hole from above or from the side, as an SVG picture. */
  readonly svg?: 'plan' | 'section' | undefined;
  /** Both pictures and the words, as one page for a browser. */
  readonly html?: boolean;
}

/** Says where a hole goes: its stations, how it comes out at the target, and what is wrong with the shots. */
export function survey(outside: Outside, asked: SurveyAsked): Promise<number> {
  return atProject(outside, asked, async ({ project, ...at }) => {
    const hole = holeNamed({ project, ...at }, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const standing = surveyOf(project, hole.value);
    const documents = [...at.desk.documents().values()];
    const checks = surveyChecksOf(project, hole.value, documents);
    const findings = [...checks.findings, ...expectedFindingsOf(project, hole.value)];
    if (asked.svg !== undefined) {
      const picture = surveySvg(project, hole.value, asked.svg);
      if (picture === undefined) return refuse(outside, noDirection(hole.value));
      sayFile(outside, picture);
    } else if (asked.html === true) sayFile(outside, surveyPage(project, hole.value, documents));
    else if (asked.csv) sayFile(outside, positionsCsv(project, hole.value));
    else if (asked.json) {
      const { path: _path, site: _site, ...facts } = standing;
      sayJson(outside, {
        ...facts,
        findings,
        unseen: checks.unseen,
        target: targetOf(project, hole.value),
        expected: expectedLoggedOf(project, hole.value),
        hazards: hazardsOf(project, hole.value, documents),
        positions: pointsOf(project, hole.value),
      });
    } else say(outside, surveyText(project, hole.value, documents));
    return findings.some((finding) => finding.severity !== 'note') ? EXIT.findings : EXIT.fine;
  });
}

function noDirection(hole: Document): Finding {
  return wrongUse.at(
    { hole: headerOf(hole).name },
    {
      problem: 'no direction is known yet: there is nothing to draw',
      remedy: 'Record the line-up or a shot first.',
    },
  );
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
