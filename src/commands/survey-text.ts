import { formatFinding } from '../finding/finding.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatAzimuth } from '../quantity/azimuth.ts';
import { formatDepth, metres } from '../quantity/depth.ts';
import { formatDip } from '../quantity/dip.ts';
import type { Document } from '../record/document.ts';
import { headsOf } from '../standing/heads.ts';
import {
  type AtTarget,
  expectedFindingsOf,
  expectedLoggedOf,
  hazardsOf,
  type SurveyStanding,
  surveyChecksOf,
  surveyOf,
  targetOf,
} from '../standing/survey.ts';
import { unseenWords } from '../survey/blunders/blunder-words.ts';
import { NO_CLEARANCE } from '../survey/expected/expected.ts';
import { expectedCells } from '../survey/expected/expected-words.ts';
import { bendBetween } from '../survey/path/severity.ts';
import {
  basisWords,
  chanceWords,
  ellipseWords,
  growthWords,
  leftOutWords,
  missSides,
  reachWords,
} from '../survey/path/target-words.ts';
import type { ChanceBasis } from '../survey/path/uncertainty.ts';
import { tableText } from './table-text.ts';

/** Where a hole goes, in words: stations and bends, how it comes out at its target, what the plan expects, every doubt. */
export function surveyText(project: Project, hole: Document, documents: Iterable<Document>): string {
  const survey = surveyOf(project, hole);
  const { stations } = survey;
  const { findings, unseen } = surveyChecksOf(project, hole, documents);
  return [
    `${headerOf(hole).name}, drilled ${formatDepth(headsOf(hole).drilledMm)} m`,
    ...(stations.length === 0 ? noStations(hole) : [stationTable(survey)]),
    ...targetLines(project, hole),
    ...expectedLines(project, hole, documents),
    ...[...findings, ...expectedFindingsOf(project, hole)].map(formatFinding),
    ...unseen.map(unseenWords),
  ].join('\n');
}

/** No path; where shots gave dips without an azimuth, they are listed, as they are. */
function noStations(hole: Document): readonly string[] {
  const shots = holeNouns(hole, 'shots')
    .filter((shot) => shot.rejected === undefined)
    .sort((a, b) => a.depthMm - b.depthMm);
  if (shots.length === 0) return ['No direction is recorded.'];
  return [
    'No path yet: dips are read, no azimuth is known. Record the line-up: ;line-up, or a shot with its azimuth.',
    tableText([
      ['depth m', 'dip'],
      ...shots.map((shot) => [formatDepth(shot.depthMm), formatDip(shot.dipDeg)]),
    ]),
  ];
}

const HEAD = ['depth m', 'azimuth', 'dip', '', 'bend', 'lift', 'turn', 'turn × cos dip'];

/** Stations with the bends from the one above, degrees per 30 m. */
function stationTable({ stations }: SurveyStanding): string {
  const rows = stations.map((station, index) => {
    const above = stations[index - 1];
    const bend =
      above === undefined ? undefined : bendBetween(above, station, metres(station.depthMm - above.depthMm));
    return [
      formatDepth(station.depthMm),
      formatAzimuth(station.azimuth),
      formatDip(station.dip),
      station.basis,
      ...(bend === undefined
        ? ['', '', '', '']
        : [bend.severity, bend.lift, bend.turn, bend.turnAcross].map((deg) => deg.toFixed(2))),
    ];
  });
  return `${tableText([HEAD, ...rows])}\nBends in degrees per 30 m; lift is positive where the hole becomes shallower, turn to the right.`;
}

function targetLines(project: Project, hole: Document): readonly string[] {
  const target = targetOf(project, hole);
  if (target === undefined) return [];
  const { severityLimitPer30m, targetRadiusM } = project.survey;
  const measured = target.measuredMm >= target.targetMm;
  const ways = measured ? target.ways.slice(0, 1) : target.ways;
  return [
    '',
    `Measured to ${formatDepth(target.measuredMm)} m, ${target.offPlanM.toFixed(1)} m off the plan there. Target at ${formatDepth(target.targetMm)} m:`,
    ...ways.flatMap((way) => wayLines(way, measured, targetRadiusM, target.chanceBasis)),
    ...(measured
      ? []
      : [`  ${reachWords(target.reach, severityLimitPer30m, targetRadiusM, target.chanceBasis)}`]),
    ...[growthWords(target.growth), leftOutWords(target.leftOut)].flatMap((words) =>
      words === '' ? [] : [`  ${words}.`],
    ),
  ];
}

function wayLines(way: AtTarget, measured: boolean, radiusM: number, basis: ChanceBasis): readonly string[] {
  const { miss, nearest } = way;
  const name = measured
    ? 'as measured'
    : way.projection === 'straight'
      ? 'projected straight on'
      : 'projected on the trend';
  return [
    `  ${name}: misses by ${miss.totalM.toFixed(1)} m (${missSides(miss).join(', ')}); nearest ${nearest.distanceM.toFixed(1)} m at ${(nearest.depthMm / 1000).toFixed(1)} m`,
    `    ${chanceWords(way.chance, basis)} within ${radiusM} m (${basisWords(basis)}); one sigma there ${ellipseWords(way.uncertainty)}`,
  ];
}

function expectedLines(project: Project, hole: Document, documents: Iterable<Document>): readonly string[] {
  const zones = expectedLoggedOf(project, hole);
  const near = hazardsOf(project, hole, documents);
  if (zones.length === 0) return near.length === 0 ? [] : ['', ...near.map((each) => each.text)];
  const hazards = zones.some((zone) => zone.expected.hazard !== undefined);
  return [
    '',
    tableText([['expected', 'planned m', 'in this hole m', 'logged'], ...zones.map(expectedCells)]),
    ...(near.length > 0 ? near.map((each) => each.text) : hazards ? [NO_CLEARANCE] : []),
  ];
}
