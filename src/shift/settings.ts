import * as z from 'zod';
import { isDay } from '../quantity/stamp.ts';
import { CHARGE_CLASSES, SHIFT_NAMES } from './charge-class.ts';

const code = z
  .string()
  .regex(/^[a-z][a-z0-9-]{0,19}$/, 'should be 1 to 20 small letters, digits and hyphens, a letter first');
const words = z.string().min(1).max(200);
const clock = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'should be a time of day, 00:00 to 23:59, like 06:00')
  .describe('Local time of day, 00:00 to 23:59, like 06:00');
const day = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'should be a date like 2026-03-17')
  .refine(isDay, 'is not in the calendar')
  .describe('A date in the calendar, like 2026-03-17');
const centsEach = z.int().min(0).max(1_000_000_000);
const minutes = z.int().min(0).max(1440);

/** One shift of the day. A night shift ends on the next morning: its end is before its start on the clock. */
const shiftTimes = z.strictObject({
  name: z.enum(SHIFT_NAMES).describe('Which shift it is'),
  startsAt: clock,
  endsAt: clock,
});

/** One thing that a rig can be doing. */
const activityKind = z.strictObject({
  code: code.describe('Lower-case letters, digits and hyphens, a letter first; unique in the list'),
  label: words.describe('What it is called on the screen and in the record'),
  charge: z.enum(CHARGE_CLASSES).describe('What it is charged by'),
  key: z
    .string()
    .regex(/^[a-z0-9]$/, 'should be one small letter or digit')
    .describe('One lower-case letter or digit that picks it; unique in the list'),
});
export type ActivityKind = Readonly<z.infer<typeof activityKind>>;

const metreRates = z
  .array(
    z.strictObject({
      toM: z
        .number()
        .gt(0)
        .max(5000)
        .optional()
        .describe('Foot of the band from surface, in metres; none for the last'),
      centsPerM: centsEach.describe('Cents a metre within the band'),
    }),
  )
  .min(1);

/** What the contract pays. Rates are whole cents; metres are from surface, also after a re-entry. */
const contractSettings = z.strictObject({
  currency: words.describe('Name or sign of the currency, as shown in headings'),
  rounding: z
    .enum(['half-up', 'half-even', 'down'])
    .describe('How a fraction of a cent is rounded, line by line; half-up is away from zero'),
  metreRates: metreRates.describe(
    'Rate by depth band, from the top down; each band starts where the one above ends, the last one has no bottom',
  ),
  bitSizes: z
    .array(
      z.strictObject({
        toMm: z.number().min(50).max(500).describe('Largest gauge that these rates are for, in millimetres'),
        metreRates: metreRates.describe('Rate by depth band for this bit, from the top down'),
      }),
    )
    .optional()
    .describe(
      'Rates of their own for smaller bits, the smallest first; a larger bit, or one not measured, has metreRates',
    ),
  notPayable: z
    .array(
      z.strictObject({
        hole: words.describe('Permanent id of the hole'),
        fromM: z.number().min(0).max(5000).describe('Top of the metres, from surface'),
        toM: z.number().gt(0).max(5000).describe('Bottom of the metres, from surface'),
        why: words.describe('Why, as it was agreed'),
      }),
    )
    .optional()
    .describe('Metres that were drilled and are not paid, as of a redrill at the driller’s fault'),
  concurrent: z
    .array(
      z.strictObject({
        item: words.describe('As it is recorded: booster'),
        centsPerHour: centsEach.describe('Cents an hour'),
      }),
    )
    .optional()
    .describe(
      'Paid by the hour beside whatever the rig does, as a booster or an auxiliary compressor; each item once',
    ),
  hourStep: z
    .strictObject({
      minutes: z.int().min(1).max(60).describe('Hours are counted in steps of so many minutes'),
      rounding: z
        .enum(['up', 'nearest', 'down'])
        .describe('What to do with hours between two steps; nearest rounds a half up'),
    })
    .optional()
    .describe('Steps that hours are counted in, line by line; to the minute where none are given'),
  taxPercent: z
    .number()
    .min(0)
    .max(100)
    .optional()
    .describe(
      'Tax on the whole bill, as its own line, in percent: counted once, on everything before it, and rounded once as rounding says',
    ),
  activeHourlyCents: centsEach.describe('Cents an hour'),
  standbyHourlyCents: centsEach.describe('Cents an hour'),
  hourlyRates: z
    .array(
      z.strictObject({
        activity: code.describe('Code of the activity'),
        centsPerHour: centsEach.describe('Cents an hour'),
      }),
    )
    .optional()
    .describe('Activities by the hour that have a rate of their own, as fishing or travel may; each once'),
  wetCentsPerM: centsEach.optional().describe('Surcharge for a wet metre, in cents'),
  lumpSums: z
    .array(
      z.strictObject({
        activity: code.describe('Code of the activity'),
        cents: centsEach.describe('Cents a hole'),
      }),
    )
    .optional()
    .describe('Paid once a hole for an activity that is charged as a lump sum; each such activity has one'),
  shotCents: centsEach.optional().describe('Paid for each survey shot, in cents'),
  freeTime: z
    .array(
      z.strictObject({
        activity: code.describe('Code of the activity'),
        freeMinutes: minutes.describe(
          'Minutes a hole and shift without charge; a line without a hole counts with the one next to it, and a move begun in the shift before has them once',
        ),
      }),
    )
    .optional()
    .describe('Activities charged by the hour only past some free time, as a move often is; each once'),
  consumables: z
    .array(
      z.strictObject({
        item: words.describe('What it is, as the plod names it'),
        costCents: centsEach.describe('Cost of one, in cents'),
        plusPercent: z.number().min(0).max(100).describe('Added to the cost, in percent'),
      }),
    )
    .optional()
    .describe('Consumables paid at cost plus; each item once'),
  minimumShiftCents: centsEach.optional().describe('Least paid for a shift, consumables apart, in cents'),
  minimumHoleCents: centsEach.optional().describe('Least paid for the metres of a finished hole, in cents'),
});
export type ContractSettings = Readonly<z.infer<typeof contractSettings>>;

/** How far a plod may be off the own record before it is queried: a difference up to and at the figure passes. */
const toleranceSettings = z.strictObject({
  minutes: minutes.describe('By charge class, in minutes'),
  metresM: z.number().min(0).max(100).describe('By hole, in metres'),
  shots: z.int().min(0).max(100).describe('By hole'),
  consumables: z.int().min(0).max(1000).describe('By item'),
  cents: centsEach.describe('By line of the bill, in cents'),
});

/** How a driller's CSV is read: the heading of each column that it has, and the sheet's words for activities. */
const plodColumns = z.strictObject({
  date: words
    .optional()
    .describe('Heading of the date on which the shift began, where one CSV holds several shifts'),
  dates: z
    .enum(['d/m/y', 'm/d/y'])
    .optional()
    .describe(
      'How the CSV writes a date; 2026-03-14 is read always, one with two readings only as said here',
    ),
  shift: words.optional().describe('Heading of day or night, where two shifts begin on one date'),
  rig: words.optional().describe('Heading of the rig, where one CSV holds several'),
  sheet: words.optional().describe('Heading of the number of the sheet, where each shift has its own'),
  from: words.optional().describe('Heading of the time a line started'),
  to: words.optional().describe('Heading of the time it ended'),
  hours: words.optional().describe('Heading of hours, where there are no times: 1.5 or 1:30'),
  activity: words.describe('Heading of the activity'),
  hole: words.optional().describe('Heading of the hole'),
  metresFrom: words.optional().describe('Heading of the top of the metres'),
  metresTo: words.optional().describe('Heading of the bottom of the metres'),
  wet: words.optional().describe('Heading of wet metres: yes for all of its line, or 60-66'),
  shots: words.optional().describe('Heading of survey shots'),
  used: words.optional().describe('Heading of consumables: 1 hammer bit, 2 subs'),
  remark: words.optional().describe('Heading of remarks'),
  activities: z
    .array(
      z.strictObject({
        written: words.describe('As the sheet writes it'),
        activity: code.describe('Code of the activity here'),
      }),
    )
    .optional()
    .describe('Words of the sheet for activities that are not called as here'),
});

/** The shift part of project.json. Written by hand: metres in metres, money in cents, times on the local clock. */
export const shiftSettings = z.strictObject({
  shifts: z.array(shiftTimes).min(1).max(2).describe('Shifts of a day; two may touch, not overlap'),
  activities: z.array(activityKind).min(1).describe('What the rig can be doing; each code and key once'),
  contract: contractSettings.describe('What the contract pays, in whole cents'),
  contracts: z
    .array(
      z.strictObject({
        rig: words.optional().describe('The rig that it is for; every rig if left out'),
        from: day.describe('First day, a date in the calendar: the one that a shift carries'),
        to: day.optional().describe('Last day, a date in the calendar; none while it holds'),
        terms: contractSettings.describe('What is paid in that time'),
      }),
    )
    .optional()
    .describe(
      'Terms with their dates, for a rig or for all: a changed rate never re-prices a day before it. A shift that none of them is for has contract',
    ),
  tolerances: toleranceSettings.describe('How far a plod may be off the own record before it is queried'),
  plodColumns: plodColumns.optional().describe('How a plod that comes as a CSV is read'),
});
export type ShiftSettings = Readonly<z.infer<typeof shiftSettings>>;
