import * as z from 'zod';
import { conditionSchema } from '../../condition/condition.ts';
import { VALUE_KINDS } from '../../value/cell.ts';
import { CAUTION_KINDS } from '../logging-schema.ts';

/** True of a name that no plain object answers to by itself, as it does to `constructor`: it can be a member's name. */
const canNameMember = (name: string): boolean => !(name in {});
const KEPT = 'is a word that JavaScript keeps for itself';

const fieldName = z
  .string()
  .regex(/^[a-z][a-z0-9]{0,19}$/, 'should be 1 to 20 small letters and digits, a letter first')
  .refine(canNameMember, KEPT)
  .describe(
    "Name of a field: 1 to 20 small letters and digits, a letter first, no word that JavaScript keeps for itself (constructor). It types as name'…",
  );
/** Name of a list, a scale or an unlikely pair. */
export const partName = z
  .string()
  .regex(/^[a-z][a-zA-Z0-9]{0,29}$/, 'should be 1 to 30 letters and digits, a small letter first')
  .refine(canNameMember, KEPT)
  .describe(
    'Name of a list or scale: 1 to 30 letters and digits, a small letter first, no word that JavaScript keeps for itself (toString)',
  );

/** What a thing is called. */
export const label = z.string().min(1).max(60).describe('What it is called on the screen, in a few words');
const look = z.string().max(200).describe('What to look for in washed chips');
const strokes = {
  pair: z
    .string()
    .max(10)
    .nullable()
    .optional()
    .describe(
      'Two different small letters that type it anywhere in a line; null takes an inherited pair away',
    ),
  key: z
    .string()
    .max(10)
    .nullable()
    .optional()
    .describe('One small letter that types it if it is in the row above; null takes it away'),
};
const placed = {
  after: z.string().optional().describe('Comes right after this one; without it a new one comes last'),
  before: z.string().optional().describe('Stands right before this one'),
};

const caution = z
  .strictObject({
    kind: z.enum(CAUTION_KINDS).describe('What it is about; a void is a cavity in the ground'),
    words: z
      .string()
      .min(1)
      .max(200)
      .describe('Shown where the code is logged; plain words that leave the ruling to site procedures'),
  })
  .describe('What can hurt someone where this is seen, or who takes this reading');

/** Where the readings of an instrument stand in its CSV. */
const readingColumns = z.strictObject({
  from: z.string().min(1).max(60).optional().describe('Heading of the column of the top, in metres'),
  to: z.string().min(1).max(60).optional().describe('Heading of the column of the bottom, in metres'),
  depth: z.string().min(1).max(60).optional().describe('Heading of the column of a single depth, in metres'),
  reading: z.string().min(1).max(60).optional().describe('Heading of the column of the reading'),
  hole: z
    .string()
    .min(1)
    .max(60)
    .optional()
    .describe('Heading of the column of the hole, where a file has several'),
  unit: z.string().min(1).max(20).optional().describe('What the file counts in, like 1e-5 SI or ppm'),
});

/** Figures by the name of a level field, then by its level as a digit. */
const byLevel = (figure: z.ZodNumber) => z.record(fieldName, z.record(z.string().regex(/^[1-9]$/), figure));

/** One code as a file writes it: whole where it is new, only what changes where it is inherited. */
const codeEntry = z.strictObject({
  code: z.string().min(1).max(40).describe('The code as it is stored and handed over'),
  ...placed,
  label: label.optional(),
  look: look.optional(),
  ...strokes,
  cgi: z.string().nullable().optional().describe('Id of a term of the CGI (IUGS) vocabularies'),
  mineral: z.string().nullable().optional().describe('Mineral symbol after Warr (2021)'),
  densityGcm3: z
    .number()
    .min(0.5)
    .max(8)
    .nullable()
    .optional()
    .describe(
      'Density in g/cm³, for expected masses: of the fresh rock, which weathering reduces; of a code whose label names a weathered material (saprolite, laterite, soil, clay …) as it lies, which nothing reduces',
    ),
  densityAtLevels: byLevel(z.number().min(0.5).max(8))
    .nullable()
    .optional()
    .describe(
      'Density in g/cm³ where it is weathered, by field and level: { "weathering": { "4": 2.1 } }. It holds from that level on to the next one written',
    ),
  measure: z
    .strictObject({
      unit: z.string().min(1).max(20).describe('Its unit, like L/s'),
      min: z.number().describe('Smallest that is taken; 0 itself takes the event out'),
      max: z.number().describe('Largest that is taken'),
      decimals: z.int().min(0).max(3).describe('Digits after the point'),
    })
    .nullable()
    .optional()
    .describe('In a list of events: what is measured of it (ws2@44.6 is a water strike of 2 L/s at 44.6 m)'),
  caution: caution
    .nullable()
    .optional()
    .describe('What can hurt someone where this is seen; null takes it away'),
  noChips: z
    .literal(true)
    .nullable()
    .optional()
    .describe(
      'No chips come up where it is logged, as with a loss of return: nothing carries into the row or out of it',
    ),
  retiredSince: z.iso
    .date('should be a date like 2026-03-14')
    .nullable()
    .optional()
    .describe('Local date (YYYY-MM-DD) since when it can’t be used again; old logs still decode'),
  provisional: z.literal(true).nullable().optional().describe('Added on the rig, not agreed with camp yet'),
});
export type CodeEntry = z.infer<typeof codeEntry>;

/** One field as a file writes it: whole where it is new, only what changes where it is inherited. */
export const fieldEntry = z.strictObject({
  name: fieldName,
  ...placed,
  retired: z
    .literal(true)
    .optional()
    .describe('Takes an inherited field off the log sheet, as retiredSince does; old logs still decode'),
  retiredSince: z.iso
    .date('should be a date like 2026-03-14')
    .nullable()
    .optional()
    .describe(
      'Local date (YYYY-MM-DD) since when it is off the log sheet; old logs still decode. null puts it back',
    ),
  label: label.optional(),
  kind: z
    .enum(VALUE_KINDS)
    .optional()
    .describe(
      'code: one of a list; level: one of a scale; levels: several codes each with a level; percents: several codes each with a percent; ' +
        'codes: several codes without amounts (textures); events: things at a depth inside the row, with or without a measure (a water strike and its flow); ' +
        'percent; number; flag: there or not; text',
    ),
  required: z.boolean().optional().describe('A row can’t be saved without it'),
  onlyWhen: conditionSchema
    .nullable()
    .optional()
    .describe('Asked only of rows where this holds; it may ask fields above. null takes it away'),
  carry: z.boolean().optional().describe('Left unsaid, it carries from the last observed row above'),
  notAcross: z
    .array(fieldName)
    .min(1)
    .nullable()
    .optional()
    .describe(
      'Fields above this one. Where one of them is not as in the row above (another rock, another oxidation), this one does not carry: left unsaid it means what "unsaid" says. null takes it away',
    ),
  unsaid: z
    .enum(['none', 'not observed'])
    .optional()
    .describe('What leaving it unsaid means where nothing carries'),
  canBeNone: z.boolean().optional().describe('"Looked and saw none" is allowed'),
  ...strokes,
  list: partName.optional().describe('code, levels, percents, codes, events: the list of its codes'),
  second: z.boolean().optional().describe('code: a second code may be given with its share in percent'),
  third: z
    .boolean()
    .nullable()
    .optional()
    .describe('code with second: a third may stand beside the two with its share in percent'),
  qualifiers: z
    .array(
      z.strictObject({
        list: partName,
        of: z
          .array(z.string().min(1).max(40))
          .min(1)
          .optional()
          .describe("The field's codes that it can be said of; every one where this is left out"),
      }),
    )
    .min(1)
    .max(6)
    .nullable()
    .optional()
    .describe(
      'code, levels, percents, codes: lists that say more of one code (habits, styles of alteration, shades). Their pairs come right after it: cl2pv is chlorite 2, pervasive; gypa is grey, pale. Each a list of its own; or of a code field without a second the very list of the field, for a second hue right after the first. null takes them away',
    ),
  scale: partName.optional().describe('level, levels: the scale of its levels'),
  ladder: z
    .array(z.number())
    .min(1)
    .max(40)
    .optional()
    .describe('percents, percent: the steps that estimates are given in, in percent, rising, over 0 to 100'),
  traceCountsAsPercent: z
    .number()
    .min(0)
    .max(1)
    .nullable()
    .optional()
    .describe('percents, percent: a trace is allowed, and counts as this many percent'),
  sumLimitPercent: z.number().min(1).max(100).optional().describe('percents: largest sum, in percent'),
  unit: z.string().min(1).max(20).optional().describe('number: its unit'),
  min: z.number().optional().describe('number: smallest that is taken, in its unit'),
  max: z.number().optional().describe('number: largest that is taken, in its unit'),
  decimals: z.int().min(0).max(6).optional().describe('number: digits after the point'),
  column: z
    .boolean()
    .optional()
    .describe('number: a reading of an instrument, typed down the metres or taken from a CSV'),
  caution: caution
    .nullable()
    .optional()
    .describe(
      'What can hurt someone where anything is seen in it; of a number with column, who takes the reading. null takes it away',
    ),
  csv: readingColumns
    .nullable()
    .optional()
    .describe("number with column: where its readings stand in the instrument's CSV (offsider readings)"),
});
export type FieldEntry = z.infer<typeof fieldEntry>;

/** A scale as a file writes it, always whole. */
export const scaleEntry = z.strictObject({
  label,
  levels: z
    .array(
      z.strictObject({
        level: z.int().min(1).max(9).describe('The digit that types it, from 1 without gaps'),
        code: z.string().min(1).max(40).optional().describe('A code for it, unique in its scale'),
        label,
        look,
        caution: caution.optional(),
      }),
    )
    .min(1)
    .max(9)
    .describe('Every level in order. A scale that is inherited is replaced as a whole'),
});
export type ScaleEntry = z.infer<typeof scaleEntry>;

/** A list as a file writes it: its label, and codes that are new or changed. */
export const listEntry = z.strictObject({
  label: label.optional(),
  from: z
    .string()
    .min(1)
    .max(40)
    .optional()
    .describe(
      'Name of a style: the list starts with the codes of its list of this name, in place of what it inherits. What is written here changes them',
    ),
  formedBy: z.string().max(200).optional().describe('The rule that its codes are formed by'),
  densityShares: byLevel(z.number().min(0.2).max(1.2))
    .optional()
    .describe(
      'What is left of the density of a fresh rock, as a share of 1, by field and level: { "weathering": { "4": 0.82 } }; codes with densityAtLevels have their own',
    ),
  codes: z.array(codeEntry).max(2000).optional().describe('Codes that are new here, or changed'),
});
export type ListEntry = z.infer<typeof listEntry>;

/** What is seldom seen together, as a file writes it: whole where it is new, only what changes where it is inherited. */
export const unlikelyEntry = z.strictObject({
  name: partName,
  ...placed,
  retired: z.literal(true).optional().describe('Takes an inherited one away'),
  when: conditionSchema.optional().describe('Over the fields of one row'),
  words: z.string().min(1).max(100).optional().describe('What is odd about it, in a few words'),
});
export type UnlikelyEntry = z.infer<typeof unlikelyEntry>;
