import type { z } from 'zod';

/** Members are looked at in runs of 1, 2, 4 … up to this many, until a list or table has this many faults. */
const LONGEST_RUN = 32;
const ENOUGH = 20;

type Shape = z.core.$ZodType;
type Parse = Shape['_zod']['parse'];
type Payload = z.core.ParsePayload;

const bounded = new WeakSet<Shape>();

/**
 * Makes a shape stop early at every list and table of things in it, and gives it back. zod names every fault of every member, which takes seconds
 * for a file with 40,000 misshapen rows and minutes for one made for it, and no one reads past the first twenty. A file that fits is judged the
 * same; what zod makes of it is not rebuilt, so only the verdict may be used.
 */
export function boundedShape<T extends Shape>(shape: T): T {
  if (bounded.has(shape)) return shape;
  bounded.add(shape);
  for (const part of partsOf(shape)) boundedShape(part);
  const { type, keyType } = shape._zod.def as { readonly type: string; readonly keyType?: Shape };
  const { parse } = shape._zod;
  if (type === 'array') replaceParse(shape, (payload, ctx) => listInRuns(parse, payload, ctx));
  // A table with named members is checked for those that are missing, which only the whole can tell.
  if (type === 'record' && keyType?._zod.values === undefined)
    replaceParse(shape, (payload, ctx) => tableInRuns(parse, payload, ctx));
  return shape;
}

/** Without checks of its own a shape is run by the parser itself, with them by a function that looks the parser up. */
function replaceParse(shape: Shape, parse: Parse): void {
  if (shape._zod.run === shape._zod.parse) shape._zod.run = parse;
  shape._zod.parse = parse;
}

function listInRuns(parse: Parse, payload: Payload, ctx: z.core.ParseContextInternal): ReturnType<Parse> {
  const list: unknown = payload.value;
  if (!Array.isArray(list) || list.length < 2) return parse(payload, ctx);
  return inRuns(payload, list.length, (from, to) => {
    const ran = issuesOf(parse({ value: list.slice(from, to), issues: [] }, ctx));
    return ran.map((issue) => ({ ...issue, path: shifted(issue.path, from) }) as typeof issue);
  });
}

function tableInRuns(parse: Parse, payload: Payload, ctx: z.core.ParseContextInternal): ReturnType<Parse> {
  const table: unknown = payload.value;
  if (typeof table !== 'object' || table === null || Array.isArray(table)) return parse(payload, ctx);
  const members = Object.entries(table);
  if (members.length < 2) return parse(payload, ctx);
  return inRuns(payload, members.length, (from, to) =>
    issuesOf(parse({ value: Object.fromEntries(members.slice(from, to)), issues: [] }, ctx)),
  );
}

function inRuns(
  payload: Payload,
  length: number,
  issuesFrom: (from: number, to: number) => Payload['issues'],
): Payload {
  for (let from = 0, size = 1; from < length; from += size, size = Math.min(LONGEST_RUN, size * 2)) {
    payload.issues.push(...issuesFrom(from, from + size));
    if (payload.issues.length >= ENOUGH) break;
  }
  return payload;
}

function issuesOf(ran: ReturnType<Parse>): Payload['issues'] {
  if (ran instanceof Promise) throw new Error('the shape of a file cannot wait for anything');
  return ran.issues;
}

function shifted(path: readonly PropertyKey[] | undefined, by: number): readonly PropertyKey[] {
  const [first, ...rest] = path ?? [];
  return typeof first === 'number' ? [first + by, ...rest] : (path ?? []);
}

/** The shapes that a shape is made of, whatever its kind calls them. What is made when it is first needed is asked of zod, which keeps it. */
function partsOf(shape: Shape): readonly Shape[] {
  if (shape._zod.def.type === 'lazy') return [(shape as z.core.$ZodLazy)._zod.innerType];
  const def = shape._zod.def as unknown as Readonly<Record<string, unknown>>;
  return Object.entries(def)
    .flatMap(([name, part]) => (name === 'shape' && isObject(part) ? Object.values(part) : [part].flat()))
    .filter((part): part is Shape => isObject(part) && '_zod' in part);
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
