import type { Finding } from '../../finding/finding.ts';
import {
  keyUseless,
  reserved,
  retiredPairReused,
  strokesClash,
  strokesNear,
  strokesNearElsewhere,
  strokesUntypable,
  tooManyKeys,
} from '../findings.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import type { Raise } from '../read/whereabouts.ts';
import { couldBeEither, type Stroke, strokesOf } from '../strokes.ts';
import { checkKeyRuns } from './check-key-runs.ts';
import { isKey, isPair, MOST_KEYS_APART, slipsOf } from './keyboard.ts';

/** The word of the entry line for a metre without return. */
export const NO_RETURN_WORD = 'nr';

/** The free stroke that fits best in place of one. */
export type FreeFor = (stroke: Stroke) => string | undefined;

/**
 * What is wrong with the pairs and keys of a schema: untypable, reserved, clashing, or one slip of a finger apart. Each remedy offers what
 * `free` finds in place of what is wrong.
 */
export function checkStrokes(schema: LoggingSchema, raise: Raise, free: FreeFor): readonly Finding[] {
  const all = strokesOf(schema);
  const live = all.filter((stroke) => stroke.code?.retiredSince === undefined);
  const retired = all.filter((stroke) => stroke.code?.retiredSince !== undefined);
  const typable = live.filter((stroke) => untypable(stroke, raise, free).length === 0);
  return [
    ...live.flatMap((stroke) => untypable(stroke, raise, free)),
    ...clashes(schema, typable, raise, free),
    ...reusedFromRetired(typable, retired, raise, free),
    ...nearOnes(typable, raise, free),
    ...keysOf(typable, raise),
    ...checkKeyRuns(schema, typable, raise, free),
  ];
}

/** What to do, with the stroke that is free: `Give shale another pair: sz is free.` */
function offering(remedy: string, stroke: Stroke, free: FreeFor): string {
  const found = free(stroke);
  return found === undefined ? remedy : `${remedy.replace(/\.$/, '')}: ${found} is free for ${stroke.label}.`;
}

function untypable(stroke: Stroke, raise: Raise, free: FreeFor): readonly Finding[] {
  const { strokes, is, part, label } = stroke;
  if (is === 'pair' && strokes === NO_RETURN_WORD)
    return [
      raise(reserved, part, {
        problem: `${label} has the pair ${strokes}, which says "no return" in the entry line`,
        remedy: offering('Give it another pair.', stroke, free),
      }),
    ];
  if (is === 'pair' ? isPair(strokes) : isKey(strokes)) return [];
  return [
    raise(strokesUntypable, part, {
      problem: `${label} has the ${is} "${strokes}"`,
      remedy: offering(
        is === 'pair' ? 'Use two different small letters, a to z.' : 'Use one small letter, a to z.',
        stroke,
        free,
      ),
    }),
  ];
}

/** The list of a stroke and the style that it was taken from, where it was. */
function taken(schema: LoggingSchema, { part }: Stroke) {
  const from = 'list' in part ? schema.lists[part.list]?.from : undefined;
  return 'list' in part && from !== undefined ? { list: part.list, from } : undefined;
}

function clashes(
  schema: LoggingSchema,
  strokes: readonly Stroke[],
  raise: Raise,
  free: FreeFor,
): readonly Finding[] {
  return strokes.flatMap((stroke, index) => {
    const first = strokes.findIndex((each) => each.strokes === stroke.strokes);
    const other = strokes[first];
    if (other === undefined || first >= index) return [];
    const list = taken(schema, stroke) ?? taken(schema, other);
    const problem = `${stroke.strokes} types ${named(schema, stroke)}, and ${named(schema, other)} too`;
    if (list === undefined)
      return [
        raise(strokesClash, [stroke.part, other.part], {
          problem,
          remedy: offering(`Give one of the two another ${stroke.is}.`, stroke, free),
        }),
      ];
    return [
      raise(
        strokesClash,
        { list: list.list, member: 'from' },
        {
          problem,
          remedy: `Let offsider schema propose choose other strokes for the codes of ${list.list} that clash, or write another ${stroke.is} here.`,
        },
      ),
    ];
  });
}

/** What a stroke types, with the style that its list was taken from. */
function named(schema: LoggingSchema, stroke: Stroke): string {
  const list = taken(schema, stroke);
  return list === undefined ? stroke.label : `${stroke.label} (${list.list} of ${list.from})`;
}

function reusedFromRetired(
  live: readonly Stroke[],
  retired: readonly Stroke[],
  raise: Raise,
  free: FreeFor,
): readonly Finding[] {
  return live.flatMap((stroke) => {
    const old = retired.find((each) => each.strokes === stroke.strokes);
    if (old === undefined) return [];
    return [
      raise(retiredPairReused, [stroke.part, old.part], {
        problem: `${stroke.strokes} types ${stroke.label}; it typed ${old.label} until that was retired`,
        remedy: offering(`Give ${stroke.label} another ${stroke.is}.`, stroke, free),
      }),
    ];
  });
}

/** Strokes one slip apart that could both be meant: a fault within a field, a warning across fields. */
function nearOnes(strokes: readonly Stroke[], raise: Raise, free: FreeFor): readonly Finding[] {
  const reserves = strokes.flatMap((stroke) => nearNoReturn(stroke, raise, free));
  const byStrokes = new Map(strokes.map((stroke, index) => [stroke.strokes, index]));
  const pairs = strokes.flatMap((stroke, index) =>
    slipsOf(stroke.strokes).flatMap((slip) => {
      const at = byStrokes.get(slip);
      const other = at === undefined || at >= index ? undefined : strokes[at];
      return other === undefined || !couldBeEither(stroke, other)
        ? []
        : [nearFinding(stroke, other, raise, free)];
    }),
  );
  return [...reserves, ...pairs];
}

function nearFinding(stroke: Stroke, other: Stroke, raise: Raise, free: FreeFor): Finding {
  const same = stroke.field === other.field;
  return raise(same ? strokesNear : strokesNearElsewhere, [stroke.part, other.part], {
    problem:
      `${stroke.strokes} (${stroke.label}) and ${other.strokes} (${other.label}) are one slip apart` +
      (same ? ', in the same field' : ` (${stroke.field.label}, ${other.field.label})`),
    remedy: offering(
      `Give one of the two another ${stroke.is}, with letters that are not neighbours on the keyboard.`,
      stroke,
      free,
    ),
  });
}

function nearNoReturn(stroke: Stroke, raise: Raise, free: FreeFor): readonly Finding[] {
  if (stroke.takes === 'amount' || !slipsOf(stroke.strokes).includes(NO_RETURN_WORD)) return [];
  return [
    raise(strokesNearElsewhere, stroke.part, {
      problem: `${stroke.strokes} (${stroke.label}) is one slip from nr, which says "no return" of the whole row`,
      remedy: offering('Give it another pair.', stroke, free),
    }),
  ];
}

function keysOf(strokes: readonly Stroke[], raise: Raise): readonly Finding[] {
  const keys = strokes.filter((stroke) => stroke.is === 'key');
  // An event is not in the row above to be changed by a key.
  const useless = keys.filter((stroke) => stroke.takes === 'no amount' || stroke.field.kind === 'events');
  const over = keys[MOST_KEYS_APART];
  return [
    ...useless.map((stroke) =>
      raise(keyUseless, stroke.part, {
        problem: `${stroke.label} has the key ${stroke.strokes}, but ${stroke.takes === 'no amount' ? 'no amount can come after it' : 'an event has no amount in the row above'}`,
        remedy: 'Take the key away.',
      }),
    ),
    ...(over === undefined
      ? []
      : [
          raise(tooManyKeys, over.part, {
            problem: `there are ${keys.length} single keys; at most ${MOST_KEYS_APART} can be apart on a keyboard`,
            remedy: 'Keep keys for what changes most often, and take the others away.',
          }),
        ]),
  ];
}
