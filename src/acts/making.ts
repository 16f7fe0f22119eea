import type { Header } from '../hole/header.ts';
import type { Project } from '../project/project.ts';
import { depthFromMetres } from '../quantity/depth.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Change, DocumentName, Thing } from '../record/document.ts';
import type { ShiftName } from '../shift/charge-class.ts';
import { startShift } from '../shift/commands.ts';

/**
 * The changes that make a document of which only later edits are left, as far as its name and the settings tell: a hole of
 * the usual intervals, suspended until someone has looked at it; a shift from its usual start. None for any other kind.
 */
export function makingOf(project: Project, { kind, id }: DocumentName, now: Stamp): readonly Change[] {
  if (kind === 'hole') return [{ put: ['hole', 'hole'], thing: headerFor(project, id) as unknown as Thing }];
  const [, rig, date, name] = /^(.+)_(\d{4}-\d{2}-\d{2})_(DAY|NIGHT)$/.exec(id) ?? [];
  if (kind !== 'shift' || rig === undefined || date === undefined || name === undefined) return [];
  return startShift({
    rig,
    date,
    name: name.toLowerCase() as ShiftName,
    startsAt: usualStart(project, date, name.toLowerCase(), now),
    crew: [],
    geologist: 'not known',
  }).changes;
}

function headerFor({ settings }: Project, id: string): Header {
  const [rig] = settings.rigs;
  return {
    name: id,
    state: 'suspended',
    stateReason: 'its file was lost; restored from the journal',
    logFromMm: depthFromMetres(0),
    intervalMm: depthFromMetres(settings.log.intervalM),
    rodMm: depthFromMetres(rig?.rodM ?? 6),
    firstRodOffsetMm: depthFromMetres(rig?.firstRodOffsetM ?? 0),
  };
}

/** The start of a shift on a date by the settings, at the offset of the clock as it is now. */
function usualStart({ settings }: Project, date: string, name: string, now: Stamp): Stamp {
  const clock = settings.shift.shifts.find((each) => each.name === name)?.startsAt ?? '00:00';
  return `${date}T${clock}:00${now.slice(19)}` as Stamp;
}
