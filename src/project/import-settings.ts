import * as z from 'zod';
import { TOOL_CLASSES } from '../hole/direction.ts';
import { COLLAR_RANKS } from '../hole/header.ts';
import { NORTHS } from '../quantity/azimuth.ts';

const heading = z.string().min(1).max(200).describe('Heading of the column, as it is in the file');
const texts = z.array(z.string().max(200)).describe('Cells that mean it, as they are written');

/** What cells of a column stand for where they hold no value. An empty one was not observed, unless it is named here. */
const absences = {
  none: texts.optional().describe('Cells that mean: looked, none seen'),
  notObserved: texts
    .optional()
    .describe('Cells that mean: not observed; an empty cell does, unless none names it'),
};

/** How one field of the log is read: from one column, or from a column for each of its codes. */
const fieldMapping = z.union([
  z.strictObject({
    column: heading,
    second: heading.optional().describe('Column of the second code'),
    secondPercent: heading.optional().describe('Column of its share of the whole, in percent'),
    codes: z
      .record(z.string().max(200), z.string().min(1).max(40))
      .optional()
      .describe(
        'What each cell means: a code of the field’s list, or a level of its scale; one that is not here is taken as it is',
      ),
    trace: texts.optional().describe('Cells that mean a trace'),
    ...absences,
  }),
  z.strictObject({
    each: z
      .array(
        z.strictObject({
          column: heading,
          code: z.string().min(1).max(40).describe('The code whose level or percent it holds'),
        }),
      )
      .min(1)
      .describe('A column for each code of a field that holds several, with its level or percent'),
    trace: texts.optional().describe('Cells that mean a trace'),
    ...absences,
  }),
]);
export type FieldMapping = Readonly<z.infer<typeof fieldMapping>>;

/** How tables of holes that others logged are read: part of project.json, kept so that the next file is read the same way. */
export const importSettings = z.strictObject({
  collars: z
    .strictObject({
      hole: heading,
      easting: heading,
      northing: heading,
      elevation: heading,
      depth: heading.describe('Heading of the column of final depths'),
      rank: z.enum(COLLAR_RANKS).describe('How the positions were taken'),
    })
    .describe('The table of collars, one line a hole'),
  surveys: z
    .strictObject({
      hole: heading,
      depth: heading,
      dip: heading,
      azimuth: heading.optional(),
      north: z.enum(NORTHS).describe('The north that the azimuths are counted from'),
      tool: z.string().min(1).max(200).describe('Name of the tool'),
      toolClass: z.enum(TOOL_CLASSES).describe('How the tool finds its direction'),
      date: z.iso
        .date()
        .optional()
        .describe(
          'When it was read: the declination of magnetic azimuths is that of this day; the day of the import if it is left out',
        ),
    })
    .optional()
    .describe('The table of survey shots'),
  geology: z
    .strictObject({
      hole: heading,
      from: heading,
      to: heading,
      remark: heading.optional(),
      fields: z
        .record(z.string(), fieldMapping)
        .describe(
          'How each field of logging.json is read, by its name; of one that is not here nothing was observed',
        ),
    })
    .optional()
    .describe('The table of the log, one line an interval'),
});
export type ImportSettings = Readonly<z.infer<typeof importSettings>>;
