// What termination rules cost from scratch: 20 rules over logs of 200, 2,000 and 5,000 m, in milliseconds and as a ratio to one
// pass over the rows that reads one field of each. Run with tsx.
import { performance } from 'node:perf_hooks';
import { adviceOf } from '../../src/termination/advice/verdict.ts';
import { evaluateRules } from '../../src/termination/evaluate/evaluate-rule.ts';
import type { Situation } from '../../src/termination/evaluate/situation.ts';
import type { Rule, RuleCondition } from '../../src/termination/rules/rule.ts';
import { basalt, row, rule, situation } from '../termination/build.ts';
import { against } from './aim.ts';

/** The rules over 2,000 m, as a ratio to one pass over the rows. */
const AIM = 5;

/** Pyrite by metre. `zones`: a lode of 12 m every 60, background between. `every metre`: up and down across every cut-off, the dear case. */
const PYRITE = {
  zones: (m: number) => (m % 60 < 12 ? 0.5 + (m % 5) : m % 9 === 0 ? 0.1 : 0),
  'every metre': (m: number) => (m % 3 === 0 ? 0 : ((m * 7) % 5) + 0.5),
};

/** Rows of a metre, one in 97 without return. */
function hole(lengthM: number, pyriteAt: (m: number) => number): Situation {
  const rows = Array.from({ length: lengthM }, (_, m) =>
    m % 97 === 0
      ? row(m, m + 1, 'no return')
      : row(m, m + 1, {
          ...basalt(pyriteAt(m)),
          weathering: { level: m < 40 ? 2 : 1 },
          suscept: { number: (m * 13) % 29 },
        }),
  );
  const header = { logFromMm: 0, intervalMm: 1000, rodMm: 6000, firstRodOffsetMm: 0 } as never;
  const stream = rows.map(({ fromMm, toMm }, m) => ({
    fromMm,
    toMm,
    moisture: m % 11 === 0 ? ('wet' as const) : ('dry' as const),
  }));
  return situation(rows, { header, stream, plan: { depthMm: 120_000 } as never });
}

const pyrite = (lessThan: number) => ({ field: 'sulphides', of: 'PYR', lessThan });

/** 20 rules of every sort, each with a cut-off of its own so that none can share another's work. */
const CONDITIONS: readonly RuleCondition[] = [
  ...[1, 1.1, 1.2, 1.3].map((cut) => ({ inARow: { where: pyrite(cut), forM: 10 } })),
  ...[1.4, 1.6, 1.7].map((cut) => ({ ofLast: { where: pyrite(cut), atLeastM: 16, ofM: 20 } })),
  ...[2.1, 2.2].map((cut) => ({ seen: { where: { not: pyrite(cut) }, forM: 4000 } })),
  ...[2.6, 2.7].map((cut) => ({ sinceLastSeen: { where: { not: pyrite(cut) }, atLeastM: 15 } })),
  { share: { where: pyrite(3), atLeastPercent: 60 } },
  { pastContact: { into: { field: 'weathering', is: 'frs' }, byM: 20 } },
  { instrumentBelow: { field: 'suscept', lessThan: 5, forM: 10 } },
  { wetInARow: { forM: 6 } },
  { noReturnInARow: { forM: 6 } },
  { rodFinished: {} },
  { plannedDepthReached: { plusM: 0 } },
  { minimumReached: { minimumM: 60 } },
  { all: [{ maximumReached: { maximumM: 180 } }, { inARow: { where: pyrite(1.8), forM: 3 } }] },
];
const RULES: readonly Rule[] = CONDITIONS.map((when, index) => rule(when, { name: `rule ${index + 1}` }));

/** How long some runs take, after as many to warm up, in milliseconds: the median, and the quickest, which other programs disturb least. */
function timesMs(run: () => unknown): { readonly median: number; readonly quickest: number } {
  const times: number[] = [];
  for (let round = 0; round < 80; round++) {
    const start = performance.now();
    run();
    times.push(performance.now() - start);
  }
  const sorted = times.slice(40).sort((a, b) => a - b);
  return { median: sorted[20]!, quickest: sorted[0]! };
}

function onePass({ rows }: Situation): number {
  let sum = 0;
  for (const { cells } of rows) {
    const cell = cells.sulphides;
    if (cell !== undefined && 'percents' in cell && cell.percents.PYR !== 'trace')
      sum += cell.percents.PYR ?? 0;
  }
  return sum;
}

/** A copy of the situation: nothing that was read from it before is known of it. */
function fromScratch(at: Situation): unknown {
  const copy = { ...at };
  return adviceOf(evaluateRules(RULES, copy), copy);
}

for (const [changes, pyriteAt] of Object.entries(PYRITE)) {
  for (const lengthM of [200, 2000, 5000]) {
    const at = hole(lengthM, pyriteAt);
    const rules = timesMs(() => fromScratch(at));
    const pass = timesMs(() => onePass(at));
    console.log(
      `${RULES.length} termination rules over ${lengthM} m (${changes}): median ${rules.median.toFixed(2)} ms, quickest ${rules.quickest.toFixed(2)} ms, ${(rules.quickest / pass.quickest).toFixed(0)} × one pass over the rows (${pass.quickest.toFixed(3)} ms)`,
    );
    if (changes === 'zones' && lengthM === 2000)
      against('over one pass', rules.quickest / pass.quickest, AIM);
  }
}
