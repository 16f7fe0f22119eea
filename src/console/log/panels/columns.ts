import {
  type Field,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  scaleOf,
} from '../../../schema/logging-schema.ts';

/** A column of the log on screen. */
export interface Column {
  readonly field: Field;
  readonly title: string;
  readonly width: number;
}

/** What a column wants: the narrowest it may be, how wide it gladly is, how wide it is of use, and how soon its turn comes (0 first). */
interface Wish {
  readonly field: Field;
  readonly least: number;
  readonly glad: number;
  readonly most: number;
  readonly turn: number;
}

/** Turns from here on wait until the columns that list several minerals have the room that they can use. */
const OPTIONAL = 5;

/**
 * The columns that fit a width, in the order of the log sheet. Where not all fit, what decides most comes first: the rock, the
 * minerals with their amounts, veins, required levels; then more room for the minerals, then the other codes and levels.
 * Instrument readings are read down, not along, and texts do not fit: the whole row is on its own screen.
 */
export function columnsFor(schema: LoggingSchema, width: number): readonly Column[] {
  const wishes = schema.fields
    .filter((field) => !(field.kind === 'number' && field.column) && field.kind !== 'text')
    .map((field) => wish(schema, field));
  const byTurn = [...wishes].sort((a, b) => a.turn - b.turn);
  const chosen = new Map<Field, number>();
  let room = width + 1;
  const choose = (each: Wish): void => {
    const given = Math.min(each.glad, room - 1);
    if (given < each.least) return;
    chosen.set(each.field, given);
    room -= given + 1;
  };
  const widen = (each: Wish): void => {
    const given = chosen.get(each.field) ?? each.most;
    const more = Math.min(room, each.most - given);
    if (more > 0) chosen.set(each.field, given + more);
    room -= more;
  };
  byTurn.filter((each) => each.turn < OPTIONAL).forEach(choose);
  // Alteration lists three minerals more often than sulphides do (common practice), so it is widened first.
  [...byTurn].reverse().forEach(widen);
  byTurn.filter((each) => each.turn >= OPTIONAL).forEach(choose);
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
  // What more can be said of a code has room of its own only where some is left.
  const qualities = (field.kind === 'code' && field.second ? 1 : 0) + 4 * qualifiersOf(field).length;
  const fixed = (least: number, glad: number, turn: number): Wish => ({
    field,
    least,
    glad,
    most: glad,
    turn,
  });
  const listed = (one: number, glad: number, turn: number): Wish => ({
    field,
    least: one,
    glad,
    most: 3 * one + 2,
    turn,
  });
  switch (field.kind) {
    case 'code':
      return {
        ...fixed(code, field.second ? code + 1 : code, field.required ? 0 : 5),
        most: code + qualities,
      };
    case 'percents':
      return listed(code + 2, 2 * (code + 2) + 1, 1);
    case 'levels':
      return listed(code + 1, 2 * (code + 1) + 4, 2);
    case 'codes':
      return listed(code, 2 * code + 1, 5);
    case 'events':
      return listed(code, code + 6, 5);
    case 'percent':
      return fixed(3, 4, 3);
    case 'level':
      return fixed(level, level, field.required ? 4 : 6);
    default:
      return fixed(4, 4, 7);
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
