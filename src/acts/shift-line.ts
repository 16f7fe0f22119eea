import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { instantMs, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import {
  agreeEnd,
  amendEntry,
  endShiftAt,
  entryAt,
  removeEntry,
  removeEvent,
  splitEntry,
  timeWrong,
} from '../shift/entry-changes.ts';
import { SHIFT_REFUSALS } from '../shift/findings.ts';
import { type EntryParts, type LineWords, parseRecordLine, type RecordLine } from '../shift/record-line.ts';
import { shiftHeaderOf } from '../shift/shift.ts';
import { AHEAD_MS } from '../shift/shift-clock.ts';
import { shiftsOf } from '../shift/shift-end.ts';
import type { MadeOn } from './shift.ts';
import { happened, use } from './shift-happened.ts';
import { begin, noShift, on, type RecordInput, start } from './shift-start.ts';
import { inShift, isAhead, notYet } from './shift-times.ts';
import { speakerProblem } from './speakers.ts';

/**
 * What one line of the shift record changes: an activity now or late, an amendment, the hours of the shift, crew, consumables, a
 * bit, water. The same from the console, the command line and a pipe. Refused, with nothing changed, where it can't be so.
 */
export function recordLine(
  project: Project,
  documents: Iterable<Document>,
  input: RecordInput,
  maker: Maker,
): Result<MadeOn> {
  const all = [...documents];
  const read = parseRecordLine(input.text, lineWords(project, all));
  if (!read.ok) return read;
  const line = read.value;
  const unable = 'parts' in line ? authoriserProblem(project, input, line.parts, maker) : undefined;
  if (unable !== undefined) return refused(unable);
  if (line.does === 'start') return start(project, all, input, line.parts, maker);
  if (line.does === 'begin') return begin(project, all, input, line.at, maker);
  const shift = input.shift ?? shiftsOf(all, input.rig).findLast((each) => !isAfter(each, maker.at));
  if (shift === undefined) return refused(noShift(input.rig));
  return on(shift, change(project, all, shift, line, input, maker));
}

/** Time that the client pays for is authorised by someone on its side: not by the crew who is paid, nor by no one. */
function authoriserProblem(
  { settings }: Project,
  { rig }: RecordInput,
  { authorisedBy }: EntryParts,
  maker: Maker,
): Finding | undefined {
  if (authorisedBy === undefined) return undefined;
  const problem = speakerProblem(settings.people, maker.by, authorisedBy, 'not the crew');
  return problem === undefined
    ? undefined
    : SHIFT_REFUSALS.lineUnread.at(
        { thing: `rig ${rig}` },
        {
          problem,
          remedy:
            'Type who authorised it, like standby by Ines Falk: no water; leave by out where no one has.',
        },
      );
}

/** Words that a line is read with: activities by code and key, holes by id and by name. */
export function lineWords(project: Project, documents: readonly Document[]): LineWords {
  const holes = documents.filter((each) => each.kind === 'hole');
  return {
    activities: project.shift.activities,
    holes: new Map(
      holes.flatMap((hole) => [
        [hole.id.toUpperCase(), hole.id],
        [headerOf(hole).name.toUpperCase(), hole.id],
      ]),
    ),
  };
}

const isAfter = (shift: Document, at: Stamp): boolean =>
  instantMs(shiftHeaderOf(shift).startsAt) > instantMs(at) + AHEAD_MS;

/** Refused where the rig's next shift has begun by then: no minute belongs to two shifts. */
function endFault(shift: Document, documents: readonly Document[], at: Stamp): Result<Made> | undefined {
  const { rig, startsAt } = shiftHeaderOf(shift);
  const next = shiftsOf(documents, rig).find(
    (each) => instantMs(shiftHeaderOf(each).startsAt) > instantMs(startsAt),
  );
  if (next === undefined || instantMs(shiftHeaderOf(next).startsAt) >= instantMs(at)) return undefined;
  const clock = localTime(shiftHeaderOf(next).startsAt);
  return refused(
    timeWrong(
      shift,
      `the next shift, ${next.id}, began at ${clock}`,
      `End this one by ${clock}, or amend when the next one began.`,
    ),
  );
}

function change(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  line: Exclude<RecordLine, { readonly does: 'start' | 'begin' }>,
  { hole, whole }: RecordInput,
  maker: Maker,
): Result<Made> {
  const time = (minute: number | undefined): Stamp =>
    minute === undefined ? maker.at : inShift(documents, shift, minute, maker.at);
  switch (line.does) {
    case 'end': {
      const at = time(line.at);
      if (isAhead(at, maker.at)) return refused(notYet(shift, at, maker.at));
      return endFault(shift, documents, at) ?? endShiftAt(shift, at);
    }
    case 'crew':
      return ok({
        what: `crew ${line.names.join(', ')}`,
        changes: [{ patch: ['shift', 'shift'], set: { crew: [...line.names] } }],
      });
    case 'amend':
      return amend(project, shift, line.at, whole === true ? withGone(shift, line) : line.parts, time);
    case 'overtime': {
      const at = time(line.at);
      return endFault(shift, documents, at) ?? agreeEnd(shift, at);
    }
    case 'split':
      return splitEntry(shift, time(line.at), maker);
    case 'remove':
      return line.of === undefined ? removeEntry(shift, line.at) : removeEvent(shift, line.of, line.at);
    case 'used':
      return use(project, shift, line, maker.at);
    case 'bit':
    case 'water':
      return happened(documents, shift, line, { at: time(line.at), hole }, maker);
  }
}

function amend(
  project: Project,
  shift: Document,
  minute: number,
  { from, to, without, ...parts }: EntryParts,
  time: (minute: number | undefined) => Stamp,
): Result<Made> {
  const set = {
    ...parts,
    ...(from === undefined ? {} : { startedAt: time(from) }),
    ...(to === undefined ? {} : { endedAt: time(to) }),
  };
  return amendEntry(shift, project.shift, minute, set, without);
}

/** The parts of a line that was opened with everything of an entry, and what is missing on it now, to be taken out. */
function withGone(
  shift: Document,
  { at, parts }: Extract<RecordLine, { readonly does: 'amend' }>,
): EntryParts {
  const entry = entryAt(shift, at);
  if (entry === undefined) return parts;
  const gone = (['hole', 'authorisedBy', 'beside', 'remark'] as const).filter(
    (part) => entry[part] !== undefined && parts[part] === undefined,
  );
  const ends = entry.endedAt !== undefined && parts.to === undefined ? (['endedAt'] as const) : [];
  return { ...parts, without: [...(parts.without ?? []), ...gone, ...ends] };
}
