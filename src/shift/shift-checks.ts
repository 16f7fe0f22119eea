import type { Finding } from '../finding/finding.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import { formatMinutes, instantMs, localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { gapsOf } from './current.ts';
import { SHIFT_CHECKS } from './findings.ts';
import { rigAt } from './own-record.ts';
import { shiftHeaderOf } from './shift.ts';
import { closed, presumedEnd, shiftHolding, shiftsOf } from './shift-end.ts';
import type { ShiftRules } from './shift-rules.ts';
import { drilledOnAnother, drilledWhileStood } from './stood.ts';

/** What is doubtful in the shift records of a project: ends that are presumed, time not recorded, rods and shots in no shift. */
export function checkShifts(
  documents: readonly Document[],
  rules: ShiftRules,
  now: Stamp,
): readonly Finding[] {
  const context = { documents, shifts: rules.shifts, now };
  const shifts = documents.filter((each) => each.kind === 'shift');
  const holes = documents.filter((each) => each.kind === 'hole');
  return [
    ...shifts.flatMap((shift) => [
      ...presumed(shift, presumedEnd(shift, context)),
      ...untold(closed(shift, context), rules, now),
      ...drilledWhileStood(closed(shift, context), holes, rules, now),
      ...drilledOnAnother(closed(shift, context), holes, rules, now),
    ]),
    ...holes.flatMap((hole) => outside(hole, context)),
  ];
}

const file = (shift: Document): string => `shifts/${shift.id}.json`;

function presumed(shift: Document, end: Stamp | undefined): readonly Finding[] {
  if (end === undefined) return [];
  const told = shiftHeaderOf(shift).endedAt;
  const clock = localTime(end);
  const problem =
    told === undefined
      ? `its end was not recorded: ${clock} is presumed`
      : `it ended at ${localTime(told)}, after the next shift began at ${clock}; ${clock} is presumed`;
  const remedy = `Ask the driller, then record it: F8 and end ${clock}, or offsider activity end ${clock} --shift ${shift.id}.`;
  return [SHIFT_CHECKS.endPresumed.at({ file: file(shift), thing: 'end' }, { problem, remedy })];
}

function untold(shift: Document, rules: ShiftRules, now: Stamp): readonly Finding[] {
  if (shiftHeaderOf(shift).endedAt === undefined) return [];
  return gapsOf(shift, now)
    .filter((gap) => gap.minutes > rules.tolerances.minutes)
    .map(({ from, to, minutes }) =>
      SHIFT_CHECKS.untold.at(
        { file: file(shift), thing: `${localTime(from)}–${localTime(to)}` },
        {
          problem: `${formatMinutes(minutes)} h without an activity`,
          remedy: `Record what the rig did: F8 and standby ${localTime(from)}-${localTime(to)}, or whatever it was.`,
        },
      ),
    );
}

/** Rods and shots of a hole that no shift of its rig holds, one finding a day; nothing for a rig that never had a shift recorded. */
function outside(
  hole: Document,
  context: Parameters<typeof shiftHolding>[2] & { readonly documents: readonly Document[] },
): readonly Finding[] {
  const stamps = [...holeNouns(hole, 'rods'), ...holeNouns(hole, 'shots')].map((each) => each.at);
  const lost = stamps.filter((at) => {
    const rig = rigAt(hole, at);
    return (
      rig !== undefined &&
      shiftsOf(context.documents, rig).length > 0 &&
      shiftHolding(at, rig, context) === undefined
    );
  });
  return [...new Set(lost.map(localDate))].map((date) => {
    const there = lost.filter((at) => localDate(at) === date).toSorted((a, b) => instantMs(a) - instantMs(b));
    const [first = '', last = ''] = [there[0], there.at(-1)].map((at) =>
      at === undefined ? '' : localTime(at),
    );
    return SHIFT_CHECKS.outside.at(
      { hole: headerOf(hole).name, thing: date },
      {
        problem: `${there.length} rods or shots at ${first}${first === last ? '' : `–${last}`} are in no shift of ${rigAt(hole, there[0] as Stamp)}`,
        remedy: 'Record when that shift began and ended: F8 and begin 06:00, end 18:00.',
      },
    );
  });
}
