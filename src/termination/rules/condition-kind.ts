import * as z from 'zod';
import type { Condition } from '../../condition/condition.ts';
import type { Outcome } from '../evaluate/outcome.ts';
import type { Situation } from '../evaluate/situation.ts';

/** The groups of the documentation page, in its order. */
export const ABOUT = ['depth', 'log', 'sample', 'instrument', 'direction', 'time', 'people'] as const;

/**
 * One kind of condition that a termination rule can ask: data for the page, the shape that a file holds it in (metres), and
 * the pure function that holds it against a situation.
 */
export type ConditionKind<Key extends string, Said> = {
  /** The member that names it in a file. Reads on from a verdict: "may end: pastTarget". */
  readonly key: Key;
  readonly about: (typeof ABOUT)[number];
  readonly title: string;
  /** What it says exactly, and why a geologist wants it. */
  readonly rationale: string;
  readonly example: Said;
  readonly schema: z.ZodType<{ readonly [K in Key]: Said }>;
  /** A hold, a void or a permit limit: where it holds, its rule goes before all others. */
  readonly goesFirst?: true;
  readonly assess: (said: Said, situation: Situation) => Outcome;
  /** The conditions over rows that it asks. */
  readonly asks?: (said: Said) => readonly Condition[];
};

/** Declares a kind of condition; `shape` is what is under its key. */
export function defineCondition<const Key extends string, Shape extends z.ZodRawShape>(
  kind: Omit<ConditionKind<Key, z.infer<z.ZodObject<Shape>>>, 'schema'> & { readonly shape: Shape },
): ConditionKind<Key, z.infer<z.ZodObject<Shape>>> {
  const { shape, ...rest } = kind;
  const schema = z
    .strictObject({ [kind.key]: z.strictObject(shape).describe(kind.title) })
    .describe(kind.title) as unknown as z.ZodType<{
    readonly [K in Key]: z.infer<z.ZodObject<Shape>>;
  }>;
  return { ...rest, schema };
}

const metresBetween = (least: number): z.ZodNumber => z.number().min(least).max(5000).multipleOf(0.001);

/** A length that something has to reach, in metres to the millimetre. */
export const lengthM = metresBetween(0.001);
/** A depth or a length that may be nothing, in metres to the millimetre. */
export const metresM = metresBetween(0);
/** Metres past a depth, negative for short of it. */
export const offsetM = metresBetween(-5000);
