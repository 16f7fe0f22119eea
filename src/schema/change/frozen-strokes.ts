import type { Meanings } from '../legend.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import { type Stroke, strokesOf } from '../strokes.ts';

/** A pair or key that rows were logged with, and what it types now instead. */
export type ShiftedStroke = {
  /** The field or code whose strokes they were, by its place in the legend. */
  readonly of: { readonly field: string } | { readonly list: string; readonly code: string };
  readonly label: string;
  readonly now: Stroke;
};

/** Strokes of a legend that now type something else. */
export function shiftedStrokes(logged: Meanings, schema: LoggingSchema): readonly ShiftedStroke[] {
  const live = strokesOf(schema).filter((stroke) => stroke.code?.retiredSince === undefined);
  const was = [
    ...Object.entries(logged.fields).map(([field, meaning]) => ({ of: { field }, meaning })),
    ...Object.values(logged.codes).map((meaning) => ({
      of: { list: meaning.list, code: meaning.code },
      meaning,
    })),
  ];
  return was.flatMap(({ of, meaning }) =>
    [meaning.pair, meaning.key].flatMap((strokes) => {
      const now = live.find((stroke) => stroke.strokes === strokes && !types(stroke, of));
      return now === undefined ? [] : [{ of, label: meaning.label, now }];
    }),
  );
}

function types({ part }: Stroke, of: ShiftedStroke['of']): boolean {
  if ('field' in of) return 'field' in part && part.field === of.field;
  return 'list' in part && part.list === of.list && part.code === of.code;
}

/**
 * The schema for rows that go on under a legend: a pair or key that typed one thing in its rows and would now type another
 * types nothing, so that it is refused and never means two things in one hole. The same schema where nothing has shifted.
 */
export function withoutShifted(schema: LoggingSchema, logged: Meanings): LoggingSchema {
  const shifted = shiftedStrokes(logged, schema).map(({ now }) => now);
  if (shifted.length === 0) return schema;
  const without = <T extends object>(thing: T, named: (stroke: Stroke) => boolean): T => {
    const gone = shifted.filter(named).map(({ is }) => is as string);
    return gone.length === 0
      ? thing
      : (Object.fromEntries(Object.entries(thing).filter(([member]) => !gone.includes(member))) as T);
  };
  return {
    ...schema,
    fields: schema.fields.map((field) =>
      without(field, ({ part }) => 'field' in part && part.field === field.name),
    ),
    lists: Object.fromEntries(
      Object.entries(schema.lists).map(([name, list]) => [
        name,
        {
          ...list,
          codes: list.codes.map((code) =>
            without(code, ({ part }) => 'list' in part && part.list === name && part.code === code.code),
          ),
        },
      ]),
    ),
  };
}
