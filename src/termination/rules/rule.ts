import * as z from 'zod';
import { VERDICTS } from '../../hole/ending.ts';
import { CONDITIONS } from '../conditions/index.ts';

/** A condition of one kind. */
export type Leaf = z.infer<(typeof CONDITIONS)[number]['schema']>;

/** What a rule asks: one of the kinds of condition, or several joined by all, any and not. */
export type RuleCondition =
  | Leaf
  | { readonly all: readonly RuleCondition[] }
  | { readonly any: readonly RuleCondition[] }
  | { readonly not: RuleCondition };

/** A rule's condition as it is in a file, in metres. */
export const ruleConditionSchema: z.ZodType<RuleCondition> = z.lazy(() =>
  z.union([
    ...(CONDITIONS.map((kind) => kind.schema) as unknown as readonly [z.ZodType<Leaf>]),
    z.strictObject({ all: z.array(ruleConditionSchema).min(1).describe('Every one of these holds') }),
    z.strictObject({ any: z.array(ruleConditionSchema).min(1).describe('At least one of these holds') }),
    z.strictObject({ not: ruleConditionSchema.describe('This does not hold') }),
  ]),
);

/** A termination rule as it is in project.json. */
export const ruleSchema = z.strictObject({
  name: z.string().min(1).max(60).describe('Short and unique: `barren tail`'),
  words: z.string().min(1).max(400).describe('Why the rule is there, for the person who reads its verdict'),
  verdict: z
    .enum(VERDICTS)
    .describe(
      'What is advised where the rule is met; a rule that says `not yet` holds the hole until it is met',
    ),
  when: ruleConditionSchema,
  safety: z.literal(true).optional().describe('If it is can’t tell, the verdict is `ask`'),
  whenEnding: z
    .literal(true)
    .optional()
    .describe(
      'For `ask`: speaks only where other rules would advise `end` or `may end`, and whenever a person ends the hole',
    ),
  call: z
    .string()
    .min(1)
    .max(100)
    .optional()
    .describe('Whom to call where the rule asks or is about safety: a name, a number, a channel'),
});
export type Rule = Readonly<z.infer<typeof ruleSchema>>;

/** What a rule does, in words: `if met: may end`; one that says not yet holds the hole until it is met. */
export function adviceWords({ verdict, whenEnding }: Rule): string {
  if (verdict === 'not yet') return 'holds the hole until met';
  return whenEnding ? 'asks when the hole is ended' : `if met: ${verdict}`;
}

/** The parts of a condition without all, any and not, in the order they are written. */
export function leavesOf(condition: RuleCondition): readonly Leaf[] {
  if ('all' in condition) return condition.all.flatMap(leavesOf);
  if ('any' in condition) return condition.any.flatMap(leavesOf);
  if ('not' in condition) return leavesOf(condition.not);
  return [condition];
}

/** The kind that a condition is of, and what it says, as the kind reads it. Throws on a condition that the schema would have refused. */
export function kindOfLeaf(leaf: Leaf) {
  const kind = CONDITIONS.find((each) => Object.hasOwn(leaf, each.key));
  if (kind === undefined) throw new Error(`no such condition: ${Object.keys(leaf).join(', ')}`);
  return kind;
}
