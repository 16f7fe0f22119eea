import * as z from 'zod';
import { type Rule, ruleSchema } from './rules/rule.ts';

const name = z.string().min(1).max(60);

/** What a hole does otherwise than the project, with who settled it and why. */
const override = z.strictObject({
  hole: name.describe('Planned name or name of the hole'),
  by: z.string().min(1).max(100).describe('Who settled it'),
  because: z.string().min(1).max(400).describe('Why the hole goes by other rules'),
  rules: z
    .array(ruleSchema)
    .optional()
    .describe('Stand for the rules of the same name, or beside the others'),
  without: z.array(name).optional().describe('Rules of the project that this hole does without'),
});

/** The termination rules of a project, as they are in project.json. */
export const terminationSettings = z.strictObject({
  rules: z.array(ruleSchema).describe('In the order in which they are shown'),
  holes: z.array(override).optional().describe('What single holes do otherwise than the project'),
});
export type TerminationSettings = Readonly<z.infer<typeof terminationSettings>>;
export type HoleOverride = Readonly<z.infer<typeof override>>;

/** What was settled for a hole, by any of its names; undefined where it goes by the project. */
export function overrideFor(
  settings: TerminationSettings,
  names: readonly string[],
): HoleOverride | undefined {
  return settings.holes?.find((each) => names.includes(each.hole));
}

/** The rules in force for a hole, by any of its names: the project's, with what was settled for the hole. */
export function rulesFor(settings: TerminationSettings, names: readonly string[]): readonly Rule[] {
  const own = overrideFor(settings, names);
  if (own === undefined) return settings.rules;
  const named = new Map((own.rules ?? []).map((rule) => [rule.name, rule]));
  const kept = settings.rules
    .filter((rule) => !own.without?.includes(rule.name))
    .map((rule) => named.get(rule.name) ?? rule);
  const known = new Set(settings.rules.map((rule) => rule.name));
  return [...kept, ...(own.rules ?? []).filter((rule) => !known.has(rule.name))];
}
