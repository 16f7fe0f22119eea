import * as z from 'zod';
import type { Depth } from '../quantity/depth.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Cell } from '../value/cell.ts';
import type { Row } from '../value/row.ts';
import { depthMm, stamp, words } from './parts.ts';

const code = z.string().min(1).max(40);
const percent = z.number().min(0).max(100);
const amount = z.union([percent, z.literal('trace')]);
const filled = (record: object): boolean => Object.keys(record).length > 0;
const share = z.strictObject({ code, percent: percent.describe('Share, in percent') });
const qualified = z
  .record(
    code,
    z
      .record(z.string().min(1).max(40), code)
      .refine(filled, 'must name a list')
      .describe('Code by list; must name a list'),
  )
  .optional()
  .describe('What more is said of a code, by code and by the list it is from (the legend has both)');

/** A cell as it is in a file; which member it may have, the field's kind says (the legend). */
const cell = z.union([
  z.strictObject({
    absent: z.enum(['none', 'not observed']).describe('Looked and saw none, or not observed'),
  }),
  z.strictObject({
    code,
    second: share.optional(),
    third: share.optional(),
    qualified,
  }),
  z.strictObject({ level: z.int().min(1).describe('Level on the scale of the field') }),
  z.strictObject({
    levels: z
      .record(code, z.int().min(1))
      .refine(filled, 'must name a code')
      .describe('Level by code; must name a code'),
    qualified,
  }),
  z.strictObject({
    percents: z
      .record(code, amount)
      .refine(filled, 'must name a code')
      .describe('Percent by code; must name a code'),
    qualified,
  }),
  z.strictObject({
    codes: z
      .record(code, z.literal(true))
      .refine(filled, 'must name a code')
      .describe('Several codes without amounts; must name a code'),
    qualified,
  }),
  z.strictObject({
    events: z
      .record(
        code,
        z.strictObject({
          atMm: depthMm.optional().describe('Where it is, inside the row; missing where no one knows'),
          number: z
            .number()
            .optional()
            .describe('What was measured of it, in the unit that the legend gives the code'),
        }),
      )
      .refine(filled, 'must name a code')
      .describe('Events at a point, by code; must name a code'),
  }),
  z.strictObject({ percent: amount }),
  z.strictObject({ number: z.number().describe('In the unit that the legend gives the field') }),
  z.strictObject({ flag: z.literal(true) }),
  z.strictObject({ text: words }),
]) as unknown as z.ZodType<Cell>;

/** A logged row: table `rows`. */
export const row = z.strictObject({
  fromMm: depthMm,
  toMm: depthMm,
  cells: z
    .record(z.string().min(1).max(40), cell)
    .describe('What was observed, by field; every field that applies is here'),
  noReturn: z.literal(true).optional().describe('No chips came up: not observed, never barren'),
  carried: z
    .array(z.string())
    .optional()
    .describe('Fields left unsaid that carried from the last observed row above'),
  repeat: z.literal(true).optional().describe('Said to be the same as the row above'),
  asked: z.array(z.string()).optional().describe("Asked and not settled yet: termination rules can't tell"),
  askedOf: z
    .array(z.string())
    .optional()
    .describe('Fields that the open questions are about; missing where one is about the whole row'),
  remark: words.optional(),
}) as unknown as z.ZodType<Row>;

/**
 * An event at a depth that no logged row can hold yet: the driller hears water at 54 m while the log is at 46. Table `waitingEvents`. It
 * goes into its row when that is logged.
 */
export const waitingEvent = z.strictObject({
  field: z.string().min(1).max(40).describe('The field of events that it is of'),
  code,
  atMm: depthMm,
  number: z
    .number()
    .optional()
    .describe('What was measured of it, in the unit that the legend gives the code'),
  at: stamp,
  by: words.describe('Who recorded it'),
}) as unknown as z.ZodType<WaitingEvent>;

export type WaitingEvent = {
  readonly field: string;
  readonly code: string;
  readonly atMm: Depth;
  readonly number?: number;
  readonly at: Stamp;
  readonly by: string;
};
