import type { z } from 'zod';

/** True of a JSON value that a shape takes. */
type Accepts = (value: unknown) => boolean;
type Shape = z.core.$ZodType;

const known = new WeakMap<Shape, Accepts>();

/**
 * Whether a shape takes a JSON value: the answer of safeParse(value).success, without what zod prepares for its messages (a union
 * alone builds the issues of every member that does not fit). A hole is checked five times as fast by it. A kind of shape or of
 * check that is not written out here is left to zod.
 */
export function accepts(shape: Shape): Accepts {
  const made = known.get(shape);
  if (made !== undefined) return made;
  const check = withChecks(shape, plain(shape)) ?? ((value) => (shape as z.ZodType).safeParse(value).success);
  known.set(shape, check);
  return check;
}

/** What a shape takes before its checks; undefined where that is left to zod. */
function plain(shape: Shape): Accepts | undefined {
  const { def } = (shape as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'string':
      return (value) => typeof value === 'string';
    case 'number':
      return Number.isFinite;
    case 'boolean':
      return (value) => typeof value === 'boolean';
    case 'unknown':
      return () => true;
    case 'literal':
      return oneOf(def.values);
    case 'enum':
      return oneOf(Object.values(def.entries));
    case 'optional':
      return optional(accepts(def.innerType));
    case 'array':
      return listOf(accepts(def.element));
    case 'tuple':
      return def.rest === null ? tupleOf(def.items.map(accepts)) : undefined;
    case 'union':
      return anyOf(def.options.map(accepts));
    case 'record':
      return (def.keyType as z.core.$ZodTypes)._zod.def.type === 'string'
        ? recordOf(accepts(def.keyType), accepts(def.valueType))
        : undefined;
    case 'object':
      return objectOf(def);
    default:
      return undefined;
  }
}

const oneOf = (values: readonly unknown[]): Accepts => {
  const all = new Set(values);
  return (value) => all.has(value);
};

const optional =
  (inner: Accepts): Accepts =>
  (value) =>
    value === undefined || inner(value);

const listOf =
  (element: Accepts): Accepts =>
  (value) =>
    Array.isArray(value) && value.every(element);

const tupleOf =
  (items: readonly Accepts[]): Accepts =>
  (value) =>
    Array.isArray(value) && value.length === items.length && items.every((item, index) => item(value[index]));

const anyOf =
  (options: readonly Accepts[]): Accepts =>
  (value) =>
    options.some((option) => option(value));

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const recordOf =
  (key: Accepts, member: Accepts): Accepts =>
  (value) => {
    if (!isRecord(value)) return false;
    for (const name in value) if (!key(name) || !member(value[name])) return false;
    return true;
  };

function objectOf(def: z.core.$ZodObjectDef): Accepts | undefined {
  const rest = (def.catchall as z.core.$ZodTypes | undefined)?._zod.def.type;
  if (rest !== undefined && rest !== 'never' && rest !== 'unknown') return undefined;
  // A shape may hold itself (a merge holds entries), so what it holds is looked at when it is first needed.
  let members: Members | undefined;
  return (value) => {
    if (!isRecord(value)) return false;
    members ??= membersOf(def.shape);
    if (rest === 'never') for (const name in value) if (!members.has(name)) return false;
    for (const [name, member] of members) {
      const held = value[name];
      if (held === undefined ? !member.mayLack : !member.takes(held)) return false;
    }
    return true;
  };
}

type Members = ReadonlyMap<string, { readonly takes: Accepts; readonly mayLack: boolean }>;

function membersOf(shape: Readonly<Record<string, Shape>>): Members {
  return new Map(
    Object.entries(shape).map(([name, member]) => {
      const { optin } = member._zod;
      const takes = accepts(member);
      return [name, { takes, mayLack: optin === 'optional' || (optin !== undefined && takes(undefined)) }];
    }),
  );
}

/** With what a shape asks besides (a least length, a limit, a rule of its own); undefined where one of that is left to zod. */
function withChecks(shape: Shape, base: Accepts | undefined): Accepts | undefined {
  const { def } = shape._zod;
  const own = 'check' in def ? [def as unknown as z.core.$ZodCheckDef] : [];
  let all = base;
  for (const each of [...own, ...(def.checks ?? []).map((check) => check._zod.def)]) {
    const before = all;
    const check = checkOf(each as CheckDef);
    if (before === undefined || check === undefined) return undefined;
    all = (value) => before(value) && check(value as never);
  }
  return all;
}

type CheckDef = z.core.$ZodCheckDef & {
  readonly minimum: number;
  readonly maximum: number;
  readonly value: number;
  readonly inclusive: boolean;
  readonly format: string;
  readonly pattern?: RegExp;
  readonly fn?: (value: unknown) => unknown;
};

function checkOf(def: CheckDef): ((value: never) => boolean) | undefined {
  const { minimum, maximum, value: limit, inclusive, fn } = def;
  switch (def.check) {
    case 'min_length':
      return ({ length }: string) => length >= minimum;
    case 'max_length':
      return ({ length }: string) => length <= maximum;
    case 'greater_than':
      return inclusive ? (value: number) => value >= limit : (value: number) => value > limit;
    case 'less_than':
      return inclusive ? (value: number) => value <= limit : (value: number) => value < limit;
    case 'number_format':
      return def.format === 'safeint' ? Number.isSafeInteger : undefined;
    case 'string_format':
      return def.format === 'regex' && def.pattern?.flags === ''
        ? (value: string) => (def.pattern as RegExp).test(value)
        : undefined;
    case 'custom':
      return fn === undefined ? undefined : (value) => Boolean(fn(value));
    default:
      return undefined;
  }
}
