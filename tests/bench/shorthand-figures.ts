import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import type { AskAbout } from '../../src/shorthand/said.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import type { RowSaid } from '../../src/value/row.ts';
import { overTheFloor } from './shorthand-causes.ts';
import {
  adaptiveBits,
  changesIn,
  copyDownKeys,
  floorOf,
  placed,
  spreadsheetKeys,
} from './shorthand-costs.ts';
import { askedBy, type Slips, slipsOver } from './shorthand-errors.ts';
import { type Likeness, likenessOf } from './shorthand-likeness.ts';

/** Keys that a line can be typed with: letters, digits, and the punctuation and white keys of the grammar. */
export const KEYS = 49;
/** Keystroke-level model (Card, Moran and Newell 1980): a key by an average typist, and a mental preparation, in seconds. */
const KEY_S = 0.28;
const MENTAL_S = 1.35;

/** What logs cost to enter. Keys count Enter; shares are 0 to 1. */
export type EntryFigures = {
  readonly log: string;
  readonly rows: number;
  readonly changesPerRow: number;
  readonly keysMean: number;
  readonly keysP90: number;
  readonly floorMean: number;
  /** What the keys over the floor go to. */
  readonly over: ReturnType<typeof overTheFloor>;
  readonly entropyKeys: number;
  readonly spreadsheetKeys: number;
  readonly copyDownKeys: number;
  /** Wrong rows that nothing is said of. */
  readonly silent: number;
  /** Wrong rows of which the echo says only that they restate something. */
  readonly noted: number;
  readonly gloveNoted: number;
  /** The same with each `=` typed ahead of its question. */
  readonly silentAhead: number;
  readonly wrongRock: number;
  readonly gloveKeys: number;
  readonly gloveSilent: number;
  readonly gloveAsked: number;
  readonly asked: number;
  /** By rule: the share of true rows that it asks about, and the share of slips that it alone catches. */
  readonly rules: readonly { readonly about: AskAbout; readonly asked: number; readonly caught: number }[];
  /** A model: one mental preparation a row and one a change, and a key's time for each key. */
  readonly modelledSeconds: number;
  readonly likeness: Likeness;
};

/** Measures the entry of logs of one kind, row by row, in their shortest lines. */
export function entryFigures(
  log: string,
  schema: LoggingSchema,
  logs: readonly (readonly RowSaid[])[],
): EntryFigures {
  const bare = logs.flatMap((rows) => placed(schema, rows, false));
  const gloved = logs.flatMap((rows) => placed(schema, rows, true));
  const lines = bare.map(({ row, context }) => writeLine(row, context));
  const gloveLines = gloved.map(({ row, context }) => writeLine(row, context));
  const keys = lines.map((line) => line.length + 1);
  const changes = bare.map(changesIn);
  const slips = slipsOver(bare);
  const gloveSlips = slipsOver(gloved);
  const bits = logs.reduce((sum, rows) => sum + adaptiveBits(schema, rows), 0);
  return {
    log,
    rows: bare.length,
    changesPerRow: mean(changes),
    keysMean: mean(keys),
    keysP90: [...keys].sort((a, b) => a - b)[Math.floor(0.9 * keys.length)] ?? 0,
    floorMean: mean(changes.map(floorOf)),
    over: overTheFloor(bare),
    entropyKeys: bits / Math.log2(KEYS) / bare.length,
    spreadsheetKeys: mean(bare.map(spreadsheetKeys)),
    copyDownKeys: mean(bare.map(copyDownKeys)),
    silent: slips.silent / slips.slips,
    noted: slips.noted / slips.slips,
    silentAhead: shareSilent(slipsOver(bare, true)),
    wrongRock: slips.wrongRock / slips.slips,
    gloveKeys: mean(gloveLines.map((line) => line.length + 1)),
    gloveSilent: shareSilent(gloveSlips),
    gloveNoted: gloveSlips.noted / gloveSlips.slips,
    gloveAsked: shareAsked(gloveLines),
    asked: shareAsked(lines),
    rules: rulesOf(askedBy(bare), slips, bare.length),
    modelledSeconds: MENTAL_S * (1 + mean(changes)) + KEY_S * mean(keys),
    likeness: likenessOf(bare),
  };
}

function rulesOf(
  asked: ReadonlyMap<AskAbout, number>,
  { caughtBy, slips }: Slips,
  rows: number,
): EntryFigures['rules'] {
  return [...new Set([...asked.keys(), ...caughtBy.keys()])]
    .map((about) => ({
      about,
      asked: (asked.get(about) ?? 0) / rows,
      caught: (caughtBy.get(about) ?? 0) / slips,
    }))
    .sort((a, b) => b.asked - a.asked || b.caught - a.caught);
}

function shareAsked(lines: readonly string[]): number {
  return lines.filter((line) => line.includes('=')).length / lines.length;
}

function shareSilent({ silent, slips }: Slips): number {
  return silent / slips;
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, each) => sum + each, 0) / numbers.length;
}
