import { performance } from 'node:perf_hooks';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { STYLES } from '../../src/schema/styles/index.ts';
import { explain } from '../../src/shorthand/explain.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import { resolveStyle } from '../support/styles.ts';
import { believableLines } from './believable.ts';
import { missedLines } from './shorthand-aims.ts';
import { placed } from './shorthand-costs.ts';
import { type EntryFigures, entryFigures, KEYS } from './shorthand-figures.ts';
import { generatedLog, NOISE, type Noise } from './shorthand-log.ts';
import { sampleLogs } from './shorthand-projects.ts';
import { sampleLog } from './shorthand-sample.ts';

/** Holes of a noise and their metres: enough that another seed moves no figure across an aim. */
const HOLES = 24;
const METRES = 120;
const FIRST_SEED = 100;

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

/** The figures of generated logs of a style at each noise. */
function generatedFigures(style: string): readonly EntryFigures[] {
  const schema = styled(style);
  return (Object.keys(NOISE) as readonly Noise[]).map((noise) => {
    const logs = Array.from({ length: HOLES }, (_, index) =>
      generatedLog(schema, FIRST_SEED + index, noise, METRES),
    );
    return entryFigures(`${style}, generated, ${noise}`, schema, logs);
  });
}

const percent = (share: number, decimals = 2): string => `${(100 * share).toFixed(decimals)} %`;

/** Figures as lines of text, with the aims that are missed and what is in their way. */
function figureLines(figures: EntryFigures): readonly string[] {
  const { likeness } = figures;
  const timesLess = (others: number): string => `1/${(others / figures.keysMean).toFixed(1)}`;
  return [
    `${figures.log}: ${figures.rows} rows, ${figures.changesPerRow.toFixed(2)} changes a row`,
    `  like this: ${percent(likeness.unchanged, 0)} of rows unchanged, ${percent(likeness.newRock, 0)} a new rock; of moves ${percent(likeness.farLevels, 0)} of levels by 2 or more, ${percent(likeness.farPercents, 0)} of percents by 3 steps or more; ${likeness.codesPerRow.toFixed(1)} minerals a row`,
    `  keys a row ${figures.keysMean.toFixed(2)}, 90th percentile ${figures.keysP90.toFixed(0)}; ${(figures.keysMean / figures.floorMean).toFixed(3)} × the floor max(2, 1 + 2 × changes), ${figures.floorMean.toFixed(2)}`,
    `  adaptive order-1 entropy (Krichevsky–Trofimov) over log2(${KEYS}): ${figures.entropyKeys.toFixed(2)} keys a row`,
    `  spreadsheet with tabs ${figures.spreadsheetKeys.toFixed(1)} (${timesLess(figures.spreadsheetKeys)}), copy-down with arrows ${figures.copyDownKeys.toFixed(1)} (${timesLess(figures.copyDownKeys)})`,
    `  silent slips ${percent(figures.silent)} (${percent(figures.silentAhead)} with = typed ahead), noted in the echo ${percent(figures.noted)}, wrong rock ${percent(figures.wrongRock)}; rows asked ${percent(figures.asked)}`,
    `  gloves mode: ${figures.gloveKeys.toFixed(2)} keys a row, silent slips ${percent(figures.gloveSilent)}, noted ${percent(figures.gloveNoted)}; rows asked ${percent(figures.gloveAsked)}`,
    `  modelled (keystroke-level model): ${figures.modelledSeconds.toFixed(1)} s a row`,
    ...missedLines(figures),
  ];
}

/** Rule by rule, over all generated logs of a style: what asking costs, and what it alone catches. */
function ruleLines(figures: EntryFigures): readonly string[] {
  return figures.rules.map(
    ({ about, asked, caught }) =>
      `  ${about}: asks ${percent(asked)} of true rows, alone catches ${percent(caught)} of slips`,
  );
}

/** Everything the bench says of the entry line. */
export function shorthandLines(): readonly string[] {
  const { codes, medianMs, p90Ms } = parseTimes();
  const schema = styled('orogenic-gold');
  const generated = Object.keys(STYLES).flatMap(generatedFigures);
  return [
    ...figureLines(entryFigures('orogenic-gold, sample hole', schema, [sampleLog(schema)])),
    ...sampleLogs().flatMap((log) => figureLines(entryFigures(log.name, log.schema, [log.rows]))),
    ...generated.flatMap(figureLines),
    ...Object.keys(STYLES).flatMap((style) => believableLines(style, styled(style))),
    ...generated.flatMap((figures) => [`what is asked, ${figures.log}`, ...ruleLines(figures)]),
    `parse and explain with ${codes} codes: ${medianMs.toFixed(3)} ms median, ${p90Ms.toFixed(3)} ms 90th percentile (aim: under 1 ms)`,
  ];
}
