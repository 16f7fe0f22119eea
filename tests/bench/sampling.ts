/** Figures of the rod check on simulated holes: `npx tsx tests/bench/sampling.ts`. */
import { NO_TRACE } from '../../src/sampling/mismatches/no-trace.ts';
import { drill, type Outcome } from '../sampling/simulator.ts';
import { SLIPS } from '../sampling/slips.ts';

const HOLES = 1000;
const started = performance.now();
const outcomes = Array.from({ length: HOLES }, (_, seed) =>
  drill(seed, SLIPS[seed % SLIPS.length] ?? 'none'),
);
const clean = Array.from({ length: HOLES }, (_, seed) => drill(10_000 + seed, 'none'));

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;
const row = (name: string, of: readonly Outcome[]): string => {
  const visible = of.filter((each) => each.visible);
  const detected = visible.filter((each) => each.detected).length;
  const first = visible.filter((each) => each.namedFirst === each.slip).length;
  const looked = visible.filter((each) => each.namedAfterLooks === each.slip).length;
  return [
    name.padEnd(24),
    String(of.length).padStart(6),
    String(visible.length).padStart(8),
    percent(detected, visible.length).padStart(9),
    percent(first, visible.length).padStart(13),
    percent(looked, visible.length).padStart(12),
  ].join('');
};

console.log(`${'slip'.padEnd(24)}  made visible detected named at once after looks`);
for (const slip of SLIPS)
  console.log(
    row(
      slip,
      outcomes.filter((each) => each.slip === slip),
    ),
  );
console.log(row('all', outcomes));
console.log(
  `false alarms on ${HOLES} clean holes: ${clean.reduce((sum, each) => sum + each.falseAlarms, 0)}`,
);
console.log('no trace in the numbers of a rod:');
for (const { slip, caughtBy } of NO_TRACE) console.log(`  ${slip}: caught by ${caughtBy}`);
console.log(`${((performance.now() - started) / 1000).toFixed(1)} s`);
