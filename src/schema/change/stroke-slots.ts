import { slipsOf } from '../check/keyboard.ts';
import { type Code, type Field, type LoggingSchema, qualifiersOf } from '../logging-schema.ts';
import { couldBeEither, type Stroke, strokesOf, takesOf } from '../strokes.ts';

/**
 * What is proposed: everything that has no strokes or whose strokes clash with others, or (`again`) all but what is frozen; keys only where
 * they are asked for.
 */
export type ProposeWhat = {
  /** Only codes of these lists; of every list and field where it is missing. */
  readonly lists?: readonly string[];
  /** Only this one pair or key: all else stays. */
  readonly only?: Pick<Stroke, 'is' | 'part'>;
  /** What has a pair gets another one where that is better. */
  readonly again?: boolean;
  /** Single keys too. */
  readonly keys?: boolean;
  /** Strokes that rows were logged with: they stay with what they typed, and type nothing else. */
  readonly frozen?: readonly Pick<Stroke, 'is' | 'strokes' | 'part'>[];
  /** How often a term is logged, by its part; missing ones are weighed by their place in their list. */
  readonly uses?: (part: Stroke['part']) => number | undefined;
  /** What it is worth that a slip doesn't read as something of another field: more costs guessable letters. Set by the bench. */
  readonly apart?: number;
};

/** A pair or key that a code or a field has or could have. `fixed` stays as it is. */
export type Slot = Pick<Stroke, 'is' | 'field' | 'takes' | 'label' | 'part'> & {
  readonly was: string | undefined;
  readonly fixed: string | undefined;
  /** How much it matters that it can be guessed: more for what is logged more. */
  readonly weight: number;
  /** How often it is typed, 1 for once in a while: a slip happens as often. */
  readonly typed: number;
};

type Frozen = NonNullable<ProposeWhat['frozen']>;

/** Everything that can be typed by strokes of its own, in the order of the log sheet; retired codes are not among it. */
export function slotsOf(schema: LoggingSchema, what: ProposeWhat): readonly Slot[] {
  const things = [...thingsOf(schema)];
  const clashing = clashingStrokes(schema, what.frozen ?? []);
  return things.flatMap((thing): readonly Slot[] =>
    (['pair', 'key'] as const).flatMap((is): readonly Slot[] => {
      const was = strokesOfThing(thing)[is];
      const part = { ...thing.part, member: is };
      const frozen = (what.frozen ?? []).find((each) => each.is === is && samePart(each.part, part));
      const isAsked =
        what.only === undefined
          ? what.lists === undefined || ('list' in part && what.lists.includes(part.list))
          : what.only.is === is && samePart(what.only.part, part);
      const mayMove =
        isAsked &&
        frozen === undefined &&
        (was === undefined ||
          clashing.some((each) => each.is === is && samePart(each.part, part)) ||
          (what.again === true && (is === 'pair' || what.keys === true)));
      if (!mayMove && was === undefined && frozen === undefined) return [];
      if (is === 'key' && was === undefined && !(what.keys === true && takesKey(thing))) return [];
      const fixed = frozen?.strokes ?? (mayMove ? undefined : was);
      return [
        {
          is,
          field: thing.field,
          takes: thing.takes,
          label: thing.label,
          part,
          was,
          fixed,
          weight: weightOf(thing, what),
          typed: typedOf(thing, what),
        },
      ];
    }),
  );
}

/**
 * Strokes that have to move, for two things have them or two of one field are one slip apart: of the two the one of a list that was taken
 * from another style, else the later one; never what rows were logged with.
 */
function clashingStrokes(schema: LoggingSchema, frozen: Frozen): readonly Stroke[] {
  const live = strokesOf(schema).filter(({ code }) => code?.retiredSince === undefined);
  const isFrozen = ({ is, part }: Stroke): boolean =>
    frozen.some((each) => each.is === is && samePart(each.part, part));
  const isTaken = ({ part }: Stroke): boolean =>
    'list' in part && schema.lists[part.list]?.from !== undefined;
  const moving = new Set<Stroke>();
  for (const [index, later] of live.entries())
    for (const earlier of live.slice(0, index)) {
      if (moving.has(earlier) || !clash(earlier, later)) continue;
      const isEarlier = isFrozen(later) || (isTaken(earlier) && !isTaken(later) && !isFrozen(earlier));
      moving.add(isEarlier ? earlier : later);
      if (!isEarlier) break;
    }
  return [...moving].filter((stroke) => !isFrozen(stroke));
}

function clash(a: Stroke, b: Stroke): boolean {
  if (a.strokes === b.strokes) return true;
  return a.field === b.field && couldBeEither(a, b) && slipsOf(a.strokes).includes(b.strokes);
}

/** A code or a field that strokes can type. */
type Thing = {
  readonly field: Field;
  readonly code: Code | undefined;
  readonly label: string;
  readonly takes: Stroke['takes'];
  readonly part: { readonly list: string; readonly code: string } | { readonly field: string };
  /** Its place in its list, from 0. */
  readonly place: number;
};

/** A level that every row has seldom changes: it is weighed like a code some way down its list. */
const FIELD_PLACE = 6;

function* thingsOf(schema: LoggingSchema): Generator<Thing> {
  const done = new Set<string>();
  const qualifiers = schema.fields.flatMap((field) =>
    qualifiersOf(field).map(({ list }) => ({ field, list, takes: 'no amount' as const })),
  );
  for (const field of schema.fields) {
    if (field.kind === 'level' || field.kind === 'percent' || field.kind === 'flag')
      yield {
        field,
        code: undefined,
        label: field.label,
        takes: takesOf(field),
        part: { field: field.name },
        place: FIELD_PLACE,
      };
    const own = 'list' in field ? [{ field, list: field.list, takes: takesOf(field) }] : [];
    for (const { list, takes } of [...own, ...qualifiers.filter((each) => each.field === field)]) {
      const logged = own[0]?.list === list;
      if (done.has(list) || (!logged && schema.fields.some((each) => 'list' in each && each.list === list)))
        continue;
      done.add(list);
      for (const [place, code] of (schema.lists[list]?.codes ?? []).entries())
        if (code.retiredSince === undefined)
          yield { field, code, label: code.label, takes, part: { list, code: code.code }, place };
    }
  }
}

function strokesOfThing({ field, code }: Thing): { readonly pair?: string; readonly key?: string } {
  return code ?? (field as { readonly pair?: string; readonly key?: string });
}

/** Keys are for amounts that change from row to row; a qualifier of a mineral has none. */
function takesKey({ takes, field }: Thing): boolean {
  return takes === 'amount' && ['levels', 'percents', 'level', 'percent'].includes(field.kind);
}

/** What is known to be logged often weighs most; else what comes first in its list, and the fields themselves. */
function weightOf({ part, place }: Thing, { uses }: ProposeWhat): number {
  const used = uses?.(part);
  if (uses !== undefined) return used === undefined || used <= 0 ? 1 : 2 + Math.log2(1 + used);
  return 1 + 3 / (1 + place / 4);
}

/** Typed so often that it is a term of every day: 4; seldom: near 0. */
function typedOf(thing: Thing, what: ProposeWhat): number {
  const used = what.uses?.(thing.part);
  return what.uses === undefined ? weightOf(thing, what) : 0.25 + Math.sqrt(used ?? 0);
}

function samePart(a: Stroke['part'], b: Stroke['part']): boolean {
  if ('field' in a) return 'field' in b && a.field === b.field;
  if (!('list' in a) || !('list' in b)) return false;
  return a.list === b.list && a.code === b.code;
}

/** Strokes that a legend's rows were logged with, as what is frozen. */
export function frozenBy(meanings: {
  readonly fields: { readonly [name: string]: { readonly pair?: string; readonly key?: string } };
  readonly codes: {
    readonly [name: string]: {
      readonly list: string;
      readonly code: string;
      readonly pair?: string;
      readonly key?: string;
    };
  };
}): Frozen {
  const of = (
    { pair, key }: { readonly pair?: string; readonly key?: string },
    part: Stroke['part'],
  ): Frozen => [
    ...(pair === undefined ? [] : [{ is: 'pair' as const, strokes: pair, part }]),
    ...(key === undefined ? [] : [{ is: 'key' as const, strokes: key, part }]),
  ];
  return [
    ...Object.entries(meanings.fields).flatMap(([field, each]) => of(each, { field })),
    ...Object.values(meanings.codes).flatMap((each) => of(each, { list: each.list, code: each.code })),
  ];
}
