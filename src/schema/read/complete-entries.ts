import * as z from 'zod';
import { conditionSchema } from '../../condition/condition.ts';
import type { Code, Field, Unlikely } from '../logging-schema.ts';

const text = z.string();
const base = {
  name: text,
  label: text,
  required: z.boolean(),
  onlyWhen: conditionSchema.optional(),
  carry: z.boolean(),
  notAcross: z.array(text).optional(),
  unsaid: z.enum(['none', 'not observed']),
  canBeNone: z.boolean(),
  caution: z.strictObject({ kind: text, words: text }).optional(),
};
const strokes = { pair: text.optional(), key: text.optional() };
const qualifiers = {
  qualifiers: z.array(z.strictObject({ list: text, of: z.array(text).optional() })).optional(),
};
const percentLimits = { ladder: z.array(z.number()), traceCountsAsPercent: z.number().optional() };
const CSV_MEMBERS = ['from', 'to', 'depth', 'reading', 'hole', 'unit'];
const kind = <K extends string>(name: K) => ({ kind: z.literal(name) });

/** A field with everything that its kind needs and nothing else: what an entry and all that it inherits must add up to. */
export const completeField = z.discriminatedUnion('kind', [
  z.strictObject({
    ...kind('code'),
    ...base,
    ...qualifiers,
    list: text,
    second: z.boolean(),
    third: z.boolean().optional(),
  }),
  z.strictObject({ ...kind('level'), ...base, ...strokes, scale: text }),
  z.strictObject({ ...kind('levels'), ...base, ...qualifiers, list: text, scale: text }),
  z.strictObject({
    ...kind('percents'),
    ...base,
    ...qualifiers,
    ...percentLimits,
    list: text,
    sumLimitPercent: z.number(),
  }),
  z.strictObject({ ...kind('codes'), ...base, ...qualifiers, list: text }),
  z.strictObject({ ...kind('events'), ...base, list: text }),
  z.strictObject({ ...kind('percent'), ...base, ...strokes, ...percentLimits }),
  z.strictObject({
    ...kind('number'),
    ...base,
    unit: text,
    min: z.number(),
    max: z.number(),
    decimals: z.number(),
    column: z.boolean(),
    csv: z.strictObject(Object.fromEntries(CSV_MEMBERS.map((name) => [name, text.optional()]))).optional(),
  }),
  z.strictObject({ ...kind('flag'), ...base, ...strokes }),
  z.strictObject({ ...kind('text'), ...base }),
]) as unknown as z.ZodType<Field>;

/** An unlikely pair with everything that it needs. */
export const completeUnlikely = z.strictObject({
  name: text,
  when: conditionSchema,
  words: text,
}) as unknown as z.ZodType<Unlikely>;

/** A code with everything that it needs. */
export const completeCode = z.looseObject({
  code: text,
  label: text,
  look: text,
}) as unknown as z.ZodType<Code>;
