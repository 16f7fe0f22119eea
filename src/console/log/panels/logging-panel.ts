import { waitingDown } from '../../../hole/commands/waiting-events.ts';
import { isOver } from '../../../hole/header.ts';
import { headerOf, rowsDown } from '../../../hole/hole.ts';
import type { Project } from '../../../project/project.ts';
import { formatDepth } from '../../../quantity/depth.ts';
import { formatInterval, type Interval } from '../../../quantity/interval.ts';
import type { Document } from '../../../record/document.ts';
import { compartmentAt, trayChange } from '../../../sampling/trays/trays.ts';
import { headsOf, logged } from '../../../standing/heads.ts';
import { projectForHole } from '../../../standing/hole-schema.ts';
import { depthOfRod, rodOfDepth } from '../../../standing/rods.ts';
import { streamFactAt } from '../../../standing/stream.ts';
import { hazardsOf } from '../../../standing/survey.ts';
import { waitingWords } from '../../../standing/waiting-words.ts';
import type { HazardWarning } from '../../../survey/expected/expected.ts';
import { type Line, line, spans } from '../../widgets/line.ts';

/** The panel of the interval in hand: hazards near the bit, rod and tray, what the sample stream was there, metres behind the rig. */
export function loggingPanel(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
  at: Interval,
): readonly Line[] {
  return [
    ...hazardLines(project, hole, documents),
    spans(`${rodWords(hole, at)} · ${trayWords(project, hole, at)}`),
    streamLine(hole, at),
    behindLine(hole),
    ...trayChangeLine(project, hole, at),
    ...askedLine(hole),
    ...waitingLine(project, hole),
  ];
}

/** The heading of the panel: the interval in hand. */
export function loggingTitle(at: Interval, isHead: boolean): string {
  return `${isHead ? 'logging' : 'amending'} ${formatInterval(at)}`;
}

function rodWords(hole: Document, at: Interval): string {
  const header = headerOf(hole);
  const rod = rodOfDepth(hole, at.toMm);
  const top = depthOfRod(hole, rod - 1);
  const count = Math.max(1, Math.ceil((at.toMm - top) / header.intervalMm));
  return `rod ${rod}, ${count} of ${Math.ceil(header.rodMm / header.intervalMm)}`;
}

function trayWords(project: Project, hole: Document, at: Interval): string {
  const place = compartmentAt(project.sampling, headerOf(hole).logFromMm, at.fromMm);
  return place === undefined ? 'no tray' : `tray ${place.tray} no. ${place.compartment}`;
}

function trayChangeLine(project: Project, hole: Document, at: Interval): readonly Line[] {
  const { logFromMm, rodMm, state } = headerOf(hole);
  if (isOver(state)) return [];
  const change = trayChange(project.sampling, logFromMm, at.fromMm, rodMm);
  return change === undefined
    ? []
    : [line(`tray ${change.tray} begins in ${formatDepth(change.inMm)} m`, 'accent')];
}

function streamLine(hole: Document, at: Interval): Line {
  const fact = streamFactAt(hole, at);
  const words = [
    fact.moisture ?? 'moisture not noted',
    ...(fact.recovery === undefined ? [] : [`recovery ${fact.recovery}`]),
    ...(fact.contaminated ? ['CONTAMINATED'] : []),
    ...(fact.water === undefined ? [] : [fact.water]),
  ];
  const worrying =
    fact.moisture === 'wet' ||
    fact.contaminated === true ||
    fact.recovery === 'poor' ||
    fact.recovery === 'none';
  return line(words.join(', '), worrying ? 'warn' : fact.moisture === undefined ? 'faint' : 'plain');
}

function behindLine(hole: Document): Line {
  const { behindMm, loggedMm, drilledMm } = headsOf(hole);
  const { missingMm } = logged(hole);
  if (missingMm > 0)
    return line(`${formatDepth(behindMm)} m not logged, ${formatDepth(missingMm)} m of them in gaps`, 'warn');
  if (behindMm > 0) return line(`${formatDepth(behindMm)} m behind the rig`);
  return line(
    loggedMm > drilledMm
      ? `${formatDepth(loggedMm - drilledMm)} m past the last rod done`
      : 'level with the rig',
    'good',
  );
}

function askedLine(hole: Document): readonly Line[] {
  const asked = rowsDown(hole).filter(([, row]) => row.asked !== undefined);
  const first = asked[0];
  if (first === undefined) return [];
  return [spans([`${asked.length} marked ?, oldest ${formatInterval(first[1])}: = settles`, 'warn'])];
}

/** What waits for its row, the first of it and how many more; the depth comes first, for a narrow panel cuts the end. */
function waitingLine(project: Project, hole: Document): readonly Line[] {
  const [first, ...more] = waitingDown(hole);
  if (first === undefined) return [];
  const [, { atMm, ...event }] = first;
  const words = waitingWords(projectForHole(project, hole).schema, event);
  const others = more.length === 0 ? '' : ` +${more.length}`;
  return [line(`@${formatDepth(atMm)} ${words}${others}`, 'accent')];
}

/**
 * Hazard zones that the bit is near, each in a line that fits the narrowest panel, and that no warning is no clearance.
 * Depths are cut down to the metre: a zone never comes above the figure. Nothing where no zone is near.
 */
export function hazardLines(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
): readonly Line[] {
  const warnings = [...hazardsOf(project, hole, documents)].sort((a, b) => a.earliestMm - b.earliestMm);
  if (warnings.length === 0) return [];
  const lines = warnings.map(({ hazard, earliestMm, where, offMm }) =>
    line(`${hazard.toUpperCase()} from ${wholeM(earliestMm)} m: ${whereWords(where, offMm)}`, 'alert'),
  );
  return [...lines, line('No warning is no clearance.', 'alert')];
}

/** The rod in hand may have gone deeper than anybody wrote down: a distance ahead is what is left at most. */
function whereWords(where: HazardWarning['where'], offMm: number): string {
  if (where === 'here') return 'at it now';
  if (where === 'ahead') return `within ${Math.max(1, wholeM(offMm))} m`;
  return offMm < 1000 ? 'just past it' : `${wholeM(offMm)} m past it`;
}

function wholeM(mm: number): number {
  return Math.floor(mm / 1000);
}
