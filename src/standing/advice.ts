import { headerOf, holeNouns, planOf, rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Depth, depthFromMm } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import { everyEntry } from '../record/ancestry.ts';
import { byReference } from '../record/by-reference.ts';
import type { Document, Entry } from '../record/document.ts';
import { target } from '../record/draft.ts';
import { holdsVoid } from '../schema/cautions.ts';
import type { ExpectedHere } from '../survey/expected/expected.ts';
import { type Warning, warnAhead } from '../termination/advice/ahead.ts';
import { type Shown, shownAdvice } from '../termination/advice/verdict.ts';
import { situationAt } from '../termination/advice/what-if.ts';
import { evaluateRules, type RuleOutcome } from '../termination/evaluate/evaluate-rule.ts';
import type { ExpectedZone, Situation } from '../termination/evaluate/situation.ts';
import { rulesFor } from '../termination/settings.ts';
import type { Row } from '../value/row.ts';
import { headsOf } from './heads.ts';
import { hazardsMetBeside } from './met-beside.ts';
import { paceKnown } from './pace.ts';
import { directionKnown, expectedOf } from './survey.ts';

/**
 * Everything that the termination rules read about a hole, from its document; `others` are the project's other holes, whose metres
 * count against a shared budget (not given: a budget can't be told).
 */
export function situationOf(project: Project, hole: Document, others?: Iterable<Document>): Situation {
  const heads = headsOf(hole);
  // They are gone through twice, and may come as what can be gone through once.
  const beside = others === undefined ? undefined : [...others];
  const plan = planOf(hole);
  const held = holeNouns(hole, 'decisions').at(-1);
  const stop = holeNouns(hole, 'stops').find((each) => each.endedAt === undefined);
  return {
    schema: project.schema,
    header: headerOf(hole),
    ...(plan === undefined ? {} : { plan }),
    rows: rowsDown(hole).map(([, row]) => row),
    ...waitingOf(hole),
    loggedMm: heads.loggedMm,
    drilledMm: heads.drilledMm,
    stream: holeNouns(hole, 'stream'),
    felt: holeNouns(hole, 'feltByDriller'),
    voidsCleared: voidsClearedIn(project, hole),
    expects: [
      ...expectedOf(project, hole).map(widestOfHazard),
      ...(beside === undefined ? [] : hazardsMetBeside(project, hole, beside)),
    ],
    direction: directionKnown(project, hole),
    pace: paceKnown(hole),
    ...(beside === undefined ? {} : { usedElsewhereMm: metresIn(hole, beside) }),
    decisions: holeNouns(hole, 'decisions'),
    ...(held?.kind === 'held'
      ? {
          hold: {
            because: held.reason ?? 'held',
            by: held.by,
            sinceMm: held.depthMm,
            ...(held.called === undefined ? {} : { called: held.called }),
          },
        }
      : {}),
    ...(stop === undefined ? {} : { openStop: { because: stop.because, by: stop.by } }),
  };
}

function waitingOf(hole: Document): Pick<Situation, 'waiting'> {
  const waiting = holeNouns(hole, 'waitingEvents');
  return waiting.length === 0 ? {} : { waiting };
}

/**
 * Metres of rows that said a void once: the rules read them where nothing is logged any more, the row cleared or cut short. A row that was taken
 * back by undo was a slip, and no void.
 */
const voidsClearedIn = byReference((project: Project, hole: Document): readonly Interval[] => {
  const found: Interval[] = [];
  const entries = everyEntry(hole.history);
  const touched = rowsTouched(entries);
  // A patch holds only the fields that it changes, so the rows are followed from their making.
  const rows = new Map<string, Row>();
  for (const { undoes, changes } of entries)
    for (const change of changes) {
      const [table, id] = target(change);
      if (table !== 'rows' || !touched.has(id)) continue;
      const was = 'put' in change ? undefined : ({ ...rows.get(id), ...change.before } as unknown as Row);
      if (was !== undefined && undoes === undefined && holdsVoid(project.schema, was.cells))
        found.push({ fromMm: was.fromMm, toMm: was.toMm });
      if ('put' in change) rows.set(id, change.thing as unknown as Row);
      else if ('patch' in change) rows.set(id, { ...was, ...change.set } as unknown as Row);
    }
  return found;
});

/** Rows that were changed or taken out after they were made: few of them. */
function rowsTouched(entries: readonly Entry[]): ReadonlySet<string> {
  const touched = new Set<string>();
  for (const { changes } of entries)
    for (const change of changes) if (!('put' in change)) touched.add(target(change)[1]);
  return touched;
}

/** Depths of a hazard are given to 0.1 m, rounded away from it: a millimetre would promise what no plan knows. */
const NEAR_MM = 100;

/** A hazard from the earliest to the latest depth that it could come at in the hole as it runs, the planned ones among them; anything else as planned. */
function widestOfHazard({ expected, top, foot }: ExpectedHere): ExpectedZone {
  if (expected.hazard === undefined) return expected;
  const topMm = Math.min(expected.fromMm, top?.earliestMm ?? expected.fromMm);
  const fromMm = depthFromMm(Math.floor(topMm / NEAR_MM) * NEAR_MM);
  if (expected.toMm === undefined) return { ...expected, fromMm };
  const footMm = Math.max(expected.toMm, foot?.latestMm ?? expected.toMm);
  return { ...expected, fromMm, toMm: depthFromMm(Math.ceil(footMm / NEAR_MM) * NEAR_MM) };
}

/** Millimetres drilled in the holes that are not this one. */
function metresIn(hole: Document, others: Iterable<Document>): number {
  let sum = 0;
  for (const other of others) {
    if (other.kind !== 'hole' || other.id === hole.id) continue;
    const { drilledMm, logFromMm } = headsOf(other);
    sum += drilledMm - logFromMm;
  }
  return sum;
}

/** What the rules say of a hole: each rule, the verdict (or why none is shown), and what can change within the next rod. */
export interface AdviceStanding {
  readonly outcomes: readonly RuleOutcome[];
  readonly shown: Shown;
  readonly ahead: readonly Warning[];
}

/** The rules in force for a hole, compared with its document as it is now. */
export function adviceFor(project: Project, hole: Document, others?: Iterable<Document>): AdviceStanding {
  return adviceOn(project, hole, situationOf(project, hole, others));
}

/** What the rules say of ending the hole now, at a final depth: rules on stopping short speak whether or not another one ends it. */
export function adviceAtEnd(
  project: Project,
  hole: Document,
  depthMm: Depth,
  others?: Iterable<Document>,
): AdviceStanding {
  return adviceOn(project, hole, endingAt(situationOf(project, hole, others), depthMm), true);
}

/** A situation as it is at a final depth: what was recorded below that is not in the hole. */
export function endingAt(situation: Situation, depthMm: Depth): Situation {
  const { rows, stream, felt, waiting, loggedMm } = situationAt(situation, depthMm);
  const { hold } = situation;
  return {
    ...situation,
    rows,
    stream,
    ...(felt === undefined ? {} : { felt }),
    ...(waiting === undefined ? {} : { waiting }),
    loggedMm,
    drilledMm: depthMm,
    // A hold made deeper than the rods are counted at the end is a hold all the same.
    ...(hold === undefined
      ? {}
      : { hold: { ...hold, sinceMm: depthFromMm(Math.min(hold.sinceMm, depthMm)) } }),
  };
}

/** The same for a situation given: a prefix of the hole's, one extended by what might come, or one about to be ended. */
export function adviceOn(
  project: Project,
  hole: Document,
  situation: Situation,
  ending = false,
): AdviceStanding {
  const header = headerOf(hole);
  const names = [hole.id, header.name, ...(header.plannedName === undefined ? [] : [header.plannedName])];
  const outcomes = evaluateRules(rulesFor(project.settings.termination, names), situation);
  return {
    outcomes,
    shown: shownAdvice(outcomes, situation, ending),
    ahead: ending ? [] : warnAhead(outcomes, situation),
  };
}
