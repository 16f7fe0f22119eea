import { evaluate } from '../../condition/evaluate.ts';
import type { Cells } from '../../value/row.ts';
import type { LoggingSchema, Unlikely } from '../logging-schema.ts';
import { readerOf } from '../read-cell.ts';

/** What a row holds together that is seldom seen together. What can't be told of it is not said. */
export function unlikelyIn(schema: LoggingSchema, cells: Cells): readonly Unlikely[] {
  const read = readerOf(schema, cells);
  return (schema.unlikely ?? []).filter(({ when }) => evaluate(when, read) === 'yes');
}

/** The same, less what the row above held already: asked once where it begins, not again down the whole zone. */
export function newlyUnlikely(
  schema: LoggingSchema,
  above: Cells | undefined,
  cells: Cells,
): readonly Unlikely[] {
  const known = above === undefined ? [] : unlikelyIn(schema, above);
  return unlikelyIn(schema, cells).filter((each) => !known.includes(each));
}
