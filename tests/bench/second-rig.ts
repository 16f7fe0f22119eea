/** Figures of the rod check at the second rig: `npx tsx tests/bench/second-rig.ts`, with a seed behind it to repeat a run. */
import { day, days } from '../sampling/second-rig-day.ts';
import { figuresOf, mistaken } from '../sampling/second-rig-figures.ts';

const HOLES = 2400;
const seed = Number(process.argv[2] ?? Date.now() % 1_000_000_000);
const percent = (part: number): string => `${(100 * part).toFixed(1)} %`;

console.log(`seed ${seed}, ${HOLES} holes of nine kinds`);
for (const reading of ['digits', 'digits and count'] as const) {
  const outcomes = days(seed, HOLES, reading);
  const { shown, detected, named, namedBound, afterOne, falseAlarms } = figuresOf(outcomes);
  const clean = Array.from(
    { length: HOLES },
    (_, index) => day(seed + HOLES + index, 'none', reading).falseAlarms,
  );
  console.log(`read by ${reading}: ${shown} show, ${percent(detected)} of them found`);
  console.log(
    `  named rightly at once ${percent(named)}; no namer could reach more than ${percent(namedBound)} from the same: ${percent(named / namedBound)} of that`,
  );
  console.log(`  named rightly after one look ${percent(afterOne)}`);
  console.log(
    `  false alarms ${falseAlarms} before a mishap, ${clean.reduce((sum, each) => sum + each, 0)} on ${HOLES} clean holes`,
  );
  for (const [title, nameOf] of [
    ['at once', (each: (typeof outcomes)[number]) => each.named],
    ['after one look', (each: (typeof outcomes)[number]) => each.namedAfterOne],
  ] as const) {
    const wrong = mistaken(outcomes, nameOf).filter((line) => {
      const [, truth, name] = /^(\S+) named (\S+):/.exec(line) ?? [];
      return truth !== name;
    });
    console.log(`  named otherwise ${title}: ${wrong.slice(0, 12).join('; ')}`);
  }
}
