import { type Field, type LoggingSchema, listOf, scaleOf } from '../../schema/logging-schema.ts';

/** A column of the log on screen. */
export interface Column {
  readonly field: Field;
  readonly title: string;
  readonly width: number;
}

/** The narrowest that a field's column may be, and how much wider it gladly gets. */
function wish(schema: LoggingSchema, field: Field): { readonly least: number; readonly glad: number } {
  const codes = listOf(schema, field)?.codes ?? [];
  const code = Math.max(2, ...codes.map((each) => each.code.length));
  const levels = scaleOf(schema, field)?.levels ?? [];
  if (field.kind === 'code') return { least: code, glad: field.second ? code + code + 3 : code };
  if (field.kind === 'level')
    return { least: Math.max(1, ...levels.map((each) => each.code?.length ?? 1)), glad: 4 };
  if (field.kind === 'levels') return { least: code + 1, glad: 3 * (code + 2) - 1 };
  if (field.kind === 'percents') return { least: code + 2, glad: 2 * (code + 3) - 1 };
  if (field.kind === 'percent') return { least: 3, glad: 4 };
  return field.kind === 'flag' ? { least: 3, glad: 3 } : { least: 5, glad: 8 };
}

/**
 * The columns that fit a width, in the order of the log sheet: narrow columns get what they need, those with several codes
 * share what is left. Fields that no longer fit fall off at the end (the row itself is whole, on its own screen). Instrument
 * columns are left out: they are read down, not along.
 */
export function columnsFor(schema: LoggingSchema, width: number): readonly Column[] {
  const fields = schema.fields.filter(
    (field) => !(field.kind === 'number' && field.column) && field.kind !== 'text',
  );
  const chosen: { field: Field; title: string; width: number; glad: number }[] = [];
  let room = width;
  for (const field of fields) {
    const { least, glad } = wish(schema, field);
    const title = shortTitle(field, Math.max(least, 4));
    const needs = Math.max(least, title.length) + 1;
    if (needs > room) break;
    chosen.push({ field, title, width: needs - 1, glad: Math.max(glad, needs - 1) });
    room -= needs;
  }
  return shareOut(chosen, room);
}

function shareOut(
  chosen: readonly {
    readonly field: Field;
    readonly title: string;
    readonly width: number;
    readonly glad: number;
  }[],
  spare: number,
): readonly Column[] {
  const widths = chosen.map((each) => each.width);
  let room = spare;
  while (room > 0) {
    const hungry = chosen
      .map((each, index) => ({ index, want: each.glad - (widths[index] ?? 0) }))
      .filter((each) => each.want > 0);
    if (hungry.length === 0) break;
    for (const each of hungry) {
      if (room === 0) break;
      widths[each.index] = (widths[each.index] ?? 0) + 1;
      room -= 1;
    }
  }
  return chosen.map(({ field, title }, index) => ({ field, title, width: widths[index] ?? 0 }));
}

/** The field's label where it fits, else its name where that does, else the label cut. */
function shortTitle(field: Field, room: number): string {
  const label = field.label.toLowerCase();
  if (label.length <= room) return label;
  return field.name.length <= room ? field.name : label.slice(0, room);
}
