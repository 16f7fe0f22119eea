// npm run bench: the figures that decide how the screen is painted and rows are saved, each beside a baseline of the same run.
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { projectOfMetres } from './project.ts';
import { savingFigures } from './saving.ts';
import { shorthandLines } from './shorthand.ts';
import { benchSurvey } from './survey.ts';
import { bareEcho, firstPaint, idle, keyToPaint, type Measured } from './terminal.ts';

const bundle = join(import.meta.dirname, '../../dist/offsider.js');
const IDLE_MS = 60_000;
const ms = (value: number): string => `${value.toFixed(1)} ms`;

/** The console on a project, up when its entry line is. */
const consoleOn = (folder: string): Measured => ({
  command: process.execPath,
  args: [bundle, folder],
  columns: 100,
  rows: 30,
  ready: (screen) => screen.some((line) => line.includes('▸')),
});

/** 500 keys as they are typed: strokes of rows, and now and then the line emptied. */
const keys = Array.from({ length: 500 }, (_, index) =>
  index % 7 === 6 ? 'ctrl-u' : ('cl2py1'[index % 7] as string),
);

/** A benchmark that is a program of its own and prints its figures. */
function ownProgram(file: string): void {
  process.stdout.write(
    execFileSync(process.execPath, ['--import', 'tsx', join(import.meta.dirname, file)], {
      encoding: 'utf8',
    }),
  );
}

console.log('== key to paint, 100×30, 500 keys through a pseudo-terminal');
const [short, long] = [await projectOfMetres(10), await projectOfMetres(2000)];
try {
  const echo = await keyToPaint(bareEcho, keys);
  const small = await keyToPaint(consoleOn(short.folder), keys);
  const large = await keyToPaint(consoleOn(long.folder), keys);
  console.log(`bare echo p50 ${ms(echo.p50)}, p99 ${ms(echo.p99)}`);
  console.log(
    `console, 10 m hole p50 ${ms(small.p50)}, p99 ${ms(small.p99)}: over the echo ${ms(small.p50 - echo.p50)} (aim ≤ 4), ${ms(small.p99 - echo.p99)} (aim ≤ 16.7)`,
  );
  console.log(
    `2,000 m hole p50 ${ms(large.p50)}, p99 ${ms(large.p99)}: ratio of the middles ${(large.p50 / small.p50).toFixed(2)} (aim ≤ 1.1)`,
  );
  console.log(
    `bytes a key ${small.bytesAKey.toFixed(0)}, ${((100 * small.bytesAKey) / small.firstFrameBytes).toFixed(1)} % of the full frame (aim ≤ 8 %)`,
  );

  console.log('== first paint');
  const paint = await firstPaint(consoleOn(short.folder));
  console.log(`${ms(paint.paintMs)} over bare node ${ms(paint.bareMs)}: ${paint.ratio.toFixed(2)} (aim ≤ 3)`);

  console.log('== an idle minute');
  const rest = await idle(consoleOn(short.folder), IDLE_MS);
  console.log(`${rest.bytes} bytes written, ${rest.cpuMs ?? 'unknown'} ms of CPU`);
} finally {
  short.remove();
  long.remove();
}

console.log('== Enter to durable');
const saving = await savingFigures();
console.log(
  `desk p50 ${saving.desk.p50.toFixed(2)} ms, p99 ${saving.desk.p99.toFixed(2)} ms; bare append and fsync of as many bytes p50 ${saving.bare.p50.toFixed(2)} ms, p99 ${saving.bare.p99.toFixed(2)} ms: ratio ${saving.ratio.toFixed(2)} (aim ≤ 2)`,
);

console.log('== the entry line');
for (const line of shorthandLines()) console.log(line);

console.log('== survey');
for (const line of benchSurvey().lines) console.log(line);

console.log('== termination rules');
ownProgram('termination.ts');

console.log('== mismatches of the sample stream');
ownProgram('sampling.ts');
