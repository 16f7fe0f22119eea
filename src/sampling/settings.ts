import * as z from 'zod';
import { conditionSchema } from '../condition/condition.ts';
import { CHECK_DIGITS } from './numbers/check-digit.ts';

const words = z.string().min(1).max(200);
const count = z.int().min(0).max(1_000_000);

/** Kinds of control that a scheme can reserve a number for. */
export const CONTROL_KINDS = ['standard', 'blank', 'field duplicate'] as const;
export type ControlKind = (typeof CONTROL_KINDS)[number];

const slotPlace = {
  every: z.int().min(2).max(1000).describe('The slot comes back every so many numbers'),
  at: z.int().min(0).max(999).describe('Where: numbers whose serial leaves this when divided by `every`'),
};

/** One slot of the control scheme: numbers reserved, so that bags can be numbered the day before. */
const slot = z.union([
  z
    .strictObject({ ...slotPlace, kind: z.enum(CONTROL_KINDS).describe('What is there') })
    .describe('The kind is fixed'),
  z
    .strictObject({
      ...slotPlace,
      oneOf: z.array(z.enum(CONTROL_KINDS)).min(2).describe('Kinds that can be chosen while drilling'),
      usually: z.enum(CONTROL_KINDS).describe('The kind if no one chooses; one of `oneOf`'),
    })
    .describe('The kind is chosen late, where the geology asks for it'),
]);

const certifiedValue = z.strictObject({
  analyte: words.describe('As the laboratory names it in its results'),
  value: z.number().describe('Certified value, in the unit of the results'),
  sd: z.number().positive().describe('Certified standard deviation, in the same unit'),
});

const standard = z.strictObject({
  lot: words.describe('Lot of the certified standard; a name of the project, not on the bag'),
  sachets: count.describe('Sachets that came to site, used ones included'),
  retired: z.literal(true).optional().describe('Not put out any more'),
  certified: z.array(certifiedValue).optional().describe('Its certified values, by analyte'),
});

const blank = z.strictObject({
  name: words.describe('What the blank is called on site'),
  type: z.enum(['coarse', 'pulp']).describe('Coarse goes through the crusher, pulp does not'),
  bags: count.describe('Blanks that came to site, used ones included'),
  retired: z.literal(true).optional().describe('Not put out any more'),
  limits: z
    .array(
      z.strictObject({
        analyte: words.describe('As the laboratory names it in its results'),
        limit: z.number().min(0).describe('The most it may show, in the unit of the results'),
      }),
    )
    .optional()
    .describe('What a blank may show at most, in the unit of the results'),
});

const numbers = z.strictObject({
  prefixes: z
    .array(
      z
        .string()
        .regex(/^[A-Z0-9][A-Z0-9-]{0,11}$/, 'should be 1 to 12 capitals, digits and hyphens')
        .describe('Capitals, digits and hyphens'),
    )
    .min(1)
    .describe('Prefixes of the bag numbers; none of them begins with another'),
  digits: z.int().min(3).max(9).describe('Digits after the prefix, check digit not counted'),
  checkDigit: z.enum(CHECK_DIGITS).optional().describe('Kind of check digit after them, if there is one'),
  blocks: z
    .array(
      z.strictObject({
        rig: words.describe('Name of the rig'),
        first: words.describe('First number of the block, with its prefix'),
        last: words.describe('Last number of the block, with its prefix'),
      }),
    )
    .describe('Which numbers belong to which rig'),
  leftOver: z
    .enum(['go on to the next hole', 'stay with their hole'])
    .optional()
    .describe(
      'What becomes of labels that a hole did not use; left out, they go on to the next hole of the rig',
    ),
});

const controls = z.strictObject({
  slots: z.array(slot).describe('Which numbers are controls, for good'),
  standards: z.array(standard).describe('Certified standards in stock'),
  blanks: z.array(blank).describe('Blanks in stock'),
  duplicates: z.enum(['second chute', 'spear']).describe('How field duplicates are usually taken'),
  rotationSeed: words.describe(
    'Any words: they set the order of the standards, so keep them from the laboratory',
  ),
  onDemand: z
    .array(
      z.strictObject({
        when: conditionSchema.describe('Asked of the logged rows'),
        kind: z.enum(CONTROL_KINDS).describe('The control that is proposed'),
        why: words.describe('Said where the control is proposed'),
      }),
    )
    .describe('Controls proposed beside the slots, where the log asks for one'),
  wanted: z
    .strictObject({
      standardPercent: z.number().min(0).max(50).optional().describe('Standards, % of the primaries'),
      blankPercent: z.number().min(0).max(50).optional().describe('Blanks, % of the primaries'),
      duplicatePercent: z
        .number()
        .min(0)
        .max(100)
        .optional()
        .describe('Field duplicates, % of the primaries'),
    })
    .describe('Rates wanted, controls in a hundred primary samples'),
});

const columns = z.strictObject({
  sample: words.describe('Heading of the column with the sample numbers'),
  analytes: z
    .array(
      z.strictObject({
        column: words.describe('Heading of the column'),
        analyte: words.describe('What it measures: Au, As'),
        unit: words.describe('Unit that the laboratory reports it in: ppm, ppb, g/t, % …'),
        countedIn: words
          .optional()
          .describe(
            'Unit that the project counts it in, where that is another: certified values, limits, charts',
          ),
      }),
    )
    .min(1)
    .describe(
      'Which column holds which analyte; of two columns of one analyte the later that is filled counts',
    ),
  belowDetection: z
    .enum(['half the limit', 'the limit', 'zero'])
    .describe('What a result under its detection limit (<0.01) counts as in sums and charts'),
  mass: z
    .strictObject({
      column: words.describe('Heading of the column'),
      unit: z.enum(['kg', 'g']).describe('What it counts in'),
    })
    .optional()
    .describe('Column with the mass of the calico as received, where the laboratory weighs them'),
  minusIsBelow: z
    .literal(true)
    .optional()
    .describe('The laboratory writes a result under its detection limit with a minus: -0.01'),
  ownSamples: z
    .array(
      z.strictObject({
        is: z
          .enum(['repeat', 'duplicate', 'standard', 'blank'])
          .describe(
            'What it is: a repeat reads the same pulp again, a duplicate is a second split of the sample',
          ),
        column: words
          .optional()
          .describe('Heading of the column that says so, where it is not the one with the sample numbers'),
        at: z.enum(['start', 'end', 'whole']).describe('Where in the cell the mark is'),
        text: words.describe(
          'The mark as the laboratory writes it: RPT, DUP, BLANK, the name of its standard',
        ),
        lot: words.optional().describe('What its standard is called, where that is not the mark'),
        certified: z.array(certifiedValue).optional().describe('Values of its standard, by analyte'),
        limits: z
          .array(
            z.strictObject({
              analyte: words.describe('As the laboratory names it in its results'),
              limit: z.number().min(0).describe('The most it may show, in the unit of the results'),
            }),
          )
          .optional()
          .describe('What its blank may show at most'),
        withinPercent: z
          .number()
          .min(1)
          .max(200)
          .optional()
          .describe('How far a repeat or a duplicate may be from the first result, in % of their mean'),
      }),
    )
    .optional()
    .describe("The laboratory's own repeats, duplicates, standards and blanks among the results"),
  notReported: z
    .array(words)
    .optional()
    .describe('What the laboratory writes where it reports nothing: LNR, NSS, IS'),
});

const resplit = z.strictObject({
  analyte: words.describe('The analyte that asks for it'),
  atLeast: z.number().positive().describe('A composite from this on is split, in the unit it is counted in'),
  neighbours: z.int().min(0).max(10).describe('Composites above and below that are split too'),
  pilesPerRow: z.int().min(1).max(200).describe('Piles or bags in a row on the ground'),
});

/** The sampling part of project.json: written by hand, in metres and kilograms. */
export const samplingSettings = z.strictObject({
  numbers: numbers.describe('What bag numbers look like, and whose they are'),
  sampled: z
    .strictObject({
      rank: z.enum(['metre', 'composite']).describe('A single metre, or a composite of several'),
      lengthM: z.number().min(0.1).max(20).describe('Length of one sample, in metres'),
    })
    .describe('What one numbered bag off the rig holds'),
  controls: controls.describe('Standards, blanks and field duplicates: the scheme and the stock'),
  split: z
    .strictObject({
      targetKg: z.number().min(0.1).max(30).describe('Mass that a calico should have, in kilograms'),
      tolerancePercent: z.number().min(1).max(100).describe('How far off the target it may be, in %'),
    })
    .describe('The calico off the splitter'),
  recovery: z
    .strictObject({
      lowPercent: z.number().min(0).max(100).describe('Recovery under this is flagged, in %'),
      highPercent: z.number().min(100).max(200).describe('Recovery over this is flagged, in %'),
    })
    .describe('Recovery that is worth a look'),
  hygiene: z
    .strictObject({
      everyRods: z
        .int()
        .min(1)
        .max(50)
        .describe('Cyclone, splitter and hole are looked at once in so many rods; rods overdue are found'),
    })
    .optional()
    .describe('Whether hygiene is recorded; left out, only what is recorded is looked at'),
  trays: z
    .strictObject({
      compartments: z.int().min(1).max(100).describe('Compartments of a chip tray'),
      metresPerCompartment: z.number().min(0.1).max(20).describe('Metres in one compartment'),
    })
    .describe('Chip trays'),
  bagsPerRow: z
    .int()
    .min(1)
    .max(200)
    .optional()
    .describe('Bags in a row on the ground, as they are laid out from the top of the hole on'),
  sackBags: z.int().min(1).max(50).describe('Calicos in a sack'),
  laboratory: words.optional().describe('Where samples go, if left out'),
  results: columns.optional().describe("How the laboratory's CSV is read"),
  resplit: resplit.optional().describe('Which composites ask for single metres, once results are back'),
});

/** The sampling part of project.json as it is in the file. */
export type SamplingSettings = z.infer<typeof samplingSettings>;
