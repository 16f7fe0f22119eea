import type { Document, Id } from '../record/document.ts';
import { type ShiftNoun, shiftThings } from '../shift/shift.ts';
import { shiftsOf } from '../shift/shift-end.ts';

/** A note for the next crew as it was completed, with the shift that it is kept in. */
export interface CompletedNote {
  readonly shift: Document;
  readonly id: Id;
  readonly note: ShiftNoun<'crewNotes'>;
}

/** Notes that were completed on a rig, the oldest first: those of a shift, those of a swing. */
export function completedNotes(documents: Iterable<Document>, rig: string): readonly CompletedNote[] {
  return shiftsOf(documents, rig).flatMap((shift) =>
    shiftThings(shift, 'crewNotes').map(([id, note]) => ({ shift, id, note })),
  );
}

/** The notes that whoever comes next has to read: of the latest shift that has any, those not acknowledged. */
export function waitingNotes(documents: Iterable<Document>, rig: string): readonly CompletedNote[] {
  const all = completedNotes(documents, rig);
  const latest = all.at(-1)?.shift.id;
  return all.filter(({ shift, note }) => shift.id === latest && note.acknowledgedBy === undefined);
}

/** True for a note that hands over a swing, and not one shift. */
export const isOfSwing = ({ note }: CompletedNote): boolean => note.swingFrom !== undefined;
