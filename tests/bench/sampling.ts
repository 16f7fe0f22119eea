/** Figures of the rod check on simulated holes: `npx tsx tests/bench/sampling.ts`, with a seed behind it to repeat a run. */

import { bestFromNumbers, confusion, sameNumbers, simulate } from '../sampling/figures.ts';
import { NO_TRACE } from '../sampling/no-trace.ts';
import { drill, type Outcome } from '../sampling/simulator.ts';
import { SLIPS, WITHOUT_TRACE } from '../sampling/slips.ts';

const HOLES = 1000;
/** Holes that the ceiling of naming from numbers alone is counted on: with few it looks higher than it is. */
const MANY = 8000;
const seed = Number(process.argv[2] ?? Date.now() % 1_000_000_000);
const started = performance.now();
const outcomes = simulate(seed, HOLES);
const clean = Array.from({ length: HOLES }, (_, index) => drill(seed + HOLES + index, 'none'));
const many = simulate(seed + 2 * HOLES, MANY);

const percent = (part: number, whole: number): string =>
  whole === 0 ? '-' : `${((100 * part) / whole).toFixed(1)} %`;
const row = (name: string, all: readonly Outcome[]): string => {
  const made = all.filter((each) => each.made);
  const visible = made.filter((each) => each.visible);
  const count = (holds: (each: Outcome) => boolean) => visible.filter(holds).length;
  return [
    name.padEnd(30),
    String(made.length).padStart(6),
    String(visible.length).padStart(8),
    ...[
      count((each) => each.detected),
      count((each) => each.namedFirst === each.slip),
      count((each) => each.namedAfterLooks === each.slip),
    ].map((part) => percent(part, visible.length).padStart(12)),
  ].join('');
};
const inRow = (counts: readonly (readonly [string, number])[]): string =>
  counts.map(([named, count]) => `${named} ${count}`).join(', ');
const sayConfusion = (title: string, nameOf: (each: Outcome) => string | undefined): void => {
  console.log(`${title}:`);
  for (const [slip, counts] of confusion(outcomes, nameOf))
    if (counts.some(([named]) => named !== slip)) console.log(`  ${slip.padEnd(28)} ${inRow(counts)}`);
};

console.log(`seed ${seed}`);
console.log(`${'slip'.padEnd(30)}  made visible    detected    at once    after looks`);
for (const slip of SLIPS)
  console.log(
    row(
      slip,
      outcomes.filter((each) => each.slip === slip),
    ),
  );
const leavingTrace = outcomes.filter((each) => each.slip === 'none' || !WITHOUT_TRACE.includes(each.slip));
console.log(row('all that leave a trace', leavingTrace));
const visible = outcomes.filter((each) => each.visible);
const looks = visible.reduce((sum, each) => sum + (each.looks ?? 0), 0);
console.log(`looks asked for a mismatch: ${(looks / visible.length).toFixed(2)}`);
console.log(
  `false alarms: ${clean.reduce((sum, each) => sum + each.falseAlarms, 0)} on ${HOLES} clean holes, ${outcomes.reduce((sum, each) => sum + each.falseAlarms, 0)} before a slip`,
);
sayConfusion('named otherwise from digits and count alone', (each) => each.namedFirst);
sayConfusion('named otherwise after the looks', (each) => each.namedAfterLooks);
console.log(
  `of ${MANY} more holes ${percent(many.filter((each) => each.visible && each.namedFirst === each.slip).length, many.filter((each) => each.visible).length)} are named at once; no namer from numbers alone could reach more than ${percent(bestFromNumbers(many), 1)}, for these give the very same numbers in the same rod:`,
);
for (const [pair, count] of sameNumbers(many)) console.log(`  ${pair}, in ${count} different readings`);
const unseen = outcomes.filter((each) => each.made && !each.visible);
console.log(
  `${unseen.length} never show in the numbers; a scan of the rod's bags beside their piles finds ${unseen.filter((each) => each.scanned !== undefined).length} of them`,
);
console.log('no trace in the numbers of a rod:');
for (const { slip, caughtBy } of NO_TRACE) console.log(`  ${slip}: caught by ${caughtBy}`);
console.log(`${((performance.now() - started) / 1000).toFixed(1)} s`);
