import type { Project } from '../project/project.ts';
import { depthFromMm, formatDepth } from '../quantity/depth.ts';
import { formatInterval, lengthMm, overlaps } from '../quantity/interval.ts';
import { formatMinutes, localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { spansOf } from '../shift/current.ts';
import { geologistsOf } from '../shift/geologists.ts';
import { wetOf } from '../shift/hole-facts.ts';
import { ownRecord } from '../shift/own-record.ts';
import { linesOf, shiftHeaderOf, shiftThings } from '../shift/shift.ts';
import { closed, shiftsOf } from '../shift/shift-end.ts';
import { sumBy } from '../shift/shift-record.ts';
import { activityNamed } from '../shift/shift-rules.ts';
import { unsignedPlods } from '../shift/signed.ts';
import { spanFigures } from '../shift/span-figures.ts';

/** Shifts of a rig with their presumed ends, in order. */
function endedShifts(
  { shift }: Project,
  documents: readonly Document[],
  rig: string,
  now: Stamp,
): readonly Document[] {
  return shiftsOf(documents, rig).map((each) => closed(each, { documents, shifts: shift.shifts, now }));
}

/** What stood still without charge in the two latest shifts, with what was said of it: hoses, pumps, splitters. */
export function gearLines(
  project: Project,
  documents: readonly Document[],
  rig: string,
  now: Stamp,
): readonly string[] {
  return endedShifts(project, documents, rig, now)
    .slice(-2)
    .flatMap((shift) =>
      spansOf(shift, now)
        .filter((span) => span.charge === 'no charge' && span.remark !== undefined)
        .map((span) => {
          const label = activityNamed(project.shift, span.activity)?.label ?? span.activity;
          return `${label} ${localDate(span.startedAt)} ${localTime(span.startedAt)}, ${formatMinutes(span.minutes)} h: ${span.remark}`;
        }),
    );
}

/** When the latest shift of a rig began, or the swing: what happened since is news to the next crew. */
export function leftSince(
  project: Project,
  documents: readonly Document[],
  rig: string,
  now: Stamp,
  swingFrom?: string,
): Stamp {
  const shifts = endedShifts(project, documents, rig, now);
  const first =
    swingFrom === undefined ? shifts.at(-1) : shifts.find((each) => shiftHeaderOf(each).date >= swingFrom);
  return first === undefined ? now : shiftHeaderOf(first).startsAt;
}

/** Water met in the latest shift of a rig, or since the swing began. */
export function waterLines(
  project: Project,
  documents: readonly Document[],
  rig: string,
  now: Stamp,
  swingFrom?: string,
): readonly string[] {
  const shifts = endedShifts(project, documents, rig, now);
  const told =
    swingFrom === undefined
      ? shifts.slice(-1)
      : shifts.filter((each) => shiftHeaderOf(each).date >= swingFrom);
  const met = told.flatMap((shift) =>
    shiftThings(shift, 'waterStrikes').map(
      ([, each]) =>
        `${each.hole} at ${formatDepth(each.depthMm)} m, ${localDate(each.at)} ${localTime(each.at)}${each.remark === undefined ? '' : `: ${each.remark}`}`,
    ),
  );
  return [...met, ...wetLines(told, documents, now), ...told.flatMap(calledWet)];
}

/** Metres that the sheets of a shift call wet, beside those that we logged so. */
function calledWet(shift: Document): readonly string[] {
  return shiftThings(shift, 'plods').flatMap(([id, { sheet }]) =>
    linesOf(shift, id).flatMap(({ hole, wetFromMm: fromMm, wetToMm: toMm }) =>
      hole === undefined || fromMm === undefined || toMm === undefined
        ? []
        : [`plod ${sheet} calls ${formatInterval({ fromMm, toMm })} m of ${hole} wet`],
    ),
  );
}

/** Metres that came up wet in some shifts, by hole: paid with a surcharge, and what the next crew drills into. */
function wetLines(
  shifts: readonly Document[],
  documents: readonly Document[],
  now: Stamp,
): readonly string[] {
  const holes = documents.filter((each) => each.kind === 'hole');
  const drilled = shifts.flatMap((shift) => ownRecord(shift, holes, now).metres);
  return holes.flatMap((hole) => {
    const wet = wetOf(hole).flatMap((each) =>
      drilled
        .filter((rod) => rod.hole === hole.id && overlaps(rod, each))
        .map((rod) => ({
          fromMm: depthFromMm(Math.max(rod.fromMm, each.fromMm)),
          toMm: depthFromMm(Math.min(rod.toMm, each.toMm)),
        })),
    );
    const mm = wet.reduce((sum, each) => sum + lengthMm(each), 0);
    if (mm === 0) return [];
    const where = {
      fromMm: depthFromMm(Math.min(...wet.map((each) => each.fromMm))),
      toMm: depthFromMm(Math.max(...wet.map((each) => each.toMm))),
    };
    return [`${hole.id} wet ${formatDepth(depthFromMm(mm))} m, in ${formatInterval(where)} m`];
  });
}

/** What the rig did in a swing: shifts and their geologists, metres by hole, hours by class, time lost, sheets that are not signed. */
export function swingLines(
  project: Project,
  documents: readonly Document[],
  rig: string,
  now: Stamp,
  from: string,
): readonly string[] {
  const shifts = endedShifts(project, documents, rig, now).filter((each) => shiftHeaderOf(each).date >= from);
  const holes = documents.filter((each) => each.kind === 'hole');
  const { byClass, lost, pace } = spanFigures(shifts, holes, project.shift, now);
  const metres = sumBy(
    pace,
    (each) => each.hole,
    (each) => each.mm,
  );
  const total = [...metres.values()].reduce((sum, mm) => sum + mm, 0);
  const hours = ({ minutes }: { readonly minutes: number }): string => `${formatMinutes(minutes)} h`;
  const geologists = [
    ...new Set(shifts.flatMap((each) => geologistsOf(each, documents, project.settings.people, now))),
  ];
  const unsigned = shifts.flatMap(unsignedPlods);
  return [
    `${shifts.length} shifts, geologists ${geologists.join(', ')}`,
    `${formatDepth(depthFromMm(total))} m drilled: ${[...metres].map(([hole, mm]) => `${hole} ${formatDepth(depthFromMm(mm))} m`).join(', ')}`,
    byClass
      .filter(({ minutes }) => minutes > 0)
      .map((each) => `${each.charge} ${hours(each)}`)
      .join(', '),
    ...lost.map((each) => `lost: ${each.cause}, ${hours(each)}`),
    ...(unsigned.length === 0 ? [] : [`plods not signed: ${unsigned.join(', ')}`]),
  ].filter((each) => each !== '');
}

/** The first day of the swing that goes on: the day after the last one was handed over, else that of the rig's first shift. */
export function swingStart(documents: readonly Document[], rig: string): string | undefined {
  const shifts = shiftsOf(documents, rig);
  const handed = shifts.findLast((each) =>
    shiftThings(each, 'crewNotes').some(([, note]) => note.swingFrom !== undefined),
  );
  const first = handed === undefined ? shifts[0] : shifts[shifts.indexOf(handed) + 1];
  return first === undefined ? undefined : shiftHeaderOf(first).date;
}
