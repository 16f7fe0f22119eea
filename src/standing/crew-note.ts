import { lastCollarState } from '../hole/commands/states.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import { localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { nameOf } from '../sampling/rod/unmended.ts';
import { stockOf } from '../sampling/scheme/stock.ts';
import { SHIFT_CHECKS } from '../shift/findings.ts';
import { shiftHeaderOf } from '../shift/shift.ts';
import { checkShifts } from '../shift/shift-checks.ts';
import { signedWithOpen } from '../shift/signed.ts';
import { adviceFor } from './advice.ts';
import { bagsInRows } from './bags-in-rows.ts';
import { dangerLines } from './dangers.ts';
import { sentIn } from './dispatches.ts';
import { feltLines } from './felt.ts';
import { headsOf, loggedWords } from './heads.ts';
import { logFindings } from './log-findings.ts';
import { waitingMismatches } from './mismatches.ts';
import { openSoFar } from './open-items.ts';
import { countOpen } from './questions.ts';
import { endedLines, holesOfRig } from './rig-holes.ts';
import { nextShot } from './shots.ts';
import { streamAheadOf } from './stream.ts';
import { streamFindings } from './stream-findings.ts';
import { gearLines, leftSince, swingLines, waterLines } from './swing.ts';
import { unfinishedIn } from './unfinished.ts';

/** A part of the note for the next crew. */
export interface NotePart {
  readonly title: string;
  readonly lines: readonly string[];
}

/**
 * The note for the next crew of a rig, drafted from what is recorded; parts with nothing to say are left out. With the first day of a
 * swing it begins with what was done since.
 */
export function crewNote(
  project: Project,
  documents: readonly Document[],
  rig: string,
  now: Stamp,
  swingFrom?: string,
): readonly NotePart[] {
  const sent = sentIn(documents);
  const everyHole = documents.filter((each) => each.kind === 'hole');
  const holes = holesOfRig(documents, rig);
  const goingOn = holes.filter((hole) => ['drilling', 'suspended'].includes(headerOf(hole).state));
  const parts: readonly NotePart[] = [
    { title: 'Dangers met', lines: dangerLines(project.schema, everyHole) },
    ...(swingFrom === undefined
      ? []
      : [{ title: `Swing from ${swingFrom}`, lines: swingLines(project, documents, rig, now, swingFrom) }]),
    ...goingOn.map((hole) => holePart(project, hole, documents)),
    { title: 'Holes left', lines: endedLines(holes, leftSince(project, documents, rig, now, swingFrom)) },
    { title: 'Water met', lines: waterLines(project, documents, rig, now, swingFrom) },
    { title: 'Said by people', lines: holes.flatMap((hole) => spokenLines(hole)) },
    { title: 'Samples on the ground', lines: holes.flatMap((hole) => bagsInRows(project, hole, sent)) },
    {
      title: 'Faults',
      lines: [
        ...gearLines(project, documents, rig, now),
        ...holes.flatMap((hole) => faultLines(project, hole)),
      ],
    },
    {
      title: 'Bags that don’t match, not settled',
      lines: holes.filter((hole) => !goingOn.includes(hole)).flatMap(mismatchLines),
    },
    { title: 'Collars not capped', lines: everyHole.flatMap((hole) => collarLines(hole)) },
    { title: 'Control stock', lines: stockLines(project, everyHole) },
    { title: 'Open questions', lines: questionLines(documents) },
    { title: 'Shift and plods', lines: shiftLines(project, documents, rig, now) },
  ];
  return parts.filter((part) => part.lines.length > 0);
}

function holePart(project: Project, hole: Document, documents: readonly Document[]): NotePart {
  const { name, state, stateReason, parent } = headerOf(hole);
  const { drilledMm } = headsOf(hole);
  const shot = nextShot(hole, project.survey);
  const [bag] = streamAheadOf(project, hole, 1).upcoming;
  const { shown } = adviceFor(project, hole, documents);
  return {
    title: `${name}, ${state}${stateReason === undefined ? '' : `: ${stateReason}`}${parent === undefined ? '' : `; ${parent.reason} of ${parent.hole}: ${parent.because}`}`,
    lines: [
      `drilled to ${formatDepth(drilledMm)} m, logged to ${loggedWords(hole)}`,
      `shot ${shot.overdue ? 'OVERDUE since' : 'due at'} ${formatDepth(shot.atMm)} m`,
      ...feltLines(hole),
      ...(bag === undefined ? ['no numbered bags left'] : [`next bag ${bag.number}, ${bag.kind}`]),
      shown.shown
        ? `${shown.advice.heading}: ${shown.advice.sentence}`
        : `no advice on ending: ${shown.because}`,
      ...openSoFar(project, hole),
    ],
  };
}

/** Instructions by word of mouth that are recorded with a decision, and who gave them; stops of the driller that are not over. */
function spokenLines(hole: Document): readonly string[] {
  const { name, state } = headerOf(hole);
  if (state !== 'drilling' && state !== 'suspended') return [];
  const decisions = holeNouns(hole, 'decisions')
    .filter((each) => each.kind === 'held' || each.kind === 'extended')
    .map(
      (each) =>
        `${name} ${each.kind}${each.toMm === undefined ? '' : ` to ${formatDepth(each.toMm)} m`}, ${dayAndTime(each.at)}${each.called === undefined ? '' : `, called ${each.called}`}${each.reason === undefined ? '' : `: ${each.reason}`}`,
    );
  const stops = holeNouns(hole, 'stops')
    .filter((each) => each.endedAt === undefined)
    .map((each) => `${name} STOPPED by the driller, ${dayAndTime(each.at)}: ${each.because}`);
  return [...stops, ...decisions];
}

/** Most faults of a hole that are named one by one: the rest is counted. */
const MOST_NAMED = 3;

/** What the checks call a fault in a hole's rows and bags. */
function faultLines(project: Project, hole: Document): readonly string[] {
  const faults = [...logFindings(hole), ...streamFindings(project, hole)].filter(
    (each) => each.severity === 'fault',
  );
  const { name } = headerOf(hole);
  const more = faults.length - MOST_NAMED;
  return [
    ...faults.slice(0, MOST_NAMED).map(({ problem }) => `${name}: ${problem}`),
    ...(more > 0 ? [`${name}: ${more} more, which offsider check lists`] : []),
  ];
}

function mismatchLines(hole: Document): readonly string[] {
  return waitingMismatches(hole).map(
    ([, rod]) => `${headerOf(hole).name} at rod ${rod.rod}, ${formatDepth(rod.depthMm)} m: ${nameOf(rod)}?`,
  );
}

/** Holes that are drilled and left, and whose collar no one recorded as capped or plugged: an open collar is a hazard. */
function collarLines(hole: Document): readonly string[] {
  const { name, state } = headerOf(hole);
  if (state === 'planned' || state === 'drilling') return [];
  const collar = lastCollarState(hole)?.state;
  return collar === 'capped' || collar === 'plugged'
    ? []
    : [`${name}: ${collar === undefined ? 'collar not recorded' : 'left OPEN'}`];
}

function stockLines({ sampling }: Project, holes: readonly Document[]): readonly string[] {
  const bags = holes.flatMap((hole) => holeNouns(hole, 'bags'));
  return stockOf(sampling, bags).map((each) => `${each.kind} ${each.material}: ${each.left} left`);
}

function questionLines(documents: readonly Document[]): readonly string[] {
  return documents.flatMap((each) => {
    const open = countOpen(each);
    return open === 0 ? [] : [`${each.kind} ${each.id}: ${open} where two copies differ`];
  });
}

function shiftLines(
  project: Project,
  documents: readonly Document[],
  rig: string,
  now: Stamp,
): readonly string[] {
  const own = documents.filter((each) => each.kind === 'shift' && shiftHeaderOf(each).rig === rig);
  const presumed = checkShifts(documents, project.shift, now).filter(
    ({ code, place }) =>
      code === SHIFT_CHECKS.endPresumed.code && own.some(({ id }) => place.file === `shifts/${id}.json`),
  );
  return [
    ...presumed.map((each) => `${each.place.file?.slice(7, -5)}: ${each.problem}`),
    ...unfinishedIn({ project, documents, now }, own).flatMap(({ name, items }) =>
      items.map((item) => `${name}: ${item}`),
    ),
    ...own.flatMap((shift) =>
      signedWithOpen(shift).map(
        (each) => `${shift.id}: plod ${each.sheet} signed with ${each.open} open queries`,
      ),
    ),
  ];
}

const dayAndTime = (at: Stamp): string => `${localDate(at)} ${localTime(at)}`;
