import { parseLine } from '../../src/shorthand/parse.ts';
import type { Said } from '../../src/shorthand/said.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import { changesIn, floorOf, type Placed } from './shorthand-costs.ts';

/** Keys of the shortest lines of a log over the explicit floor, by what they go to, as shares of the floor; the largest first. */
export function overTheFloor(
  rows: readonly Placed[],
): readonly { readonly cause: string; readonly share: number }[] {
  const keys = new Map<string, number>();
  let floor = 0;
  for (const placed of rows) {
    const line = writeLine(placed.row, placed.context);
    const least = floorOf(changesIn(placed));
    floor += least;
    for (const [cause, count] of causesIn(line, least, placed))
      keys.set(cause, (keys.get(cause) ?? 0) + count);
  }
  return [...keys]
    .map(([cause, count]) => ({ cause, share: count / floor }))
    .filter(({ share }) => share >= 0.001)
    .sort((a, b) => b.share - a.share);
}

type Cause = readonly [cause: string, keys: number];

function causesIn(line: string, least: number, { context }: Placed): readonly Cause[] {
  if (context.above === undefined) return [['first rows', line.length + 1 - least]];
  const read = parseLine(line, context);
  if (read.kind !== 'row') return [];
  return [
    ['= where asked', (line.match(/=/g) ?? []).length],
    ['spaces', (line.match(/ /g) ?? []).length],
    ...read.said.flatMap(costsOf),
  ];
}

/** What an item costs over two keys: a letter more than a single key, a digit more, a name. */
function costsOf({ text, field }: Said): readonly Cause[] {
  if (text.includes("'")) return [['said by the field’s name', text.length - 2]];
  const letters = /^[a-z]+/.exec(text)?.[0] ?? '';
  const amount = text.slice(letters.length);
  if (amount === '') return [];
  const pair: readonly Cause[] =
    letters.length === 2
      ? [[field.kind === 'code' ? 'shares of a second rock' : 'pairs before an amount', 1]]
      : [];
  return [...pair, ['amounts of two digits', amount.length - 1]];
}
