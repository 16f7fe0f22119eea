import * as z from 'zod';

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

const COMPARISONS = ['is', 'isOneOf', 'atLeast', 'moreThan', 'atMost', 'lessThan', 'seen'] as const;
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

const GROUPS = ['all', 'any', 'not'] as const;

/** The condition as it is in a file. */
export const conditionSchema: z.ZodType<Condition> = z.lazy(() =>
  z.union(
    [
      comparison,
      z.strictObject({ all: z.array(conditionSchema).min(1).describe('Every one of these holds') }),
      z.strictObject({ any: z.array(conditionSchema).min(1).describe('At least one of these holds') }),
      z.strictObject({ not: conditionSchema.describe('This does not hold') }),
    ],
    { error: ({ input }) => muddleIn(input) },
  ),
);

/** What is wrong with something that is several conditions in one, or none; undefined where it is one that is only misshapen. */
function muddleIn(input: unknown): string | undefined {
  if (input === null || typeof input !== 'object' || Array.isArray(input)) return undefined;
  const members = Object.keys(input);
  const compared = COMPARISONS.filter((name) => members.includes(name));
  const groups = GROUPS.filter((name) => members.includes(name));
  const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(' and ');
  if (groups.length + compared.length > 1)
    return `says ${quoted([...groups, ...compared])}: each is a condition of its own, joined by "all" or "any"`;
  if (groups.length + compared.length === 1) return undefined;
  const others = members.filter((name) => name !== 'field' && name !== 'of');
  const said = others.length === 0 ? 'compares nothing' : `says ${quoted(others)}, which compares nothing`;
  return `${said}: it can say ${COMPARISONS.join(', ')}, or ${GROUPS.join(', ')}`;
}

/** Which comparison a condition over a field makes. */
export function comparisonOf(condition: FieldCondition): Comparison {
  const name = COMPARISONS.find((each) => Object.hasOwn(condition, each));
  if (name === undefined) throw new Error(`a condition over ${condition.field} compares nothing`);
  return name;
}

/** A comparison and where it is in its condition: names of members and places in lists, from the top. */
export type PlacedComparison = {
  readonly comparison: FieldCondition;
  readonly path: readonly (string | number)[];
};

/** Every comparison in a condition, in the order it is written. */
export function fieldConditions(condition: Condition): readonly FieldCondition[] {
  return placedComparisons(condition).map((each) => each.comparison);
}

/** The same, each with where it is. */
export function placedComparisons(condition: Condition): readonly PlacedComparison[] {
  if ('all' in condition) return condition.all.flatMap((each, index) => under(each, ['all', index]));
  if ('any' in condition) return condition.any.flatMap((each, index) => under(each, ['any', index]));
  if ('not' in condition) return under(condition.not, ['not']);
  return [{ comparison: condition, path: [] }];
}

function under(condition: Condition, at: readonly (string | number)[]): readonly PlacedComparison[] {
  return placedComparisons(condition).map(({ comparison: found, path }) => ({
    comparison: found,
    path: [...at, ...path],
  }));
}
