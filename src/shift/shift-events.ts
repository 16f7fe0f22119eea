import { headerOf, holeNouns } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { rigAt } from './own-record.ts';
import { shiftHeaderOf, shiftThings } from './shift.ts';

/** Something that happened at an instant of a shift, read from where it is recorded. */
export interface ShiftEvent {
  readonly at: Stamp;
  readonly hole?: string;
  readonly text: string;
}

/**
 * What happened in a shift besides its activities, in order: rods, shots, holes begun and ended, no return, the driller's stops, read
 * from the holes and never copied; bits and water from the shift itself. `now` ends a shift that goes on.
 */
export function eventsOf(shift: Document, holes: readonly Document[], now: Stamp): readonly ShiftEvent[] {
  const { rig, startsAt, endedAt } = shiftHeaderOf(shift);
  const until = endedAt === undefined ? instantMs(now) + 1 : instantMs(endedAt);
  const during = ({ at }: ShiftEvent): boolean =>
    instantMs(at) >= instantMs(startsAt) && instantMs(at) < until;
  const ofHoles = holes.flatMap((hole) =>
    holeEvents(hole).filter((event) => during(event) && rigAt(hole, event.at) === rig),
  );
  const bits = shiftThings(shift, 'bits').map(([, { at, gaugeTenthsMm, hole, remark }]) => ({
    at,
    ...(hole === undefined ? {} : { hole }),
    text: `bit ${(gaugeTenthsMm / 10).toFixed(1)} mm${remark === undefined ? '' : `, ${remark}`}`,
  }));
  const water = shiftThings(shift, 'waterStrikes').map(([, { at, hole, depthMm, remark }]) => ({
    at,
    hole,
    text: `water at ${formatDepth(depthMm)} m${remark === undefined ? '' : `, ${remark}`}`,
  }));
  return [...ofHoles, ...bits, ...water].toSorted((a, b) => instantMs(a.at) - instantMs(b.at));
}

function holeEvents(hole: Document): readonly ShiftEvent[] {
  const { id } = hole;
  const { name } = headerOf(hole);
  const event = (at: Stamp, text: string): ShiftEvent => ({ at, hole: id, text });
  const lost = holeNouns(hole, 'stream').filter((fact) => fact.recovery === 'none');
  return [
    ...holeNouns(hole, 'drilling').map((each, index) =>
      event(
        each.startedAt,
        index === 0 ? `${name} begun` : `${name} gone on with at ${formatDepth(each.fromMm)} m`,
      ),
    ),
    ...holeNouns(hole, 'rods').flatMap((rod, index, rods) => {
      const above = rods[index - 1]?.depthMm ?? 0;
      const none = lost.filter((fact) => fact.toMm > above && fact.fromMm < rod.depthMm);
      return [
        event(rod.at, `rod ${rod.rod} done, ${formatDepth(rod.depthMm)} m`),
        ...none.map((fact) =>
          event(rod.at, `no return ${formatDepth(fact.fromMm)}–${formatDepth(fact.toMm)} m`),
        ),
      ];
    }),
    ...holeNouns(hole, 'shots').map((shot) => event(shot.at, `shot at ${formatDepth(shot.depthMm)} m`)),
    ...holeNouns(hole, 'stops').flatMap((stop) => [
      event(stop.at, `driller stopped: ${stop.because}`),
      ...(stop.endedAt === undefined ? [] : [event(stop.endedAt, 'driller went on')]),
    ]),
    ...holeNouns(hole, 'decisions')
      .filter((each) => each.kind === 'ended' || each.kind === 'ended early')
      .map((each) => event(each.at, `${name} ended at ${formatDepth(each.depthMm)} m`)),
  ];
}
