import { type Cell, NONE, NOT_OBSERVED } from '../../value/cell.ts';
import { checkCell } from '../check/cell-checks.ts';
import type { LoggingSchema, NumberField } from '../logging-schema.ts';

/** What was typed for a reading, as a cell, or why it is none. */
export type ReadingRead =
  | { readonly ok: true; readonly cell: Cell }
  | { readonly ok: false; readonly problem: string; readonly remedy: string };

/** True of a text that says that the instrument saw less than it can tell: `<5`, `<LOD`. */
export function isBelowDetection(text: string): boolean {
  return /^<|^(?:b\.?d\.?l?|lod|nd)\.?$/i.test(text.trim());
}

/**
 * Reads a reading as it is typed: a number with a point, `nr` for not read, `none` for looked and none there. Refused: another
 * text, a number outside the field's range or with more decimals than it holds, none where there always is some.
 */
export function readReading(schema: LoggingSchema, field: NumberField, text: string): ReadingRead {
  const typed = text.trim();
  if (typed === 'nr') return { ok: true, cell: NOT_OBSERVED };
  if (typed === 'none') return checked(schema, field, NONE);
  if (isBelowDetection(typed))
    return {
      ok: false,
      problem: `${typed} is below what the instrument can tell, and no number`,
      remedy: `Type ${field.canBeNone ? 'none, or ' : ''}nr for not read.`,
    };
  if (!/^[+-]?(\d{1,12}(\.\d{0,12})?|\.\d{1,12})$/.test(typed))
    return {
      ok: false,
      problem: `${typed} is not a number`,
      remedy: `Type a number with a point, like ${exampleOf(field)}, or nr for not read.`,
    };
  return checked(schema, field, { number: Number(typed) + 0 });
}

/** The cell, where it is one of the field. */
export function checked(schema: LoggingSchema, field: NumberField, cell: Cell): ReadingRead {
  const [problem] = checkCell(schema, field, cell);
  return problem === undefined
    ? { ok: true, cell }
    : { ok: false, problem: problem.problem, remedy: problem.remedy };
}

function exampleOf({ min, max, decimals }: NumberField): string {
  return Math.min(Math.max(min, 0.42), max).toFixed(decimals);
}
