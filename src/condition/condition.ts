import { z } from 'zod';

const named = {
  field: z
    .string()
    .min(1)
    .describe('Name of a field: of the logging schema, or of what the place of use lends (said there)'),
  of: z
    .string()
    .min(1)
    .optional()
    .describe('One code of a field that holds several: its own level or percent'),
};

/** What a comparison can ask of a field. Exactly one of these stands in it. */
const questions = {
  is: z.string().describe('The code, level code or text is this one'),
  isOneOf: z.array(z.string()).min(1).describe('The code, level code or text is one of these'),
  atLeast: z.number().describe('Level, percent or number ≥ this'),
  moreThan: z.number().describe('Level, percent or number > this'),
  atMost: z.number().describe('Level, percent or number ≤ this'),
  lessThan: z.number().describe('Level, percent or number < this'),
  seen: z.boolean().describe('true: something was seen. false: looked, and none was seen'),
} as const;

export const COMPARISONS = ['is', 'isOneOf', 'atLeast', 'moreThan', 'atMost', 'lessThan', 'seen'] as const;
export type Comparison = (typeof COMPARISONS)[number];

const comparison = z.union(
  COMPARISONS.map((name) => z.strictObject({ ...named, [name]: questions[name] })) as unknown as readonly [
    z.ZodType<FieldCondition>,
    z.ZodType<FieldCondition>,
  ],
);

/** A comparison over one field. */
export type FieldCondition = { readonly field: string; readonly of?: string } & (
  | { readonly is: string }
  | { readonly isOneOf: readonly string[] }
  | { readonly atLeast: number }
  | { readonly moreThan: number }
  | { readonly atMost: number }
  | { readonly lessThan: number }
  | { readonly seen: boolean }
);

/** A condition over the fields of a row: data, never a program. */
export type Condition =
  | FieldCondition
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition };

/** The condition as it stands in a file. */
export const conditionSchema: z.ZodType<Condition> = z.lazy(() =>
  z.union([
    comparison,
    z.strictObject({ all: z.array(conditionSchema).min(1).describe('Every one of these holds') }),
    z.strictObject({ any: z.array(conditionSchema).min(1).describe('At least one of these holds') }),
    z.strictObject({ not: conditionSchema.describe('This does not hold') }),
  ]),
);

/** Which comparison a condition over a field makes. */
export function comparisonOf(condition: FieldCondition): Comparison {
  const name = COMPARISONS.find((each) => Object.hasOwn(condition, each));
  if (name === undefined) throw new Error(`a condition over ${condition.field} compares nothing`);
  return name;
}

/** Every comparison in a condition, in the order it is written. */
export function fieldConditions(condition: Condition): readonly FieldCondition[] {
  if ('all' in condition) return condition.all.flatMap(fieldConditions);
  if ('any' in condition) return condition.any.flatMap(fieldConditions);
  if ('not' in condition) return fieldConditions(condition.not);
  return [condition];
}
