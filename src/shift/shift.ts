import * as z from 'zod';
import { HOLE_NOUNS } from '../hole/hole.ts';
import { depthMm, id, stamp, words } from '../hole/parts.ts';
import type { Document, Id } from '../record/document.ts';
import { own } from '../record/json.ts';
import { CHARGE_CLASSES, SHIFT_NAMES } from './charge-class.ts';

/** What a query can come to: the sheet holds, the sheet is wrong, or no one knows yet. */
export const QUERY_ANSWERS = ['agreed', 'corrected', 'open'] as const;

const count = z.int().min(0).max(100_000);
const used = z
  .array(z.strictObject({ item: words.describe('Name of the consumable'), count }))
  .describe('Consumables used up, each item once');
const beside = z
  .array(words)
  .optional()
  .describe('What ran beside it and is paid by the hour: booster, auxiliary compressor');
const charge = z.enum(CHARGE_CLASSES).describe('What it is charged by');

/** The shift itself: table `shift`, one thing `shift`. */
const shiftHeader = z.strictObject({
  rig: words,
  date: z.iso.date().describe('Local date on which the shift started'),
  name: z.enum(SHIFT_NAMES),
  startsAt: stamp.describe('Start of the shift: instant with offset'),
  endedAt: stamp.optional().describe('End of the shift, once it has ended: instant with offset'),
  plannedEndAt: stamp
    .optional()
    .describe('End that was agreed for this shift, as of overtime, where it is not that of the settings'),
  crew: z.array(words).describe('Names of the crew'),
  geologist: words,
});
export type ShiftHeader = Readonly<z.infer<typeof shiftHeader>>;

/** What the rig was doing: table `activities`. It lasts to the start of the next one or the end of the shift. */
const activity = z.strictObject({
  startedAt: stamp,
  endedAt: stamp.optional().describe('End, where it is known and nothing was recorded from then on'),
  activity: words.describe('Code of the activity, as in project.json'),
  charge,
  hole: words.optional().describe('Permanent id of the hole'),
  authorisedBy: words.optional().describe('Who authorised it, as standby needs'),
  beside,
  used: used.optional(),
  remark: words.optional(),
});
export type Activity = Readonly<z.infer<typeof activity>>;

/** A bit that was put on, with its gauge as measured: table `bits`. */
const bit = z.strictObject({
  at: stamp,
  gaugeTenthsMm: z.int().min(500).max(5000).describe('Gauge as measured, in tenths of a millimetre'),
  hole: words.optional().describe('Permanent id of the hole'),
  remark: words.optional(),
});

/** Water met while drilling: table `waterStrikes`. */
const waterStrike = z.strictObject({
  at: stamp,
  hole: words.describe('Permanent id of the hole'),
  depthMm,
  remark: words.optional(),
});

/** A plod, the driller's sheet of a shift: table `plods`. It comes late; its lines stand in `plodLines`. */
const plod = z.strictObject({
  sheet: words.describe('Number of the sheet'),
  receivedAt: stamp,
  from: words.optional().describe('Who handed it over'),
  crew: z.array(words).optional().describe('Crew as the sheet names it'),
  remark: words.optional(),
});
export type Plod = Readonly<z.infer<typeof plod>>;

/** One line of a plod, as the driller wrote it: table `plodLines`. */
const plodLine = z.strictObject({
  plod: id.describe('The plod that it is on'),
  activity: words.describe('Code of the activity, as in project.json; as written where there is none'),
  minutes: z.int().min(0).max(1440).describe('Hours claimed, in whole minutes'),
  startsAt: stamp.optional().describe('Start of the line, where the sheet has times'),
  endsAt: stamp.optional().describe('End of the line, where the sheet has times'),
  hole: words.optional().describe('Permanent id of the hole'),
  fromMm: depthMm.optional().describe('Top of the metres claimed, in whole millimetres'),
  toMm: depthMm.optional().describe('Bottom of the metres claimed, in whole millimetres'),
  wetFromMm: depthMm.optional().describe('Top of the metres that the sheet calls wet, in whole millimetres'),
  wetToMm: depthMm.optional().describe('Bottom of the metres that the sheet calls wet, in whole millimetres'),
  shots: count.optional().describe('Survey shots claimed'),
  beside,
  used: used.optional(),
  remark: words.optional(),
  was: z
    .array(words)
    .optional()
    .describe('The line as it was taken down before it was corrected, oldest first, with when and by whom'),
});
export type PlodLine = Readonly<z.infer<typeof plodLine>>;

/** A signature on a plod: table `signOffs`. It says how many queries stood open when it was given. */
const signOff = z.strictObject({
  plod: id.describe('The plod that was signed'),
  by: words,
  role: words.optional().describe('What the person who signed does on the rig, as in project.json'),
  at: stamp,
  openQueries: count.describe('Lines of the query list at that moment'),
  remark: words.optional().describe('What was agreed about the queries'),
  exceptions: z.array(words).optional().describe('Queries that were open when it was signed, in words'),
  ownCents: z.int().optional().describe('What our own record came to, in cents'),
  plodCents: z.int().optional().describe('What the plod came to, in cents'),
  figures: z
    .array(z.strictObject({ subject: words, of: words, own: z.int(), plod: z.int() }))
    .optional()
    .describe('Both sides figure by figure as they were signed: minutes, millimetres, pieces, cents'),
  times: z
    .array(words)
    .optional()
    .describe('Both sides by the clock as they were signed: entries of the record, lines of the plod'),
  seal: words.optional().describe('SHA-256 of both sides as they were signed, figures and times'),
});
export type SignOff = Readonly<z.infer<typeof signOff>>;

/** What came of a query: table `queryAnswers`. The latest for a query counts. */
const queryAnswer = z.strictObject({
  query: words.describe('Code and place of the query'),
  answer: z.enum(QUERY_ANSWERS),
  by: words,
  at: stamp,
  figures: z
    .string()
    .max(500)
    .optional()
    .describe('Figures of the query that was answered; with others it is open again'),
  remark: words.optional(),
});

/** A note for the next crew: table `crewNotes`. The draft is kept as it stood when the note was completed. */
const crewNote = z.strictObject({
  draft: z.array(z.strictObject({ title: words, lines: z.array(words) })),
  added: words.optional().describe('What the outgoing geologist added'),
  swingFrom: z.iso
    .date()
    .optional()
    .describe('First day of the swing, where the note hands over a swing and not one shift'),
  by: words,
  at: stamp,
  acknowledgedBy: words.optional().describe('The incoming geologist, once the note was read'),
  acknowledgedAt: stamp.optional(),
});

/** Tables of a shift, and fields of its older tables, that a reader of format 1 or 2 doesn't know. */
export const SHIFT_SINCE_3 = {
  tables: ['queryAnswers', 'crewNotes', 'accepted'],
  fields: {
    shift: ['plannedEndAt'],
    activities: ['beside'],
    plods: ['crew', 'remark'],
    plodLines: ['startsAt', 'endsAt', 'wetFromMm', 'wetToMm', 'beside', 'was'],
    signOffs: ['role', 'exceptions', 'ownCents', 'plodCents', 'figures', 'times', 'seal'],
  },
} as const;

/** What is in each table of a shift. */
export const SHIFT_NOUNS = {
  shift: shiftHeader,
  activities: activity,
  bits: bit,
  waterStrikes: waterStrike,
  plods: plod,
  plodLines: plodLine,
  signOffs: signOff,
  queryAnswers: queryAnswer,
  crewNotes: crewNote,
  questions: HOLE_NOUNS.questions,
  accepted: HOLE_NOUNS.accepted,
} as const;

export type ShiftTable = keyof typeof SHIFT_NOUNS;
export type ShiftNoun<T extends ShiftTable> = Readonly<z.infer<(typeof SHIFT_NOUNS)[T]>>;

/** The things of one table with their ids, in the order they were made. The file was checked when it was read. */
export function shiftThings<T extends ShiftTable>(
  shift: Document,
  table: T,
): readonly (readonly [Id, ShiftNoun<T>])[] {
  return Object.entries(own(shift.tables, table) ?? {}) as unknown as readonly (readonly [
    Id,
    ShiftNoun<T>,
  ])[];
}

/** The header of a shift. Throws where a document has none: reading a file refuses such a one. */
export function shiftHeaderOf(shift: Document): ShiftHeader {
  const found = own(own(shift.tables, 'shift'), 'shift');
  if (found === undefined) throw new Error(`shift ${shift.id} has no header`);
  return found as unknown as ShiftHeader;
}

/** The lines of one plod, in the order they were taken down. */
export function linesOf(shift: Document, plodId: Id): readonly PlodLine[] {
  return shiftThings(shift, 'plodLines')
    .map(([, line]) => line)
    .filter((line) => line.plod === plodId);
}
