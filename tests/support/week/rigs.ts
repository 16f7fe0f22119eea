import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { runCommandLine } from '../../../src/commands/command-line/run.ts';
import { bytesFrom } from '../../../src/commands/outside.ts';
import { holesOf } from '../../../src/console/state.ts';
import { localTime, type Stamp, stamp } from '../../../src/quantity/stamp.ts';
import { type Sitting, sitAt } from '../../console/support/sitting.ts';

/** A shift as it was: what the rig did by the clock, and the sheet that the driller hands in. */
export interface WeekShift {
  readonly rig: string;
  readonly date: string;
  readonly name: 'day' | 'night';
  /**
   * A line each: the time, then the key of an activity with its hole where it is another one and how many rods were drilled in it
   * (`08:00 d 9`), or `shot 54`, `wet`, `end`, a line of the record behind `:`, or one of the log behind `>`.
   */
  readonly record: string;
  readonly sheet: string;
  readonly plod: string;
}

/** Summer time ends in the night to 5 April 2026: at 03:00 it is 02:00 again. */
const CHANGE_MS = Date.UTC(2026, 3, 4, 16);
export const offsetAt = (ms: number): number => (ms < CHANGE_MS ? 660 : 600);

/** The first instant from one on at which the clock says so. */
export function nextAt(from: number, clock: string): number {
  let ms = from;
  while (localTime(stamp(ms, offsetAt(ms))) !== clock) ms += 60_000;
  return ms;
}

/** What a command line gave. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

let seed = 0;
/** The real command line at an instant. */
export async function command(folder: string, ms: number, args: readonly string[], stdin = ''): Promise<Ran> {
  let [out, err] = ['', ''];
  const writer = (take: (text: string) => void) =>
    ({
      write: (text: string) => {
        take(text);
        return true;
      },
    }) as unknown as NodeJS.WriteStream;
  seed += 1;
  const code = await runCommandLine([...args, '--project', folder], {
    outside: {
      clock: { nowMs: () => ms, offsetMin: () => offsetAt(ms) },
      random: bytesFrom(`week ${seed}`),
      env: {},
      stdin: Readable.from([stdin]) as unknown as NodeJS.ReadStream,
      stdout: writer((text) => {
        out += text;
      }),
      stderr: writer((text) => {
        err += text;
      }),
    },
    openConsole: async () => 0,
  });
  return { code, out, err };
}

/** One thing that happened, at its instant. */
interface Step {
  readonly ms: number;
  readonly verb: string;
  readonly rest: string;
  readonly hole?: string;
}

/** The steps of a shift in order, the rods of an activity spread over it. */
function stepsOf({ record, date, name }: WeekShift): readonly Step[] {
  const lines = record
    .trim()
    .split('\n')
    .map((line) => /^(\S+) (\S+) ?(.*)$/.exec(line.trim()) ?? []);
  const start = name === 'day' ? '06:00' : '18:00';
  let ms = nextAt(Date.parse(`${date}T00:00:00Z`) - 660 * 60_000, start);
  const at = lines.map(([, clock = '']) => {
    ms = nextAt(ms, clock);
    return ms;
  });
  return lines.flatMap(([, , verb = '', rest = ''], index): readonly Step[] => {
    const [from = 0, to = from] = [at[index], at[index + 1]];
    const [, plain = rest, also] = /^(.*) \/(\d+)$/.exec(rest) ?? [];
    if (!/^[a-z]$/.test(verb) && also === undefined) return [{ ms: from, verb, rest }];
    const [, hole, rods = also ?? '0'] = verb === ':' ? [] : (/^(?:([A-Z]\S+) ?)?(\d*)$/.exec(rest) ?? []);
    const count = Number(rods);
    const each = Math.floor((to - from) / 60_000 / (count + 1)) * 60_000;
    return [
      { ms: from, verb, rest: verb === ':' ? plain : '', ...(hole === undefined ? {} : { hole }) },
      ...Array.from(
        { length: count },
        (_, rod): Step => ({ ms: from + (rod + 1) * each, verb: 'rod', rest: '' }),
      ),
    ];
  });
}

/** An instant on the clock of the week. */
export const stampAt = (ms: number): Stamp => stamp(ms, offsetAt(ms));

/** Every shift and sheet of a rig typed through the console: a sitting a shift, the geologists in turn. */
export async function sitThrough(
  folder: string,
  shifts: readonly WeekShift[],
  people: readonly [day: string, night: string],
): Promise<void> {
  for (const shift of shifts) {
    const person = people[shift.name === 'day' ? 0 : 1];
    const steps = stepsOf(shift);
    const [first] = steps;
    if (first === undefined) throw new Error('a shift without a step');
    seed += 1000;
    const sitting = await sitAt(folder, stampAt(first.ms), { rig: shift.rig, person, seed, offsetAt });
    let ms = first.ms;
    for (const step of steps) {
      sitting.wait((step.ms - ms) / 60_000);
      ms = step.ms;
      press(sitting, step);
    }
    sitting.wait(10);
    typeSheet(sitting, shift);
    const { message } = sitting.state();
    if (message?.text.startsWith(`plod ${shift.sheet} recorded`) !== true)
      throw new Error(`${shift.sheet}: ${message?.text}`);
    const closed = await sitting.desk.close();
    if (!closed.ok) throw new Error(closed.problem);
  }
}

function press(sitting: Sitting, { verb, rest, hole }: Step): void {
  if (hole !== undefined) open(sitting, hole);
  const before = sitting.state().documents;
  if (verb === 'rod') sitting.press('f2', 'enter');
  else if (verb === 'shot') shoot(sitting, rest);
  else if (verb === 'wet') sitting.enter(';wet');
  else if (verb === '>') sitting.enter(rest);
  else if (verb === 'finish') finish(sitting);
  else if (verb === 'abandon' || verb === 'redrill') onHoles(sitting, verb, rest);
  else if (verb === 'end') sitting.press('f8', 'ctrl-x', 'enter', 'escape');
  else if (verb === ':') {
    sitting.press('f8');
    sitting.burst(`${rest}\r`);
    sitting.press('escape');
  } else {
    sitting.press('ctrl-a');
    sitting.type(verb);
  }
  if (sitting.state().documents === before || sitting.state().prompt !== undefined)
    throw new Error(`${verb} ${rest}: ${sitting.state().message?.text}\n${sitting.screen().join('\n')}`);
}

/** The hole in hand ended by F12: depth, what is open, collar, the reason. */
function finish(sitting: Sitting): void {
  sitting.press('f12');
  for (let step = 0; step < 6; step += 1) {
    const { prompt } = sitting.state();
    if (prompt?.kind !== 'ending') return;
    if (prompt.step === 'collar') sitting.type('c');
    if (prompt.step === 'reason') sitting.type('planned depth');
    sitting.press('enter');
  }
}

/** A hole abandoned or redrilled on the list of holes: `WK103 rods left in the hole`, the hole in hand where none is named. */
function onHoles(sitting: Sitting, verb: 'abandon' | 'redrill', text: string): void {
  const [, hole, reason = ''] = /^(WK\S+)? *(.*)$/.exec(text) ?? [];
  sitting.press('f10');
  if (hole !== undefined) reach(sitting, hole);
  sitting.type(verb === 'abandon' ? 'a' : 'r');
  sitting.type(reason);
  sitting.press('enter');
  if (sitting.state().prompt !== undefined) sitting.type('y');
}

/** A shot; the first of a hole begins its run: a north-seeking gyro, the answers that Enter alone takes, the name of the tool. */
function shoot(sitting: Sitting, depth: string): void {
  sitting.enter(`;shot ${depth} -60 270.0 =`);
  for (let step = 0; step < 8 && sitting.state().prompt?.kind === 'survey run'; step += 1) {
    if (sitting.screen().some((line) => line.includes('Which tool'))) sitting.type('G4');
    sitting.press('enter');
  }
  if (sitting.state().prompt?.kind === 'shot') sitting.press('enter');
}

function open(sitting: Sitting, hole: string): void {
  sitting.press('f10');
  reach(sitting, hole);
  sitting.press('enter');
}

function reach(sitting: Sitting, hole: string): void {
  const at = holesOf(sitting.state()).findIndex((each) => each.id === hole);
  if (at < 0) throw new Error(`no hole ${hole}`);
  for (let key = 0; key < 30; key += 1) sitting.press('up');
  for (let key = 0; key < at; key += 1) sitting.press('down');
}

function typeSheet(sitting: Sitting, { sheet, plod }: WeekShift): void {
  sitting.press('f8', 'ctrl-p');
  sitting.enter(`${sheet} Mick Tarrant`);
  for (const line of linesOf(plod)) sitting.burst(`${line}\r`);
  sitting.press('enter');
}

export const linesOf = (text: string): readonly string[] =>
  text
    .trim()
    .split('\n')
    .map((line) => line.trim());

/** A line of the shift record, with its time, for what was told late: the hole in hand goes with each activity. */
function lateLine({ ms, verb, rest }: Step, hole: string): string {
  const clock = localTime(stampAt(ms));
  if (verb === 'end') return `end ${clock}`;
  const [word = '', ...more] = verb === ':' ? rest.split(' ') : [verb];
  return [word, clock, hole, ...more].filter((each) => each !== '').join(' ');
}

/**
 * Every shift and sheet of a rig by the command line alone: the shift is begun at its hour, rods and shots are told as they are done, a
 * span of drilling by its last rod, what the rig did at the end of the shift in one pipe, and the sheet by a pipe or a CSV.
 */
export async function tellThrough(folder: string, shifts: readonly WeekShift[], by: string): Promise<void> {
  let hole = '';
  let depth = 0;
  for (const shift of shifts) {
    const run = async (ms: number, args: readonly string[], stdin = ''): Promise<void> => {
      const ran = await command(folder, ms, [...args, '--rig', shift.rig, '--by', by], stdin);
      if (ran.code !== 0)
        throw new Error(`${nameOf(shift)}, ${args.join(' ')} ${stdin}: ${ran.err}${ran.out}`);
    };
    const steps = stepsOf(shift);
    const late: string[] = [];
    await run(steps[0]?.ms ?? 0, ['activity', 'begin', localTime(stampAt(steps[0]?.ms ?? 0))]);
    for (const [index, step] of steps.entries()) {
      if (step.hole !== undefined) [hole, depth] = [step.hole, 0];
      if (step.verb === 'rod') {
        depth += 6;
        if (steps[index + 1]?.verb !== 'rod') await run(step.ms, ['enter', hole], `;rod @${depth}\n`);
      } else if (step.verb === 'shot')
        await run(step.ms, ['enter', hole], `;run north-seeking tool G5\n;shot ${step.rest} -60 270.0 =\n`);
      else late.push(lateLine(step, hole));
    }
    const end = steps.at(-1)?.ms ?? 0;
    await run(end, ['activity'], `${late.join('\n')}\n`);
    const file = join(folder, `${shift.sheet}.csv`);
    const isCsv = shift.plod.includes(',Task,');
    if (isCsv) writeFileSync(file, `${linesOf(shift.plod).join('\r\n')}\r\n`);
    const sheet = ['plod', 'new', shift.sheet, '--shift', nameOf(shift), '--from', 'Hal Quist'];
    await run(end + 600_000, isCsv ? [...sheet, '--from-csv', file] : sheet, isCsv ? '' : `${shift.plod}\n`);
  }
}

export const nameOf = ({ rig, date, name }: WeekShift): string => `${rig}_${date}_${name.toUpperCase()}`;
