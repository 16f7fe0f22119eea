import { parseLine } from '../../src/shorthand/parse.ts';
import { rockField } from '../../src/shorthand/rock.ts';
import type { AskAbout } from '../../src/shorthand/said.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import type { Cell } from '../../src/value/cell.ts';
import { sameObservation } from '../../src/value/row.ts';
import type { Placed } from './shorthand-costs.ts';

/** A US keyboard: rows of keys with how far each row stands to the right, in keys. */
const KEYBOARD = [
  { keys: '`1234567890-=', offset: 0 },
  { keys: 'qwertyuiop[]\\', offset: 1.5 },
  { keys: "asdfghjkl;'", offset: 1.75 },
  { keys: 'zxcvbnm,./', offset: 2.25 },
] as const;

const PLACES = new Map(
  KEYBOARD.flatMap(({ keys, offset }, row) =>
    [...keys].map((key, index) => [key, { row, x: index + offset }] as const),
  ),
);

function neighbours(key: string): readonly string[] {
  const at = PLACES.get(key);
  if (at === undefined) return [];
  return [...PLACES]
    .filter(([other, place]) => {
      const across = Math.abs(place.x - at.x);
      return (
        other !== key &&
        (place.row === at.row ? across === 1 : Math.abs(place.row - at.row) === 1 && across < 1)
      );
    })
    .map(([other]) => other);
}

/** Every line that one slip makes of a line: a neighbouring key hit, a key left out, a key struck twice. */
export function slipsIn(line: string): readonly string[] {
  return [...line].flatMap((key, at) => {
    const before = line.slice(0, at);
    const after = line.slice(at + 1);
    return [
      before + after,
      before + key + key + after,
      ...neighbours(key).map((other) => before + other + after),
    ];
  });
}

/** What single-key typing errors in the shortest lines of a log come to, counted alike. */
export type Slips = {
  readonly slips: number;
  /** A different row, valid, without a question. */
  readonly silent: number;
  /** A different row, taken with nothing but a note in the echo: the line restates something. */
  readonly noted: number;
  /** Of the silent ones: with another rock. */
  readonly wrongRock: number;
  readonly asked: number;
  readonly refused: number;
  /** Of those asked: what one rule alone caught, by rule. */
  readonly caughtBy: ReadonlyMap<AskAbout, number>;
};

/** Which rocks a cell holds, whatever their shares. */
function rocksIn(cell: Cell | undefined): string {
  return cell !== undefined && 'code' in cell ? `${cell.code} ${cell.second?.code ?? ''}` : '';
}

/** A line as it is typed before anything is asked: without its `=`. The odd quoted code aside, no other `=` stands in a line. */
export function beforeAsking(line: string): string {
  return line
    .replace(/('[^ '=]+)=(?=[a-z])/g, '$1 ')
    .replaceAll('=', '')
    .trimEnd();
}

/**
 * Types every slip of every shortest line and counts what comes of it. `ahead`: with each `=` typed ahead of its question,
 * as in a pipe; else as at the console, where the question comes first.
 */
export function slipsOver(rows: readonly Placed[], ahead = false): Slips {
  const counts = { slips: 0, silent: 0, noted: 0, wrongRock: 0, asked: 0, refused: 0 };
  const caughtBy = new Map<AskAbout, number>();
  for (const { row, context } of rows) {
    const written = writeLine(row, context);
    const rock = rockField(context.schema)?.name ?? '';
    for (const slip of slipsIn(ahead ? written : beforeAsking(written))) {
      counts.slips += 1;
      const parsed = parseLine(slip, context);
      if (parsed.kind === 'refused') counts.refused += 1;
      if (parsed.kind !== 'row') continue;
      if (parsed.asks.length > 0) {
        counts.asked += 1;
        const rules = new Set(parsed.asks.map(({ about }) => about));
        const [only] = rules;
        if (rules.size === 1 && only !== undefined && !sameObservation(parsed.row, row))
          caughtBy.set(only, (caughtBy.get(only) ?? 0) + 1);
      } else if (!sameObservation(parsed.row, row)) {
        if (parsed.notes.length > 0) counts.noted += 1;
        else counts.silent += 1;
        if (rocksIn(parsed.row.cells[rock]) !== rocksIn(row.cells[rock])) counts.wrongRock += 1;
      }
    }
  }
  return { ...counts, caughtBy };
}

/** True rows of a log that each rule asks about, alone or with others, before their `=` is typed. */
export function askedBy(rows: readonly Placed[]): ReadonlyMap<AskAbout, number> {
  const counts = new Map<AskAbout, number>();
  for (const { row, context } of rows) {
    const parsed = parseLine(beforeAsking(writeLine(row, context)), context);
    if (parsed.kind !== 'row') continue;
    for (const about of new Set(parsed.asks.map((ask) => ask.about)))
      counts.set(about, (counts.get(about) ?? 0) + 1);
  }
  return counts;
}
