import { lengthMm } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { CHARGE_CLASSES } from '../../shift/charge-class.ts';
import { minutesByClass, spansOf, unrecordedMinutes } from '../../shift/current.ts';
import { geologistsOf } from '../../shift/geologists.ts';
import { ownRecord } from '../../shift/own-record.ts';
import { linesOf, type Plod, shiftHeaderOf, shiftThings } from '../../shift/shift.ts';
import { closed } from '../../shift/shift-end.ts';
import { isOurs, signaturesOn } from '../../shift/signed.ts';
import { date, depth, instant, integer, metresOf, number, optional, text, yesNo } from './column.ts';
import { HOLE } from './holes.ts';
import { defineTable, type Source, shiftsOf } from './table.ts';

const SHIFT = text('Id of the shift: rig, local date on which it started, day or night');
const NOT_ENDED = 'it goes on';

/** The shift with the end that is presumed where no one ended it: what every figure is counted from. */
function asCounted({ project, documents, now }: Source, shift: Document): Document {
  return closed(shift, { documents, shifts: project.shift.shifts, now });
}

/** Our own record of each shift. */
export const SHIFTS = defineTable({
  name: 'shifts',
  about:
    'Shifts by our own record: when, who, minutes by what they are charged as, metres drilled by the rods stamped in it.',
  key: ['shift'],
  columns: {
    shift: SHIFT,
    rig: text('Name of the rig'),
    date: date('Local date on which it started'),
    name: text('day or night'),
    started_at: instant('When it started'),
    ended_at: optional(instant('When it ended'), NOT_ENDED),
    end_presumed: yesNo('No one ended it: its planned end is taken'),
    geologist: text('Whoever began its record, then others who recorded in it, separated by semicolons'),
    crew: optional(text('Names of the crew, separated by semicolons'), 'not recorded'),
    metres_min: integer('Time charged by the metre', 'min'),
    active_hourly_min: integer('Time charged as active by the hour', 'min'),
    standby_hourly_min: integer('Time charged as standby by the hour', 'min'),
    no_charge_min: integer('Time without charge', 'min'),
    lump_sum_min: integer('Time paid by a lump sum', 'min'),
    unrecorded_min: integer('Time that no activity was recorded for', 'min'),
    drilled_m: number('Metres drilled', 'm'),
    shots: integer('Survey shots recorded'),
  },
  rows: (source) => shiftsOf(source).map((shift) => shiftRow(source, shift)),
});

function shiftRow(source: Source, recorded: Document) {
  const shift = asCounted(source, recorded);
  const header = shiftHeaderOf(shift);
  const minutes = minutesByClass(spansOf(shift, source.now));
  const holes = source.documents.filter(({ kind }) => kind === 'hole');
  const own = ownRecord(shift, holes, source.now);
  return {
    shift: shift.id,
    rig: header.rig,
    date: header.date,
    name: header.name,
    started_at: header.startsAt,
    ended_at: header.endedAt,
    end_presumed: shiftHeaderOf(recorded).endedAt === undefined && header.endedAt !== undefined,
    geologist: geologistsOf(shift, source.documents, source.project.settings.people, source.now).join('; '),
    crew: header.crew.length === 0 ? undefined : header.crew.join('; '),
    metres_min: minutes.metres,
    active_hourly_min: minutes['active hourly'],
    standby_hourly_min: minutes['standby hourly'],
    no_charge_min: minutes['no charge'],
    lump_sum_min: minutes['lump sum'],
    unrecorded_min: unrecordedMinutes(shift, source.now),
    drilled_m: own.metres.reduce((sum, each) => sum + lengthMm(each), 0) / 1000,
    shots: [...own.shots.values()].reduce((sum, each) => sum + each, 0),
  };
}

const NO_REMARK = 'no remark';
const NO_HOLE = 'not about one hole';

/** What the rig did. */
export const ACTIVITIES = defineTable({
  name: 'activities',
  about: 'What the rig did, by our own record, each until the next one began or it was ended.',
  key: ['shift', 'activity_id'],
  columns: {
    shift: SHIFT,
    activity_id: text('Permanent id of the entry'),
    started_at: instant('When it began'),
    until: instant('When it ended; of one that goes on, when these tables were made'),
    goes_on: yesNo('It goes on'),
    minutes: integer('How long, between full minutes of the clock', 'min'),
    activity: text('Code of the activity, as in project.json'),
    charge: text(`What it is charged as: ${CHARGE_CLASSES.join(', ')}`),
    hole: optional(HOLE, NO_HOLE),
    authorised_by: optional(text('Who authorised it'), 'no one is recorded'),
    beside: optional(text('What ran beside it and is paid by the hour, separated by semicolons'), 'nothing'),
    consumables: optional(text('Consumables used up, as hammer bit 1; foam 2'), 'none recorded'),
    remark: optional(text('Remark'), NO_REMARK),
  },
  rows: (source) =>
    shiftsOf(source).flatMap((shift) =>
      spansOf(asCounted(source, shift), source.now).map((span) => ({
        shift: shift.id,
        activity_id: span.id,
        started_at: span.startedAt,
        until: span.until,
        goes_on: span.current,
        minutes: span.minutes,
        activity: span.activity,
        charge: span.charge,
        hole: span.hole,
        authorised_by: span.authorisedBy,
        beside: joined(span.beside),
        consumables: usedWords(span.used),
        remark: span.remark,
      })),
    ),
});

function joined(words: readonly string[] | undefined): string | undefined {
  return words === undefined || words.length === 0 ? undefined : words.join('; ');
}

function usedWords(
  used: readonly { readonly item: string; readonly count: number }[] | undefined,
): string | undefined {
  return joined(used?.map(({ item, count }) => `${item} ${count}`));
}

/** The driller's sheets. */
export const PLODS = defineTable({
  name: 'plods',
  about: 'Plods: the driller’s sheet of a shift, and who signed it.',
  key: ['shift', 'plod'],
  columns: {
    shift: SHIFT,
    plod: text('Permanent id of the plod'),
    sheet: text('Number of the sheet'),
    received_at: instant('When it was received'),
    received_from: optional(text('Who handed it over'), 'not recorded'),
    crew: optional(text('Crew as the sheet names it, separated by semicolons'), 'not named on it'),
    lines: integer('Lines on it'),
    signed_by: optional(text('Who signed it last'), 'not signed'),
    signed_at: optional(instant('When that was'), 'not signed'),
    open_queries: optional(integer('Queries that were open when it was signed'), 'not signed'),
    remark: optional(text('Remark'), NO_REMARK),
  },
  rows: (source) =>
    shiftsOf(source).flatMap((shift) =>
      shiftThings(shift, 'plods').map(([id, plod]) => plodRow(shift, id, plod)),
    ),
});

function plodRow(shift: Document, id: string, plod: Plod) {
  const signed = signaturesOn(shift, id).findLast(isOurs);
  return {
    shift: shift.id,
    plod: id,
    sheet: plod.sheet,
    received_at: plod.receivedAt,
    received_from: plod.from,
    crew: joined(plod.crew),
    lines: linesOf(shift, id).length,
    signed_by: signed?.by,
    signed_at: signed?.at,
    open_queries: signed?.openQueries,
    remark: plod.remark,
  };
}

/** What the driller claims. */
export const PLOD_LINES = defineTable({
  name: 'plod_lines',
  about: 'Lines of the plods as the driller wrote them.',
  key: ['shift', 'plod', 'line'],
  columns: {
    shift: SHIFT,
    plod: text('Permanent id of the plod'),
    line: integer('Number of the line on its sheet, from 1'),
    activity: text('Code of the activity, as in project.json; as written where there is none'),
    minutes: integer('Time claimed', 'min'),
    starts_at: optional(instant('Start of the line'), 'the sheet has no times'),
    ends_at: optional(instant('End of the line'), 'the sheet has no times'),
    hole: optional(HOLE, NO_HOLE),
    from_m: optional(depth('Top of the metres claimed'), 'no metres are claimed'),
    to_m: optional(depth('Bottom of the metres claimed'), 'no metres are claimed'),
    wet_from_m: optional(depth('Top of the metres that the sheet calls wet'), 'none is called wet'),
    wet_to_m: optional(depth('Bottom of the metres that the sheet calls wet'), 'none is called wet'),
    shots: optional(integer('Survey shots claimed'), 'none claimed'),
    beside: optional(text('What ran beside it, separated by semicolons'), 'nothing'),
    consumables: optional(text('Consumables claimed, as hammer bit 1; foam 2'), 'none claimed'),
    remark: optional(text('Remark'), NO_REMARK),
  },
  rows: (source) =>
    shiftsOf(source).flatMap((shift) =>
      shiftThings(shift, 'plods').flatMap(([plod]) =>
        linesOf(shift, plod).map((line, index) => ({
          shift: shift.id,
          plod,
          line: index + 1,
          activity: line.activity,
          minutes: line.minutes,
          starts_at: line.startsAt,
          ends_at: line.endsAt,
          hole: line.hole,
          from_m: metresOf(line.fromMm),
          to_m: metresOf(line.toMm),
          wet_from_m: metresOf(line.wetFromMm),
          wet_to_m: metresOf(line.wetToMm),
          shots: line.shots,
          beside: joined(line.beside),
          consumables: usedWords(line.used),
          remark: line.remark,
        })),
      ),
    ),
});
