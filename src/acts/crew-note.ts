import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Maker } from '../hole/commands/made.ts';
import type { Project } from '../project/project.ts';
import { isDay } from '../quantity/stamp.ts';
import type { Document, Thing } from '../record/document.ts';
import { SHIFT_REFUSALS } from '../shift/findings.ts';
import { shiftHeaderOf } from '../shift/shift.ts';
import { completedNotes, waitingNotes } from '../standing/completed-notes.ts';
import { crewNote } from '../standing/crew-note.ts';
import { swingStart } from '../standing/swing.ts';
import type { MadeOn } from './shift.ts';

/** What can be done with the note for the next crew, as a line: the same in the console and on the command line. */
export const NOTE_DEEDS: readonly (readonly [form: string, does: string])[] = [
  ['note water truck at 07:00', 'complete the note for the next crew: the draft as it is, and this'],
  ['note swing 2026-03-10 gear list', 'the same for a swing from that day on'],
  ['acknowledge', 'the next geologist has read the latest note'],
];

/** Does one of {@link NOTE_DEEDS} on a shift; undefined where the line is none of them. */
export function noteDeed(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  text: string,
  maker: Maker,
): Result<MadeOn> | undefined {
  const [, added] = /^note\b *(.*)$/.exec(text.trim()) ?? [];
  if (added !== undefined) return complete(project, documents, shift, added, maker);
  return text.trim() === 'acknowledge' ? acknowledge(documents, shiftHeaderOf(shift).rig, maker) : undefined;
}

function complete(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  added: string,
  maker: Maker,
): Result<MadeOn> {
  const { rig } = shiftHeaderOf(shift);
  const [, swing, day, words = added] = /^(swing)\b *(\d{4}-\d{2}-\d{2})? *(.*)$/.exec(added) ?? [];
  if (day !== undefined && !isDay(day))
    return refused(
      notThere(
        rig,
        `${day} is not in the calendar`,
        'Give the first day of the swing: note swing 2026-03-10.',
      ),
    );
  const swingFrom = swing === undefined ? undefined : (day ?? swingStart(documents, rig));
  const draft = crewNote(project, documents, rig, maker.at, swingFrom);
  const note = {
    draft: draft.map(({ title, lines }) => ({ title, lines: [...lines] })),
    by: maker.by,
    at: maker.at,
    ...(words === '' ? {} : { added: words }),
    ...(swingFrom === undefined ? {} : { swingFrom }),
  };
  return ok({
    document: { kind: shift.kind, id: shift.id },
    made: {
      what: `note for the next crew${swingFrom === undefined ? '' : `, swing from ${swingFrom},`} completed by ${maker.by}`,
      changes: [{ put: ['crewNotes', maker.newId()], thing: note as Thing }],
    },
  });
}

/** The incoming geologist acknowledges what was handed over last on the rig, the note of a swing too. Refused for whoever wrote it, and where there is none. */
function acknowledge(documents: readonly Document[], rig: string, maker: Maker): Result<MadeOn> {
  const last = completedNotes(documents, rig).at(-1);
  if (last === undefined)
    return refused(
      notThere(
        rig,
        'no note was completed',
        'The outgoing geologist completes it: note, and what is to add.',
      ),
    );
  const waiting = waitingNotes(documents, rig);
  if (waiting.length === 0)
    return refused(
      notThere(rig, `${last.note.acknowledgedBy} acknowledged it already`, 'There is nothing to do.'),
    );
  const unread = waiting.filter(({ note }) => note.by !== maker.by);
  if (unread.length === 0)
    return refused(
      notThere(
        rig,
        `${maker.by} wrote it`,
        'Whoever takes over acknowledges it: open the console, or give --by, with their initials.',
      ),
    );
  return ok({
    document: { kind: last.shift.kind, id: last.shift.id },
    made: {
      what: `${unread.map(({ note }) => (note.swingFrom === undefined ? 'note' : 'swing note')).join(' and ')} of ${last.shift.id} acknowledged by ${maker.by}`,
      changes: unread.map(({ id }) => ({
        patch: ['crewNotes', id],
        set: { acknowledgedBy: maker.by, acknowledgedAt: maker.at },
      })),
    },
  });
}

const notThere = (rig: string, problem: string, remedy: string): Finding =>
  SHIFT_REFUSALS.notThere.at({ thing: `note for the next crew of ${rig}` }, { problem, remedy });
