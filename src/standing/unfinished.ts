import type { Finding } from '../finding/finding.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatMinutes, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { holdsSample, inOrder } from '../sampling/dispatch/dispatch.ts';
import { openQueries } from '../shift/answers.ts';
import { gapsOf, spansOf } from '../shift/current.ts';
import { isUnauthorised, queryList } from '../shift/query-list.ts';
import { shiftHeaderOf, shiftThings } from '../shift/shift.ts';
import { closed } from '../shift/shift-end.ts';
import { activityNamed } from '../shift/shift-rules.ts';
import { unsignedPlods } from '../shift/signed.ts';
import { stoodWords, stretchesWhileStood } from '../shift/stood.ts';
import { sentIn } from './dispatches.ts';
import { headsOf } from './heads.ts';
import { lineUpItem, openItems, openSoFar } from './open-items.ts';
import { nextShot } from './shots.ts';
import { bagsOnGround } from './stream.ts';

/** A hole, a shift or the check, and what is not finished there. */
export interface Unfinished {
  readonly name: string;
  readonly items: readonly string[];
}

/** What the rest of the project says of the documents that are asked about: dispatches, holes, other shifts. */
export interface UnfinishedContext {
  readonly project: Project;
  /** Every document of the project. */
  readonly documents: readonly Document[];
  readonly now: Stamp;
}

/**
 * What is not finished in some documents: of holes that have been begun (of one that is over by its final depth, of any other so far), of
 * shifts, and faults that the check finds. Pack, letter, `check`, the note for the next crew and leaving all say this and no less.
 */
export function unfinished(
  context: UnfinishedContext,
  of: readonly Document[],
  findings: readonly Finding[],
): readonly Unfinished[] {
  const faults = findings.filter((each) => each.severity === 'fault').length;
  const check = `finds ${faults} fault${faults === 1 ? '' : 's'} in these holes: offsider check lists ${faults === 1 ? 'it' : 'them'}.`;
  return [...unfinishedIn(context, of), { name: 'The check', items: faults === 0 ? [] : [check] }].filter(
    (each) => each.items.length > 0,
  );
}

/** The same without the check: of each document that has something open. */
export function unfinishedIn(context: UnfinishedContext, of: readonly Document[]): readonly Unfinished[] {
  const sent = sentIn(context.documents);
  return of
    .map((document): Unfinished => {
      if (document.kind === 'shift') return { name: document.id, items: shiftItems(context, document) };
      if (document.kind !== 'hole') return { name: document.id, items: [] };
      return { name: headerOf(document).name, items: holeItems(context.project, document, sent) };
    })
    .filter(({ items }) => items.length > 0);
}

function holeItems(project: Project, hole: Document, sent: ReadonlyMap<string, string>): readonly string[] {
  const { state, imported } = headerOf(hole);
  if (state === 'planned' || imported !== undefined) return [];
  const own = isOver(state)
    ? [...openItems(project, hole, finalDepth(hole)), ...lineUpItem(hole)]
    : [...drilledItem(hole), ...shotItem(project, hole), ...openSoFar(project, hole)];
  return [...own, ...groundItem(project, hole, sent)];
}

/** How far a hole that goes on is drilled of its plan. */
function drilledItem(hole: Document): readonly string[] {
  const planned = planOf(hole)?.depthMm;
  const { drilledMm } = headsOf(hole);
  return planned === undefined || drilledMm >= planned
    ? []
    : [`Drilled ${formatDepth(drilledMm)} of ${formatDepth(planned)} m planned.`];
}

/** A shot that is overdue while the hole goes on. */
function shotItem(project: Project, hole: Document): readonly string[] {
  const { atMm, overdue } = nextShot(hole, project.survey);
  return overdue ? [`Survey shot OVERDUE since ${formatDepth(atMm)} m: ask the driller for one.`] : [];
}

/** Bags with a sample that no dispatch has taken. */
function groundItem(
  { sampling }: Project,
  hole: Document,
  sent: ReadonlyMap<string, string>,
): readonly string[] {
  const left = bagsOnGround(hole).filter((bag) => holdsSample(bag) && !sent.has(bag.number));
  if (left.length === 0) return [];
  const numbers = inOrder(
    sampling,
    left.map((bag) => bag.number),
  );
  return left.length === 1
    ? [`Bag ${numbers[0]} is on the ground: no dispatch has taken it.`]
    : [
        `${left.length} bags are on the ground, ${numbers[0]} to ${numbers.at(-1)}: no dispatch has taken them.`,
      ];
}

/** The depth at which a hole was ended, in millimetres; its drilled depth where no decision says. */
function finalDepth(hole: Document): number {
  const ended = holeNouns(hole, 'decisions').findLast((each) => each.kind.startsWith('ended'));
  return ended?.depthMm ?? headsOf(hole).drilledMm;
}

/** What is not finished on a shift: its end, its record, its plod. */
export function shiftItems(context: UnfinishedContext, shift: Document): readonly string[] {
  const { endedAt } = shiftHeaderOf(shift);
  const plods = shiftThings(shift, 'plods');
  const unsigned = unsignedPlods(shift);
  return [
    ...(endedAt === undefined ? ['The shift is not ended.'] : []),
    ...recordItems(context, shift),
    ...(plods.length === 0 ? ['No plod is recorded.'] : []),
    ...(unsigned.length === 0
      ? []
      : [`Plod not signed: ${unsigned.join(', ')}${queriesItem(context, shift)}.`]),
  ];
}

/** How many queries of a sheet that is still to be signed are open. */
function queriesItem({ project, documents, now }: UnfinishedContext, shift: Document): string {
  const whole = closed(shift, { documents, shifts: project.shift.shifts, now });
  const open = openQueries(shift, queryList(whole, documents, project.shift, now).queries).length;
  return open === 0 ? '' : `; ${open === 1 ? 'a query is' : `${open} queries are`} open`;
}

/** What the record of a shift leaves open: time without an activity, rods drilled while the rig stood, standby without a name. */
export function recordItems(context: UnfinishedContext, shift: Document): readonly string[] {
  const { project, documents, now } = context;
  const { shift: rules } = project;
  const whole = closed(shift, { documents, shifts: rules.shifts, now });
  const label = (code: string): string => activityNamed(rules, code)?.label ?? code;
  return [
    ...gapsOf(whole, now)
      .filter((gap) => gap.minutes > rules.tolerances.minutes)
      .map(
        ({ from, to, minutes }) =>
          `${localTime(from)}–${localTime(to)}, ${formatMinutes(minutes)} h, has no activity.`,
      ),
    ...stoodItems(context, shift),
    ...spansOf(whole, now)
      .filter(isUnauthorised)
      .map(
        (span) =>
          `${label(span.activity)} from ${localTime(span.startedAt)}: no one is named who authorised it.`,
      ),
  ];
}

/** Rods of a shift that were drilled while its record says that the rig stood: a breakdown left open. */
export function stoodItems(
  { project, documents, now }: UnfinishedContext,
  shift: Document,
): readonly string[] {
  const { shift: rules } = project;
  const whole = closed(shift, { documents, shifts: rules.shifts, now });
  const holes = documents.filter((each) => each.kind === 'hole');
  return stretchesWhileStood(whole, holes, rules, now).map((each) => `${stoodWords(rules, each)}.`);
}
