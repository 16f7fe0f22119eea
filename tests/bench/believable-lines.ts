import type { Field } from '../../src/schema/logging-schema.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { isNewRock } from '../../src/shorthand/rock.ts';
import { typingIndex } from '../../src/shorthand/typing-index.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import type { Amount, Cell } from '../../src/value/cell.ts';
import { sameObservation } from '../../src/value/row.ts';
import type { Placed } from './shorthand-costs.ts';
import { beforeAsking } from './shorthand-errors.ts';

/** How a person types: the chance that a row which says something says again what stands, and that a new rock is said in full. */
export type Hand = { readonly again: number; readonly full: number };

/** From one who types only what changed to one who says most of it each time. */
export const HANDS: readonly Hand[] = [
  { again: 0, full: 0 },
  { again: 0.15, full: 0.5 },
  { again: 0.4, full: 1 },
];

/** The line as this person types it, nothing insisted on: the shortest one, and before it what the person says again. It always says the row. */
export function typedBy({ again, full }: Hand, { row, context }: Placed, random: () => number): string {
  const shortest = beforeAsking(writeLine(row, context));
  const { schema, above } = context;
  if (above === undefined || row.noReturn || shortest === '.') return shortest;
  const isFull = isNewRock(schema, above, row.cells) && random() < full;
  if (!isFull && random() >= again) return shortest;
  const standing = schema.fields.flatMap((field) =>
    saidAloud(context, field, above.cells[field.name], row.cells[field.name]),
  );
  const said = isFull ? standing : standing.filter(() => random() < 2 / standing.length);
  const line = `${said.join('')}${shortest}`;
  const read = parseLine(line, context);
  return read.kind === 'row' && sameObservation(read.row, row) ? line : shortest;
}

/** What is in a field as above, said by its pairs; nothing of what has none. */
function saidAloud(
  { schema }: Placed['context'],
  field: Field,
  before: Cell | undefined,
  after: Cell | undefined,
) {
  const index = typingIndex(schema);
  const stroke = (code: string | undefined, amount: Amount | ''): readonly string[] => {
    const { pair } = index.strokesOf(field, code);
    return pair === undefined ? [] : [`${pair}${amount === 'trace' ? ',' : amount}`];
  };
  if (before === undefined || after === undefined) return [];
  if ('code' in before && 'code' in after)
    return before.code === after.code && after.second === undefined ? stroke(after.code, '') : [];
  if ('level' in before && 'level' in after)
    return before.level === after.level ? stroke(undefined, after.level) : [];
  if ('percent' in before && 'percent' in after)
    return before.percent === after.percent ? stroke(undefined, after.percent) : [];
  const [was, is] = [amountsIn(before), amountsIn(after)];
  return Object.entries(is).flatMap(([code, amount]) => (was[code] === amount ? stroke(code, amount) : []));
}

function amountsIn(cell: Cell): { readonly [code: string]: Amount } {
  if ('levels' in cell) return cell.levels;
  return 'percents' in cell ? cell.percents : {};
}
