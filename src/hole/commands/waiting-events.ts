import { formatDepth } from '../../quantity/depth.ts';
import type { Change, Document, Id, Thing } from '../../record/document.ts';
import type { PointEvent } from '../../value/cell.ts';
import type { Row } from '../../value/row.ts';
import { holeNouns, holeThings } from '../hole.ts';
import type { WaitingEvent } from '../log.ts';

/** Events that wait for their row, from the top down, with their ids. */
export function waitingDown(hole: Document): readonly (readonly [Id, WaitingEvent])[] {
  return [...holeThings(hole, 'waitingEvents')].sort(([, a], [, b]) => a.atMm - b.atMm);
}

/** The depth of the deepest event that waits: the bit has been there. 0 where none waits. */
export function deepestWaitingMm(hole: Document): number {
  return Math.max(0, ...holeNouns(hole, 'waitingEvents').map(({ atMm }) => atMm));
}

/**
 * A row with the events that waited for it, and the changes that take those off the list. One stays on the list where the row says the
 * same thing at another depth, where the row can't hold it (no return, a field not asked), and where it says that no chips came up, for
 * then nothing should have carried into the row: those a person settles.
 */
export function withWaiting(
  hole: Document,
  row: Row,
): { readonly row: Row; readonly changes: readonly Change[]; readonly words: string } {
  let cells = row.cells;
  const changes: Change[] = [];
  const labels: string[] = [];
  for (const [id, event] of row.noReturn === true ? [] : waitingDown(hole)) {
    const cell = cells[event.field];
    if (event.atMm < row.fromMm || event.atMm >= row.toMm || cell === undefined) continue;
    const [list, meaning] = meaningOf(hole, event);
    const events: { readonly [code: string]: PointEvent } = 'events' in cell ? cell.events : {};
    const own = events[event.code];
    if (own === undefined && meaning?.noChips === true) continue;
    if (own?.atMm !== undefined && own.atMm !== event.atMm) continue;
    const number = own?.number ?? event.number;
    const joined = { atMm: event.atMm, ...(number === undefined ? {} : { number }) };
    cells = { ...cells, [event.field]: { events: { ...events, [event.code]: joined } } };
    changes.push({ remove: ['waitingEvents', id] });
    labels.push(`${meaning?.label ?? `${list} ${event.code}`} at ${formatDepth(event.atMm)} m`);
  }
  return {
    row: { ...row, cells },
    changes,
    words: labels.length === 0 ? '' : `, with what waited for it: ${labels.join(', ')}`,
  };
}

/** What the hole's legend says of an event that waits, and the list that it is from. */
function meaningOf(hole: Document, { field, code }: WaitingEvent) {
  const list = holeThings(hole, 'legendFields').find(([name]) => name === field)?.[1].list ?? field;
  const meaning = holeThings(hole, 'legendCodes').find(([name]) => name === `${list} ${code}`)?.[1];
  return [list, meaning] as const;
}

/** Puts an event on the list of those that wait, in place of the same one at the same depth. */
export function waitChanges(hole: Document, id: Id, event: WaitingEvent): readonly Change[] {
  return [...takenOff(hole, event), { put: ['waitingEvents', id], thing: event as Thing }];
}

/** Takes an event off the list, at its depth. */
export function takenOff(
  hole: Document,
  { field, code, atMm }: Pick<WaitingEvent, 'field' | 'code' | 'atMm'>,
): readonly Change[] {
  return waitingDown(hole)
    .filter(([, each]) => each.field === field && each.code === code && each.atMm === atMm)
    .map(([id]): Change => ({ remove: ['waitingEvents', id] }));
}
