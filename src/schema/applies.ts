import { evaluate } from '../condition/evaluate.ts';
import type { Cells } from '../value/row.ts';
import type { Field, LoggingSchema } from './logging-schema.ts';
import { readerOf } from './read-cell.ts';

/**
 * Whether a field is asked of a row, given the cells of the fields above it. Where its condition can't be told (the field it
 * asks was not observed) it is not asked: nothing is made up from what no one saw.
 */
export function fieldApplies(schema: LoggingSchema, cells: Cells, field: Field): boolean {
  return field.onlyWhen === undefined || evaluate(field.onlyWhen, readerOf(schema, cells)) === 'yes';
}
