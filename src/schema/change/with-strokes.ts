import type { LoggingSchema } from '../logging-schema.ts';
import type { ProposedStroke } from './propose-strokes.ts';

/** A schema with proposed pairs and keys in place of those that it has. */
export function withStrokes(schema: LoggingSchema, chosen: readonly ProposedStroke[]): LoggingSchema {
  const by = new Map(chosen.map(({ part, is, strokes }) => [nameOf(part, is), strokes]));
  const given = <T extends object>(thing: T, part: ProposedStroke['part']): T => {
    const changed = (['pair', 'key'] as const).filter((is) => by.has(nameOf(part, is)));
    if (changed.length === 0) return thing;
    const kept = Object.entries(thing).filter(([member]) => !changed.some((is) => is === member));
    const strokes = changed.flatMap((is) => {
      const chosen = by.get(nameOf(part, is));
      return chosen === undefined ? [] : [[is, chosen] as const];
    });
    return Object.fromEntries([...kept, ...strokes]) as T;
  };
  return {
    ...schema,
    fields: schema.fields.map((field) => given(field, { field: field.name })),
    lists: Object.fromEntries(
      Object.entries(schema.lists).map(([list, each]) => [
        list,
        { ...each, codes: each.codes.map((code) => given(code, { list, code: code.code })) },
      ]),
    ),
  };
}

function nameOf(part: ProposedStroke['part'], is: ProposedStroke['is']): string {
  if ('field' in part) return `${is} ${part.field}`;
  return 'list' in part ? `${is} ${part.list} ${part.code ?? ''}` : is;
}
