import { type Code, type Field, type LoggingSchema, qualifiersOf } from './logging-schema.ts';
import type { Part } from './read/whereabouts.ts';

/** Whether an amount comes after strokes: always, never, or where the person wants one. */
type Takes = 'amount' | 'no amount' | 'either';

/** One pair or key with what it types. */
export type Stroke = {
  readonly strokes: string;
  readonly is: 'pair' | 'key';
  readonly field: Field;
  readonly code?: Code;
  readonly takes: Takes;
  /** What it types, in words. */
  readonly label: string;
  readonly part: Part;
};

/** Every pair and key of a schema, in the order of the log sheet. A list that two fields share is typed into the first. */
export function strokesOf(schema: LoggingSchema): readonly Stroke[] {
  const done = new Set<string>();
  const ofList = (field: Field, list: string, takes: Takes): readonly Stroke[] => {
    if (done.has(list)) return [];
    done.add(list);
    return (schema.lists[list]?.codes ?? []).flatMap((code) => strokesOfCode(field, list, code, takes));
  };
  const own = schema.fields.map((field) =>
    'list' in field ? ofList(field, field.list, takesOf(field)) : strokesOfField(field),
  );
  return schema.fields.flatMap((field, index) => [
    ...(own[index] ?? []),
    ...qualifiersOf(field).flatMap(({ list }) => ofList(field, list, 'no amount')),
  ]);
}

/** True where the same keystrokes, amount and all, could be read as either: what a slip between the two needs to go unseen. */
export function couldBeEither(a: Pick<Stroke, 'takes'>, b: Pick<Stroke, 'takes'>): boolean {
  return a.takes === b.takes || a.takes === 'either' || b.takes === 'either';
}

/** Whether an amount comes after what types a field or one of its codes. */
export function takesOf(field: Field): Takes {
  if (field.kind === 'code') return field.second ? 'either' : 'no amount';
  if (field.kind === 'events') return 'either';
  return field.kind === 'flag' || field.kind === 'codes' ? 'no amount' : 'amount';
}

function strokesOfField(field: Field): readonly Stroke[] {
  if (field.kind !== 'level' && field.kind !== 'percent' && field.kind !== 'flag') return [];
  const takes = takesOf(field);
  return (['pair', 'key'] as const).flatMap((is): readonly Stroke[] => {
    const strokes = field[is];
    if (strokes === undefined) return [];
    return [{ strokes, is, field, takes, label: field.label, part: { field: field.name, member: is } }];
  });
}

function strokesOfCode(field: Field, list: string, code: Code, takes: Takes): readonly Stroke[] {
  return (['pair', 'key'] as const).flatMap((is): readonly Stroke[] => {
    const strokes = code[is];
    if (strokes === undefined) return [];
    const part = { list, code: code.code, member: is };
    return [{ strokes, is, field, code, takes, label: code.label, part }];
  });
}
