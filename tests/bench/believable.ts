import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { sameObservation } from '../../src/value/row.ts';
import { HANDS, type Hand, typedBy } from './believable-lines.ts';
import { believableLog } from './believable-log.ts';
import { type Placed, placed } from './shorthand-costs.ts';
import { slipsIn } from './shorthand-errors.ts';
import { seeded } from './shorthand-log.ts';

const HOLES = 12;
const METRES = 120;
const FIRST_SEED = 500;

/** What right lines are stopped for and what slips pass, in logs that no rule was set on. Shares are 0 to 1. */
type Stops = {
  readonly rows: number;
  /** Right lines that were asked about or refused. */
  readonly needless: number;
  readonly byRule: ReadonlyMap<string, number>;
  /** Of single-key slips: wrong rows that nothing is said of, and those of which only a note in the echo says something. */
  readonly silent: number;
  readonly noted: number;
};

/** Types every row of the held-out logs as one person would, and every slip in those lines. */
function stopsOf(schema: LoggingSchema, hand: Hand, gloves: boolean): Stops {
  const random = seeded(9);
  const rows = Array.from({ length: HOLES }, (_, hole) =>
    placed(schema, believableLog(schema, FIRST_SEED + hole, METRES), gloves),
  ).flat();
  const byRule = new Map<string, number>();
  const counts = { needless: 0, slips: 0, silent: 0, noted: 0 };
  for (const each of rows) {
    const line = typedBy(hand, each, random);
    const rules = stoppedBy(line, each);
    if (rules.size > 0) counts.needless += 1;
    for (const rule of rules) byRule.set(rule, (byRule.get(rule) ?? 0) + 1);
    for (const slip of slipsIn(line)) {
      counts.slips += 1;
      const read = parseLine(slip, each.context);
      if (read.kind !== 'row' || read.asks.length > 0 || sameObservation(read.row, each.row)) continue;
      counts[read.notes.length > 0 ? 'noted' : 'silent'] += 1;
    }
  }
  return {
    rows: rows.length,
    needless: counts.needless / rows.length,
    byRule,
    silent: counts.silent / counts.slips,
    noted: counts.noted / counts.slips,
  };
}

/** What a right line is stopped for, as it is typed. */
export function stoppedBy(line: string, { context }: Placed): ReadonlySet<string> {
  const read = parseLine(line, context);
  if (read.kind !== 'row') return new Set(['refused']);
  return new Set(read.asks.map(({ about }) => about));
}

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;

/** The figures of held-out logs of a style, person by person, bare and in gloves, with the aims that are missed. */
export function believableLines(style: string, schema: LoggingSchema): readonly string[] {
  return [false, true].flatMap((gloves) => {
    const figures = HANDS.map((hand) => ({ hand, ...stopsOf(schema, hand, gloves) }));
    const mean = figures.reduce((sum, { needless }) => sum + needless, 0) / figures.length;
    const aim = gloves ? 0.06 : 0.03;
    return [
      `${style}, held-out logs${gloves ? ', gloves mode' : ''}`,
      ...figures.map(
        ({ hand, rows, needless, silent, noted, byRule }) =>
          `  says again what is in ${percent(hand.again)} of rows: needless stops ${percent(needless)} of ${rows} rows (${ruleWords(byRule, rows)}); silent slips ${percent(silent)}, noted in the echo ${percent(noted)}`,
      ),
      ...(mean > aim ? [`  AIM MISSED: needless stops at most ${percent(aim)}: ${percent(mean)}`] : []),
    ];
  });
}

function ruleWords(byRule: Stops['byRule'], rows: number): string {
  return [...byRule]
    .sort((a, b) => b[1] - a[1])
    .map(([rule, count]) => `${rule} ${percent(count / rows)}`)
    .join(', ');
}
