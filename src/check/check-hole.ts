import type { Finding } from '../finding/finding.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { checkDispatches } from '../sampling/dispatch/dispatch-check.ts';
import { checkRatesSoFar } from '../sampling/scheme/rates-so-far.ts';
import { checkScheme } from '../sampling/scheme/scheme-check.ts';
import { checkStock } from '../sampling/scheme/stock.ts';
import { checkBags } from '../sampling/stream/bags-check.ts';
import { checkRow } from '../schema/check/row-checks.ts';
import * as schemaKinds from '../schema/findings.ts';
import { bagsOfHoles, dispatchesOf } from '../standing/dispatches.ts';
import { hazardsUnloggable, projectForHole, schemaChangesOf } from '../standing/hole-schema.ts';
import { logFindings } from '../standing/log-findings.ts';
import { provisionalInHole } from '../standing/provisional-codes.ts';
import { questionFindings } from '../standing/questions.ts';
import { returnedFindings } from '../standing/returned.ts';
import { rodsOnce } from '../standing/rods-twice.ts';
import { streamFindings } from '../standing/stream-findings.ts';
import { expectedFindingsOf, surveyChecksOf } from '../standing/survey.ts';
import { trayFindings } from '../standing/trays.ts';
import { checkDecisions } from '../termination/advice/decision.ts';
import { checkTermination } from '../termination/rules/check-rules.ts';
import { changedSinceSignedOff } from './accepted.ts';
import { kindsIn } from './registry.ts';

/** Everything that is wrong with one hole, or worth a look: its rows, its bags (beside those of the other holes), its trays, its sample stream, its survey, its decisions. */
export function checkHole(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
): readonly Finding[] {
  const { name } = headerOf(hole);
  const all = [...documents];
  const between = [...checkBags(project.sampling, baggedHoles(all)), ...trayFindings(project, all)];
  return [...checkAlone(project, hole, all), ...between.filter((finding) => finding.place.hole === name)];
}

/** Everything that is wrong with a project as a whole: its control scheme and stock, its termination rules, every hole, the bags between holes, trays, dispatches, results. */
export function checkProject(project: Project, documents: Iterable<Document>): readonly Finding[] {
  const all = [...documents];
  const holes = all.filter((document) => document.kind === 'hole');
  return [
    ...checkScheme(project.sampling),
    ...checkTermination(project.settings.termination, project.schema, { file: 'project.json' }),
    ...saidOnce(holes.flatMap((hole) => checkAlone(project, hole, holes))),
    ...all
      .filter((document) => document.kind !== 'hole')
      .flatMap((document) => questionFindings(project.schema, document)),
    ...checkBags(project.sampling, baggedHoles(holes)),
    ...checkStock(
      project.sampling,
      holes.flatMap((hole) => holeNouns(hole, 'bags')),
    ),
    ...checkRatesSoFar(project.sampling, bagsOfHoles(holes)),
    ...trayFindings(project, holes),
    ...checkDispatches(dispatchesOf(all), bagsOfHoles(holes)),
    ...returnedFindings(project, all),
  ];
}

/**
 * The project's own declination is checked at every hole, and said of the first. What comes from the schema is said of the first hole that it
 * holds for, with the others named.
 */
function saidOnce(findings: readonly Finding[]): readonly Finding[] {
  const first = findings.find(({ code }) => code === 'survey-declination-off-model');
  const groups = new Map<string, Finding[]>();
  for (const one of findings) {
    if (one.code === 'survey-declination-off-model' && one !== first) continue;
    const { code, problem, place } = one;
    const isOfSchema = OF_SCHEMA.has(code) && place.fromMm === undefined;
    const key = isOfSchema ? JSON.stringify([code, problem, place.field ?? null]) : `one ${groups.size}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map(([one, ...others]) => {
    const also = [...new Set(others.flatMap(({ place }) => place.hole ?? []))];
    if (one === undefined || also.length === 0) return one as Finding;
    const named = `${also.slice(0, MOST_HOLES_NAMED).join(', ')}${also.length > MOST_HOLES_NAMED ? ', …' : ''}`;
    return {
      ...one,
      problem: `${one.problem}; so in ${also.length === 1 ? 'one more hole' : `${also.length} more holes`}: ${named}`,
    };
  });
}

const OF_SCHEMA: ReadonlySet<string> = new Set(kindsIn(schemaKinds).map(({ code }) => code));
const MOST_HOLES_NAMED = 6;

/** What can be said of a hole by itself; its neighbours show only how holes bend there. */
function checkAlone(project: Project, hole: Document, holes: readonly Document[]): readonly Finding[] {
  const place = { hole: headerOf(hole).name };
  return [
    ...schemaChangesOf(project.schema, hole),
    ...(isOver(headerOf(hole).state) ? [] : hazardsUnloggable(project.schema, hole)),
    ...provisionalInHole(project.schema, hole),
    ...rowsDown(hole).flatMap(([, row]) => checkRow(project.schema, row, place)),
    ...questionFindings(projectForHole(project, hole).schema, hole),
    ...logFindings(hole),
    ...changedSinceSignedOff(hole),
    ...streamFindings(project, rodsOnce(hole)),
    ...surveyChecksOf(project, hole, holes).findings,
    ...expectedFindingsOf(project, hole),
    ...checkDecisions(holeNouns(hole, 'decisions'), place),
  ];
}

function baggedHoles(documents: Iterable<Document>) {
  return [...documents]
    .filter((document) => document.kind === 'hole')
    .map(rodsOnce)
    .map((hole) => ({
      hole: headerOf(hole).name,
      bags: holeNouns(hole, 'bags'),
      bagRuns: holeNouns(hole, 'bagRuns'),
      choices: holeNouns(hole, 'controlChoices'),
    }));
}
