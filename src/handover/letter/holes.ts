import type { Finding } from '../../finding/finding.ts';
import { isOver } from '../../hole/header.ts';
import { headerOf, holeNouns, planOf } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { streamAhead } from '../../sampling/stream/stream.ts';
import { shiftHeaderOf } from '../../shift/shift.ts';
import { headsOf, loggedWords } from '../../standing/heads.ts';
import { openItems, openSoFar } from '../../standing/open-items.ts';
import { bagsOnGround, streamStateOf } from '../../standing/stream.ts';

/** A hole, a shift or the check, and what is not finished there. */
export interface Unfinished {
  readonly name: string;
  readonly items: readonly string[];
}

/** Where a hole stands, in a sentence: state, drilled and logged depth, what was planned. */
export function holeSentence(hole: Document): string {
  const { name, state, stateReason, imported } = headerOf(hole);
  const plan = planOf(hole);
  const planned = plan === undefined ? 'no plan' : `planned to ${formatDepth(plan.depthMm)} m`;
  const because = stateReason === undefined ? '' : ` (${stateReason})`;
  if (imported !== undefined)
    return `${name}: imported to ${formatDepth(imported.depthMm)} m from ${imported.files.map(({ file }) => file).join(', ')}, not logged here.`;
  if (state === 'planned') return `${name}: ${planned}, not begun.`;
  const { drilledMm } = headsOf(hole);
  return `${name}: ${state}${because}, drilled ${formatDepth(drilledMm)} m, logged ${loggedWords(hole)}, ${planned}.`;
}

/**
 * What is not finished in documents that are packed: of holes that have been begun (of one that is over by its final depth, of any other so
 * far), of shifts, and faults that the check finds.
 */
export function unfinished(
  project: Project,
  packed: readonly Document[],
  findings: readonly Finding[],
): readonly Unfinished[] {
  const faults = findings.filter((each) => each.severity === 'fault').length;
  const items = packed.map((document): Unfinished => {
    if (document.kind === 'shift') return { name: document.id, items: openOfShift(document) };
    if (document.kind !== 'hole') return { name: document.id, items: [] };
    return { name: headerOf(document).name, items: openOfHole(project, document) };
  });
  const check = `finds ${faults} fault${faults === 1 ? '' : 's'} in these holes: offsider check lists ${faults === 1 ? 'it' : 'them'}.`;
  return [...items, { name: 'The check', items: faults === 0 ? [] : [check] }].filter(
    (each) => each.items.length > 0,
  );
}

function openOfHole(project: Project, hole: Document): readonly string[] {
  const { state } = headerOf(hole);
  if (state === 'planned') return [];
  return isOver(state) ? openItems(project, hole, finalDepth(hole)) : openSoFar(project, hole);
}

function openOfShift(shift: Document): readonly string[] {
  return shiftHeaderOf(shift).endedAt === undefined ? ['The shift is not ended.'] : [];
}

/** The depth at which a hole was ended, in millimetres; its drilled depth where no decision says. */
function finalDepth(hole: Document): number {
  const ended = holeNouns(hole, 'decisions').findLast((each) => each.kind.startsWith('ended'));
  return ended?.depthMm ?? headsOf(hole).drilledMm;
}

/** The last bag that was issued and the next to come, in a sentence; none for a hole without bags. */
export function bagSentence(project: Project, hole: Document): string | undefined {
  const { name, state, rodMm } = headerOf(hole);
  const last = bagsOnGround(hole).findLast((bag) => bag.byHand !== true);
  const { upcoming, numberedLeft } = streamAhead(project.sampling, streamStateOf(hole), { count: 1, rodMm });
  const [next] = isOver(state) ? [] : upcoming;
  if (last === undefined && next === undefined) return undefined;
  const said = [
    last === undefined ? 'no bag yet' : `last bag ${last.number} (${holding(last)})`,
    ...(next === undefined ? [] : [`next ${next.number} (${holding(next)})`]),
    ...(isOver(state) ? [] : [`${numberedLeft} numbered bags left`]),
  ];
  return `${name}: ${said.join(', ')}.`;
}

function holding(
  bag: Pick<ReturnType<typeof holeNouns<'bags'>>[number], 'kind' | 'fromMm' | 'toMm'>,
): string {
  const { kind, fromMm, toMm } = bag;
  return fromMm === undefined || toMm === undefined ? kind : `${kind} ${formatInterval({ fromMm, toMm })}`;
}
