import { type Field, type LoggingSchema, qualifierFor, qualifiersOf } from './logging-schema.ts';

/** Every code that can say more of one code of a field (of any one, where none is given), whatever list it is from. */
export function qualitiesOf(schema: LoggingSchema, field: Field, of?: string): readonly string[] {
  return qualifiersOf(field)
    .filter(({ list }) => qualifierFor(field, list, of) !== undefined)
    .flatMap(({ list }) => schema.lists[list]?.codes.map(({ code }) => code) ?? []);
}
