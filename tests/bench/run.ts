// npm run bench: the figures that decide how the screen is painted and rows are saved, each beside a baseline of the same run and beside its
// aim. It runs to its end whatever it finds, and exits 0. `npm run bench -- files` runs the parts whose title has that word.
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { against, median, section } from './aim.ts';
import { commands, entering, reading, stall } from './files.ts';
import { guessingLines } from './guessing.ts';
import { needlessCurve } from './needless.ts';
import { type RealProject, realHole } from './real-hole.ts';
import { saving } from './saving.ts';
import { shorthandLines } from './shorthand.ts';
import { enterToPainted, memory, up } from './sitting.ts';
import { benchSurvey } from './survey.ts';
import { bareEcho, firstPaint, idle, type KeyToPaint, keyToPaint, type Measured } from './terminal.ts';

const bundle = join(import.meta.dirname, '../../dist/offsider.js');
const IDLE_MS = 60_000;
const ms = (value: number): string => `${value.toFixed(1)} ms`;

/** The console on a project, up when its entry line is. */
const consoleOn = ({ folder }: RealProject): Measured => ({
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

const [, , only = ''] = process.argv;
const part = (title: string, measure: () => void | Promise<void>): Promise<void> =>
  title.includes(only) ? section(title, measure) : Promise.resolve();

/** Holes that are really logged, row by row and rod by rod, by their metres; made when they are first needed. */
const made = new Map<number, Promise<RealProject>>();
function holeOf(metres: number): Promise<RealProject> {
  const known = made.get(metres) ?? realHole(metres);
  made.set(metres, known);
  return known;
}

await part('start to first paint', async () => {
  for (const [metres, most] of [
    [10, 3.3],
    [300, 4],
    [2000, 8],
  ] as const) {
    const { paintMs, bareMs, ratio, least } = await firstPaint(consoleOn(await holeOf(metres)), 9);
    console.log(
      `  ${metres} m: ${ms(paintMs)}, bare node ${ms(bareMs)} (by the clock); ratio of the shortest ${least.toFixed(2)}`,
    );
    if (metres <= 300) against(`${metres} m, over bare node`, ratio, most);
    else console.log(`  ${metres} m, over bare node: ${ratio.toFixed(2)} (no aim)`);
  }
});
await part('commands and bundle', async () => commands(bundle, (await holeOf(300)).folder));
await part('files: reading a hole', async () => reading(await holeOf(2000)));
await part('files: the stall after a row', async () => {
  // No hole goes below 5,000 m, and some rows are to come.
  for (const metres of [2000, 4980]) await stall(await realHole(metres), metres);
});
await part('files: lines from a pipe', entering);

await part('key to paint, 100×30, 500 keys through a pseudo-terminal', async () => {
  const echo = await keyToPaint(bareEcho, keys);
  const rounds: (readonly [KeyToPaint, KeyToPaint])[] = [];
  for (let round = 0; round < 3; round += 1)
    rounds.push([
      await keyToPaint(consoleOn(await holeOf(10)), keys),
      await keyToPaint(consoleOn(await holeOf(2000)), keys),
    ]);
  const least = (of: (round: readonly [KeyToPaint, KeyToPaint]) => number) => Math.min(...rounds.map(of));
  console.log(
    `  bare echo p50 ${ms(echo.p50)}, p99 ${ms(echo.p99)} (all by the clock, least of three rounds)`,
  );
  const medians = rounds.map(([short, long]) => long.p50 / short.p50);
  console.log(`  2,000 m over 10 m, p50, in the middle of three: ${median(medians).toFixed(2)}`);
  against('10 m, p50 over the echo', least(([short]) => short.p50) - echo.p50, 1.5, ' ms');
  against('10 m, p99 over the echo', least(([short]) => short.p99) - echo.p99, 6, ' ms');
  against('2,000 m over 10 m, p50', least(([, long]) => long.p50) / least(([short]) => short.p50), 1.05);
  const [short] = rounds[0] ?? [];
  if (short !== undefined)
    against('bytes a key, of the full frame', (100 * short.bytesAKey) / short.firstFrameBytes, 3, ' %');
});
await part('Up', async () => {
  const at = async (metres: number) => up(consoleOn(await holeOf(metres)));
  for (const metres of [2000, 5000]) {
    const rounds = [];
    for (let round = 0; round < 3; round += 1) rounds.push([await at(300), await at(metres)] as const);
    const shorts = rounds.map(([short]) => short);
    const longs = rounds.map(([, long]) => long);
    const [short, long] = [Math.min(...shorts), Math.min(...longs)];
    console.log(`  300 m ${ms(short)}, ${metres} m ${ms(long)} (by the clock, least of three medians)`);
    console.log(`  ${metres} m over 300 m, medians: ${(median(longs) / median(shorts)).toFixed(2)}`);
    against(`${metres} m over 300 m`, long / short, 1.2);
  }
});
await part('Enter to painted', async () => {
  for (const [metres, most] of [
    [10, 5],
    [2000, 10],
  ] as const) {
    const { p50, least } = await enterToPainted(consoleOn(await realHole(metres)));
    console.log(`  ${metres} m: least ${ms(least)} (by the clock)`);
    against(`${metres} m, p50`, p50, most, ' ms');
  }
});
await part('Enter to durable', async () => {
  await saving(await realHole(10), 10, 1.5);
  await saving(await realHole(2000), 2000, 1.6);
});
await part('memory of a sitting of 2,000 rows', async () => memory(consoleOn(await realHole(10))));
await part('an idle minute', async () => {
  const rest = await idle(consoleOn(await holeOf(10)), IDLE_MS);
  console.log(`  ${rest.bytes} bytes written, ${rest.cpuMs ?? 'unknown'} ms of CPU`);
  if (rest.cpuMs !== undefined) against('CPU', (100 * rest.cpuMs) / IDLE_MS, 0.2, ' %');
});
await part('the entry line', () => {
  for (const line of shorthandLines()) console.log(line);
});

await part('needless stops against silent slips', () => {
  for (const line of needlessCurve()) console.log(line);
});
await part('guessing', () => {
  for (const line of guessingLines()) console.log(line);
});
await part('survey', () => {
  const { lines, ratio } = benchSurvey();
  for (const line of lines) console.log(`  ${line}`);
  against('over the trigonometry alone', ratio, 2);
});
await part('termination rules', () => ownProgram('termination.ts'));
await part('mismatches of the sample stream', () => ownProgram('sampling.ts'));
await part('mismatches at the second rig', () => ownProgram('second-rig.ts'));

for (const each of made.values()) (await each).remove();
