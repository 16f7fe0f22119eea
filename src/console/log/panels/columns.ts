import {
  canBeColumn,
  type Field,
  type LoggingSchema,
  listOf,
  qualifiersOf,
  SAMPLE_COLUMNS,
  type SampleColumn,
  scaleOf,
} from '../../../schema/logging-schema.ts';

/** A column of the log on screen: of a field, or of the sample of a row. */
export interface Column {
  readonly of: Field | SampleColumn;
  readonly title: string;
  readonly width: number;
}

/** What a column wants: the narrowest it may be, how wide it gladly is, how wide it is of use, and how soon its turn comes (0 first). */
interface Wish {
  readonly of: Field | SampleColumn;
  readonly least: number;
  readonly glad: number;
  readonly most: number;
  readonly turn: number;
}

/** Turns from here on wait until the columns that list several minerals have the room that they can use. */
const OPTIONAL = 5;

/** Cells of ` +2` behind the one mineral that a narrow column has room for. */
const COUNT = 3;

/**
 * The columns that fit a width: those that the project chose, in its order, or all in the order of the log sheet. Required fields are there
 * first, if narrow. Of the others what decides most comes first, the minerals with their amounts and veins, where the project did not
 * choose; then more room for the minerals, then the other codes and levels. The whole row is on its own screen.
 */
export function columnsFor(schema: LoggingSchema, width: number): readonly Column[] {
  const wishes = wishesOf(schema);
  const byTurn = [...wishes].sort((a, b) => a.turn - b.turn);
  const chosen = new Map<Wish, number>();
  let room = width + 1;
  const choose = (each: Wish, glad: number): void => {
    if (chosen.has(each)) return;
    const given = Math.min(glad, room - 1);
    if (given < each.least) return;
    chosen.set(each, given);
    room -= given + 1;
  };
  const widen = (each: Wish, to: number): void => {
    const given = chosen.get(each);
    const more = given === undefined ? 0 : Math.min(room, to - given);
    if (given === undefined || more <= 0) return;
    chosen.set(each, given + more);
    room -= more;
  };
  const early = byTurn.filter(({ turn }) => turn < OPTIONAL);
  for (const each of [...byTurn.filter(isRequired), ...early]) choose(each, each.least);
  for (const each of [...byTurn.filter(isRequired), ...early]) widen(each, each.glad);
  // Alteration lists three minerals more often than sulphides do (common practice), so it is widened first.
  for (const each of [...byTurn].reverse()) widen(each, each.most);
  for (const each of byTurn) choose(each, each.glad);
  return wishes.flatMap((each) => {
    const given = chosen.get(each);
    return given === undefined ? [] : [{ of: each.of, title: titleOf(each.of, given), width: given }];
  });
}

function isRequired({ of }: Wish): boolean {
  return typeof of !== 'string' && of.required;
}

/** What is wished for, in the order from the left; where the project chose, in turn as it named them. */
function wishesOf(schema: LoggingSchema): readonly Wish[] {
  const fields = schema.fields.filter(canBeColumn);
  const { columns } = schema;
  if (columns === undefined) return fields.map((field) => wish(schema, field));
  const named = columns.flatMap((name): readonly (Field | SampleColumn)[] => {
    const sample = SAMPLE_COLUMNS.find((each) => each === name);
    return sample === undefined ? fields.filter((field) => field.name === name) : [sample];
  });
  const all = new Set([...fields.filter((field) => field.required && !named.includes(field)), ...named]);
  return [...all].map((of, index): Wish => {
    const turn = index / (all.size + 1);
    return typeof of === 'string' ? { ...SAMPLE_WISHES[of], of, turn } : { ...wish(schema, of), turn };
  });
}

/** A bag is known by its last digits where room is short; moisture and recovery are one word each. */
const SAMPLE_WISHES: Readonly<Record<SampleColumn, Pick<Wish, 'least' | 'glad' | 'most'>>> = {
  'bag number': { least: 4, glad: 8, most: 12 },
  'sample moisture': { least: 5, glad: 5, most: 5 },
  'sample recovery': { least: 4, glad: 4, most: 4 },
};

function wish(schema: LoggingSchema, field: Field): Wish {
  const code = Math.max(2, ...(listOf(schema, field)?.codes ?? []).map((each) => each.code.length));
  const level = Math.max(2, ...(scaleOf(schema, field)?.levels ?? []).map((each) => each.code?.length ?? 1));
  // What more can be said of a code has room of its own only where some is left.
  const qualities = (field.kind === 'code' && field.second ? 1 : 0) + 4 * qualifiersOf(field).length;
  const fixed = (least: number, glad: number, turn: number): Wish => ({
    of: field,
    least,
    glad,
    most: glad,
    turn,
  });
  const listed = (one: number, glad: number, turn: number, least = one): Wish => ({
    of: field,
    least,
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
      return listed(code + 2, 2 * (code + 2) + 1, 1, code + 2 + COUNT);
    case 'levels':
      return listed(code + 1, 2 * (code + 1) + 4, 2, code + 1 + COUNT);
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
function titleOf(field: Field | SampleColumn, width: number): string {
  if (typeof field === 'string') return SAMPLE_TITLES[field];
  const strokes = 'pair' in field && field.pair !== undefined ? field.pair : '';
  const fitting = [field.label.toLowerCase(), field.name, strokes].find(
    (title) => title !== '' && title.length <= width,
  );
  return fitting ?? field.label.toLowerCase().slice(0, width);
}

const SAMPLE_TITLES: Readonly<Record<SampleColumn, string>> = {
  'bag number': 'bag',
  'sample moisture': 'moist',
  'sample recovery': 'rec',
};
