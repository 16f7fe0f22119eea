import { performance } from 'node:perf_hooks';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { resolveStyle } from '../../src/schema/resolve.ts';
import { explain } from '../../src/shorthand/explain.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import type { RowSaid } from '../../src/value/row.ts';
import {
  adaptiveBits,
  changesIn,
  copyDownKeys,
  floorOf,
  placed,
  spreadsheetKeys,
} from './shorthand-costs.ts';
import { type Slips, slipsOver } from './shorthand-errors.ts';
import { generatedLog, NOISE, type Noise } from './shorthand-log.ts';
import { sampleLogs } from './shorthand-projects.ts';
import { sampleLog } from './shorthand-sample.ts';

/** Keys that a line can be typed with: letters, digits, and the punctuation and white keys of the grammar. */
const KEYS = 49;
/** Keystroke-level model (Card, Moran and Newell 1980): a key by an average typist, and a mental preparation, in seconds. */
const KEY_S = 0.28;
const MENTAL_S = 1.35;

/** What one log costs to enter. Keys count Enter; shares are 0 to 1. */
type EntryFigures = {
  readonly log: string;
  readonly rows: number;
  readonly changesPerRow: number;
  readonly keysMean: number;
  readonly keysP90: number;
  readonly timesFloor: number;
  readonly entropyKeys: number;
  readonly spreadsheetKeys: number;
  readonly copyDownKeys: number;
  readonly silent: number;
  /** The same with each `=` typed ahead of its question. */
  readonly silentAhead: number;
  readonly wrongRock: number;
  readonly gloveKeys: number;
  readonly gloveSilent: number;
  readonly gloveAsked: number;
  readonly asked: number;
  /** A model: one mental preparation a row and one a change, and a key's time for each key. */
  readonly modelledSeconds: number;
};

/** Measures the entry of a log, row by row, in its shortest lines. */
function entryFigures(log: string, schema: LoggingSchema, rows: readonly RowSaid[]): EntryFigures {
  const bare = placed(schema, rows, false);
  const gloved = placed(schema, rows, true);
  const lines = bare.map(({ row, context }) => writeLine(row, context));
  const gloveLines = gloved.map(({ row, context }) => writeLine(row, context));
  const keys = lines.map((line) => line.length + 1);
  const changes = bare.map(changesIn);
  const slips = slipsOver(bare);
  const keysMean = mean(keys);
  return {
    log,
    rows: rows.length,
    changesPerRow: mean(changes),
    keysMean,
    keysP90: [...keys].sort((a, b) => a - b)[Math.floor(0.9 * keys.length)] ?? 0,
    timesFloor: keysMean / mean(changes.map(floorOf)),
    entropyKeys: adaptiveBits(schema, rows) / Math.log2(KEYS) / rows.length,
    spreadsheetKeys: mean(bare.map(spreadsheetKeys)),
    copyDownKeys: mean(bare.map(copyDownKeys)),
    silent: shareSilent(slips),
    silentAhead: shareSilent(slipsOver(bare, true)),
    wrongRock: slips.wrongRock / slips.slips,
    gloveKeys: mean(gloveLines.map((line) => line.length + 1)),
    gloveSilent: shareSilent(slipsOver(gloved)),
    gloveAsked: gloveLines.filter((line) => line.includes('=')).length / lines.length,
    asked: lines.filter((line) => line.includes('=')).length / lines.length,
    modelledSeconds: MENTAL_S * (1 + mean(changes)) + KEY_S * keysMean,
  };
}

function shareSilent({ silent, slips }: Slips): number {
  return silent / slips;
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, each) => sum + each, 0) / numbers.length;
}

/** Milliseconds to read and explain a line with a schema of 300 codes: median and 90th percentile of 2,000 after a warm-up. */
function parseTimes(): { readonly codes: number; readonly medianMs: number; readonly p90Ms: number } {
  const schema = withCodes(styled('orogenic-gold'), 300);
  const rows = placed(schema, generatedLog(schema, 7, 'restless', 200), false).map(({ row, context }) => ({
    line: writeLine(row, context),
    context,
  }));
  const once = ({ line, context }: (typeof rows)[number]): number => {
    const start = performance.now();
    const parsed = parseLine(line, context);
    if (parsed.kind === 'row') explain(parsed.row, context);
    return performance.now() - start;
  };
  for (const row of rows) once(row);
  const times = Array.from({ length: 10 }, () => rows.map(once))
    .flat()
    .sort((a, b) => a - b);
  const codes = Object.values(schema.lists).reduce((sum, list) => sum + list.codes.length, 0);
  return {
    codes,
    medianMs: times[times.length / 2] ?? 0,
    p90Ms: times[Math.floor(0.9 * times.length)] ?? 0,
  };
}

function styled(name: string): LoggingSchema {
  const schema = resolveStyle(name);
  if (schema === undefined) throw new Error(`no style is called ${name}`);
  return schema;
}

/** The schema with codes without strokes added to its first list until it holds so many. */
function withCodes(schema: LoggingSchema, count: number): LoggingSchema {
  const [list] = Object.values(schema.lists);
  if (list === undefined) return schema;
  const there = Object.values(schema.lists).reduce((sum, each) => sum + each.codes.length, 0);
  const more = Array.from({ length: Math.max(0, count - there) }, (_, index) => ({
    code: `X${index}`,
    label: `rock ${index}`,
    look: '',
  }));
  return { ...schema, lists: { ...schema.lists, [list.name]: { ...list, codes: [...list.codes, ...more] } } };
}

/** The figures of generated logs at each noise, `holes` a noise, pooled into one log each. */
function generatedFigures(style: string, holes = 6, metres = 120): readonly EntryFigures[] {
  const schema = styled(style);
  return (Object.keys(NOISE) as readonly Noise[]).map((noise) => {
    const figures = Array.from({ length: holes }, (_, index) =>
      entryFigures(`${style}, ${noise}`, schema, generatedLog(schema, 100 + index, noise, metres)),
    );
    const pooled = (name: keyof EntryFigures): number => mean(figures.map((each) => Number(each[name])));
    const first = figures[0] as EntryFigures;
    const names = Object.keys(first).filter((name) => name !== 'log') as readonly (keyof EntryFigures)[];
    return {
      ...first,
      ...Object.fromEntries(names.map((name) => [name, pooled(name)])),
      rows: holes * metres,
    };
  });
}

const AIMS: readonly { readonly what: string; readonly holds: (figures: EntryFigures) => boolean }[] = [
  { what: 'keys at most 1.15 × the floor', holds: (each) => each.timesFloor <= 1.15 },
  {
    what: 'keys at most 1/6 of a spreadsheet row (up to 2.5 changes a row)',
    holds: (each) => each.changesPerRow > 2.5 || each.keysMean <= each.spreadsheetKeys / 6,
  },
  { what: 'keys at most 1/3 of copy-down', holds: (each) => each.keysMean <= each.copyDownKeys / 3 },
  { what: 'silent slips at most 2 %', holds: (each) => each.silent <= 0.02 },
  { what: 'silent slips in gloves mode at most 1 %', holds: (each) => each.gloveSilent <= 0.01 },
  { what: 'wrong rock at most 0.1 %', holds: (each) => each.wrongRock <= 0.001 },
  { what: 'asked at most 7 % of rows', holds: (each) => each.asked <= 0.07 },
];

/** Figures as lines of text, with the aims that are missed. */
function figureLines(figures: EntryFigures): readonly string[] {
  const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
  return [
    `${figures.log}: ${figures.rows} rows, ${figures.changesPerRow.toFixed(2)} changes a row`,
    `  keys a row ${figures.keysMean.toFixed(2)}, 90th percentile ${figures.keysP90.toFixed(0)}; ${figures.timesFloor.toFixed(3)} × the floor max(2, 1 + 2 × changes)`,
    `  adaptive order-1 entropy (Krichevsky–Trofimov) over log2(${KEYS}): ${figures.entropyKeys.toFixed(2)} keys a row`,
    `  spreadsheet with tabs ${figures.spreadsheetKeys.toFixed(1)} (1/${(figures.spreadsheetKeys / figures.keysMean).toFixed(1)}), copy-down with arrows ${figures.copyDownKeys.toFixed(1)} (1/${(figures.copyDownKeys / figures.keysMean).toFixed(1)})`,
    `  silent slips ${percent(figures.silent)} (${percent(figures.silentAhead)} with = typed ahead), wrong rock ${percent(figures.wrongRock)}; rows asked ${percent(figures.asked)}`,
    `  gloves mode: ${figures.gloveKeys.toFixed(2)} keys a row, silent slips ${percent(figures.gloveSilent)}; rows asked ${percent(figures.gloveAsked)}`,
    `  modelled (keystroke-level model): ${figures.modelledSeconds.toFixed(1)} s a row`,
    ...AIMS.filter(({ holds }) => !holds(figures)).map(({ what }) => `  AIM MISSED: ${what}`),
  ];
}

/** Everything the bench says of the entry line. */
export function shorthandLines(): readonly string[] {
  const { codes, medianMs, p90Ms } = parseTimes();
  const schema = styled('orogenic-gold');
  return [
    ...figureLines(entryFigures('orogenic-gold, sample hole', schema, sampleLog(schema))),
    ...sampleLogs().flatMap((log) => figureLines(entryFigures(log.name, log.schema, log.rows))),
    ...generatedFigures('orogenic-gold').flatMap(figureLines),
    `parse and explain with ${codes} codes: ${medianMs.toFixed(3)} ms median, ${p90Ms.toFixed(3)} ms 90th percentile (aim: under 1 ms)`,
  ];
}
