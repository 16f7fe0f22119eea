import { type Field, type LoggingSchema, listOf, scaleOf } from '../../schema/logging-schema.ts';

/** A column of the log on screen. */
export interface Column {
  readonly field: Field;
  readonly title: string;
  readonly width: number;
}

/** What a column wants: the narrowest it may be, how wide it gladly is, and how soon its turn comes (0 first). */
interface Wish {
  readonly field: Field;
  readonly least: number;
  readonly glad: number;
  readonly turn: number;
}

/**
 * The columns that fit a width, in the order of the log sheet. Where not all fit, what decides most comes first: the rock, the
 * minerals with their amounts, veins, then levels, then the other codes. Instrument readings are read down, not along, and
 * texts do not fit: the whole row is on its own screen.
 */
export function columnsFor(schema: LoggingSchema, width: number): readonly Column[] {
  const wishes = schema.fields
    .filter((field) => !(field.kind === 'number' && field.column) && field.kind !== 'text')
    .map((field) => wish(schema, field));
  const chosen = new Map<Field, number>();
  let room = width + 1;
  for (const each of [...wishes].sort((a, b) => a.turn - b.turn)) {
    const given = Math.min(each.glad, room - 1);
    if (given < each.least) continue;
    chosen.set(each.field, given);
    room -= given + 1;
  }
  return wishes
    .filter((each) => chosen.has(each.field))
    .map(({ field }) => {
      const given = chosen.get(field) ?? 0;
      return { field, title: titleOf(field, given), width: given };
    });
}

function wish(schema: LoggingSchema, field: Field): Wish {
  const code = Math.max(2, ...(listOf(schema, field)?.codes ?? []).map((each) => each.code.length));
  const level = Math.max(2, ...(scaleOf(schema, field)?.levels ?? []).map((each) => each.code?.length ?? 1));
  switch (field.kind) {
    case 'code':
      return { field, least: code, glad: field.second ? code + 1 : code, turn: field.required ? 0 : 5 };
    case 'percents':
      return { field, least: code + 2, glad: 2 * (code + 2), turn: 1 };
    case 'levels':
      return { field, least: code + 1, glad: 2 * (code + 1) + 1, turn: 2 };
    case 'percent':
      return { field, least: 3, glad: 4, turn: 3 };
    case 'level':
      return { field, least: level, glad: level, turn: field.required ? 4 : 6 };
    default:
      return { field, least: 4, glad: 4, turn: 7 };
  }
}

/** The label where it fits, else the name, else the strokes that type it, else the label cut. */
function titleOf(field: Field, width: number): string {
  const strokes = 'pair' in field && field.pair !== undefined ? field.pair : '';
  const fitting = [field.label.toLowerCase(), field.name, strokes].find(
    (title) => title !== '' && title.length <= width,
  );
  return fitting ?? field.label.toLowerCase().slice(0, width);
}
