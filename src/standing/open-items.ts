import { drilledMm } from '../hole/commands/drilled.ts';
import { lastCollarState } from '../hole/commands/states.ts';
import { waitingDown } from '../hole/commands/waiting-events.ts';
import { holeNouns, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { depthFromMm, formatDepth } from '../quantity/depth.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import { localTime } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { nameOf } from '../sampling/rod/unmended.ts';
import { unbagged, unbaggedWords } from '../sampling/stream/issue.ts';
import { surveySettingsOf } from '../survey/settings.ts';
import { gapsIn } from './heads.ts';
import { projectForHole } from './hole-schema.ts';
import { lineUpMissing } from './lined-up.ts';
import { waitingMismatches } from './mismatches.ts';
import { questionWords, sidesOf } from './questions.ts';
import { deepestShotMm } from './shots.ts';
import { streamStateOf } from './stream.ts';
import { waitingWords } from './waiting-words.ts';

/** What is still open on a hole that is to end at a depth, each in a plain sentence, the gravest first. */
export function openItems(project: Project, hole: Document, finalMm: number): readonly string[] {
  return [
    ...holdItem(hole),
    ...lastRodItem(hole, finalMm),
    ...rowsBelowItem(hole, finalMm),
    ...gapsIn(hole, finalMm).map((gap) => `${formatInterval(gap)} is not logged.`),
    ...waitingItems(project, hole),
    ...askedItem(hole),
    ...questionItems(project, hole),
    ...bagItems(project, hole, finalMm),
    ...shotItem(project, hole, finalMm),
    ...collarItem(hole),
  ];
}

/** What is not finished on a hole that goes on, down to its drilled head, each in a plain sentence: what only its end asks for is left out. */
export function openSoFar(project: Project, hole: Document): readonly string[] {
  const drilled = drilledMm(hole);
  return [
    ...holdItem(hole),
    ...gapsIn(hole, drilled).map((gap) => `${formatInterval(gap)} is not logged.`),
    ...waitingItems(project, hole),
    ...aheadItem(hole, drilled),
    ...askedItem(hole),
    ...questionItems(project, hole),
    ...bagItems(project, hole, drilled),
    ...lineUpItem(hole),
  ];
}

/** The hold that stands: someone wants to be called first. */
function holdItem(hole: Document): readonly string[] {
  const last = holeNouns(hole, 'decisions').at(-1);
  if (last?.kind !== 'held') return [];
  const reason = last.reason === undefined ? '' : `: ${last.reason}`;
  return [`On hold by ${last.by} since ${formatDepth(last.depthMm)} m${reason}. Call before the hole ends.`];
}

/** Events that were said ahead of the log, or that their row could not take. */
function waitingItems(project: Project, hole: Document): readonly string[] {
  const { schema } = projectForHole(project, hole);
  return waitingDown(hole).map(
    ([, event]) =>
      `${waitingWords(schema, event)}: waits for its row, recorded by ${event.by} ${localTime(event.at)}.`,
  );
}

function lastRodItem(hole: Document, finalMm: number): readonly string[] {
  const drilled = drilledMm(hole);
  if (drilled === finalMm) return [];
  return [
    `The last rod done is at ${formatDepth(drilled)} m, the final depth given is ${formatDepth(finalMm)} m. Ask the driller to count the rods again.`,
  ];
}

/** Rows that stand below the depth at which a hole is to end: either they or the depth is wrong. */
function rowsBelowItem(hole: Document, finalMm: number): readonly string[] {
  const below = rowsBelow(hole, finalMm);
  if (below === undefined) return [];
  const { rows, ...metres } = below;
  return [
    `${formatInterval(metres)} is logged below the final depth given, in ${rows === 1 ? 'one row' : `${rows} rows`}. Ask the driller to count the rods again, or delete what was not drilled.`,
  ];
}

/** Metres logged that no rod says are drilled: the rod that is being drilled, or rods that no one recorded. */
function aheadItem(hole: Document, drilled: number): readonly string[] {
  const below = rowsBelow(hole, drilled);
  if (below === undefined) return [];
  const { rows: _rows, ...metres } = below;
  return [`${formatInterval(metres)} is logged and no rod is recorded for it: F2 when the rod is done.`];
}

/** How many rows reach below a depth, and the metres that they log there. */
function rowsBelow(hole: Document, mm: number): (Interval & { readonly rows: number }) | undefined {
  const below = rowsDown(hole).filter(([, row]) => row.toMm > mm);
  if (below.length === 0) return undefined;
  const from = Math.max(mm, Math.min(...below.map(([, row]) => row.fromMm)));
  const to = Math.max(...below.map(([, row]) => row.toMm));
  return { fromMm: depthFromMm(from), toMm: depthFromMm(to), rows: below.length };
}

/** A line-up that is missing, or was accepted outside its tolerance: the hole is drilled off its plan from the collar on. */
export function lineUpItem(hole: Document): readonly string[] {
  const last = holeNouns(hole, 'lineUps').findLast((each) => each.accepted);
  if (last === undefined) return lineUpMissing(hole);
  if (last.because === undefined) return [];
  return [
    `Lined up OUTSIDE its tolerance: ${last.azimuthDeg} ${last.azimuthNorth}, ${last.dipDeg}, by ${last.by}, because: ${last.because}.`,
  ];
}

function askedItem(hole: Document): readonly string[] {
  const asked = rowsDown(hole).filter(([, row]) => row.asked !== undefined);
  return asked.length === 0
    ? []
    : [
        `${asked.length} row${asked.length === 1 ? '' : 's'} marked ? wait${asked.length === 1 ? 's' : ''} to be settled.`,
      ];
}

function questionItems(project: Project, hole: Document): readonly string[] {
  return questionWords(projectForHole(project, hole).schema, hole).map((question) => {
    const { cell, stands, now, twice } = question;
    const [ours, theirs] = sidesOf(question);
    return twice === 'rod'
      ? `${cell}: ${ours}, and ${theirs}. Keep one: ;questions.`.replace(/^rod/, 'Rod')
      : twice === 'rows'
        ? `Two rows cover ${cell.replace(', logged twice', '')}: ${ours}, and ${theirs}. Keep one or split the metre: ;questions.`
        : `Conflict between two copies: ${cell}: ours ${ours}, theirs ${theirs}. ${now === 'ours' ? 'Ours' : `Now ${stands}`} is kept until it is settled: ;questions.`;
  });
}

function bagItems(project: Project, hole: Document, finalMm: number): readonly string[] {
  const without = unbagged(project.sampling, streamStateOf(hole, finalMm));
  const putOff = holeNouns(hole, 'putOff').filter((put) => put.placedAt === undefined);
  return [
    ...waitingMismatches(hole).map(
      ([, rod]) =>
        `At rod ${rod.rod} the bags don’t match, ${nameOf(rod)}? It is noted and still open: ;fix.`,
    ),
    ...(without === undefined ? [] : [`${unbaggedWords(without)}.`]),
    ...putOff.map((put) => `The ${put.kind} ${put.number} was put off and is not placed: ${put.reason}.`),
  ];
}

function shotItem(project: Project, hole: Document, finalMm: number): readonly string[] {
  const { longestGapM } = surveySettingsOf(project.settings.survey);
  const deepest = deepestShotMm(hole);
  if (deepest === undefined) return ['No survey shot is recorded.'];
  return finalMm - deepest > longestGapM * 1000
    ? [`No shot near the end: the deepest is at ${formatDepth(deepest)} m.`]
    : [];
}

function collarItem(hole: Document): readonly string[] {
  const state = lastCollarState(hole)?.state;
  return state === 'capped' || state === 'plugged'
    ? []
    : ['The collar is not capped or plugged: an open collar is a hazard.'];
}
