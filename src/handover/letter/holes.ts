import { isOver } from '../../hole/header.ts';
import { headerOf, type holeNouns, planOf } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { streamAhead } from '../../sampling/stream/stream.ts';
import { headsOf, loggedWords } from '../../standing/heads.ts';
import { bagsOnGround, streamStateOf } from '../../standing/stream.ts';

/** The state of a hole, in a sentence: state, drilled and logged depth, what was planned. */
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
    ...(isOver(state) ? [] : [`${numberedLeft} numbered ${numberedLeft === 1 ? 'bag' : 'bags'} left`]),
  ];
  return `${name}: ${said.join(', ')}.`;
}

function holding(
  bag: Pick<ReturnType<typeof holeNouns<'bags'>>[number], 'kind' | 'fromMm' | 'toMm'>,
): string {
  const { kind, fromMm, toMm } = bag;
  return fromMm === undefined || toMm === undefined ? kind : `${kind} ${formatInterval({ fromMm, toMm })}`;
}
