import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkRod, rodMended } from '../../src/acts/rod.ts';
import { readRod } from '../../src/acts/rod-read.ts';
import { startActivityNow } from '../../src/acts/shift.ts';
import { type LinesAt, makerOf, submitMade } from '../../src/commands/lines/submit-made.ts';
import { takeLine } from '../../src/commands/lines/take-line.ts';
import { bytesFrom } from '../../src/commands/outside.ts';
import type { Desk } from '../../src/desk/desk.ts';
import { openDesk } from '../../src/desk/desk.ts';
import { loadProject } from '../../src/desk/load-project.ts';
import { formatFinding, type Result } from '../../src/finding/finding.ts';
import type { Made, Maker } from '../../src/hole/commands/made.ts';
import type { Project } from '../../src/project/project.ts';
import type { Document, DocumentName } from '../../src/record/document.ts';
import { nextRod } from '../../src/standing/rods.ts';

/** The wall clock of the sample project, eight hours ahead of UTC: set by the story, and seconds go by as it is typed. */
interface StoryClock {
  readonly set: (date: string, time: string) => void;
  readonly date: () => string;
  readonly nowMs: () => number;
  readonly pass: (seconds: number) => void;
  readonly offsetMin: () => number;
}

/** A clock that stands still between the words of the story. */
function storyClock(): StoryClock {
  let now = 0;
  let day = '';
  return {
    set: (date, time) => {
      const at = Date.parse(`${date}T${time}:00+08:00`);
      if (at < now) throw new Error(`the story goes back in time: ${date} ${time}`);
      day = date;
      now = at;
    },
    date: () => day,
    nowMs: () => now,
    pass: (seconds) => {
      now += seconds * 1000;
    },
    offsetMin: () => 480,
  };
}

/** A sitting at the sample project: the desk, what the project says, and the clock. */
export interface Sitting {
  readonly desk: Desk;
  readonly project: Project;
  readonly clock: StoryClock;
}

/** Opens the project with a clock, ids and a computer of its own, so that twice the same comes out. Nothing is written but when told. */
export async function openSitting(folder: string): Promise<Sitting> {
  const clock = storyClock();
  clock.set('2026-03-11', '16:30');
  const desk = granted(
    await openDesk({
      folder,
      person: 'NOK',
      clock,
      random: bytesFrom('mulgara bend'),
      machine: { host: 'laptop', process: 1, boot: '', isRunning: () => false },
      after: () => () => undefined,
    }),
  );
  const loaded = granted(await loadProject({ folder, project: desk.project(), logging: desk.logging() }));
  if (loaded.warnings.length > 0) throw new Error(loaded.warnings.map(formatFinding).join('\n'));
  return { desk, project: loaded.project, clock };
}

/** The value of a result; what is in its way is thrown. */
export function granted<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.findings.map(formatFinding).join('\n'));
  return result.value;
}

/** What a command is lent at this moment of the story. */
export function makerNow({ desk }: Sitting): Maker {
  return makerOf(desk);
}

/** Makes one edit of a document; it must be taken. */
export async function make(sitting: Sitting, document: DocumentName, made: Made): Promise<void> {
  const submitted = sitting.desk.submit({ what: made.what, parts: [{ document, changes: made.changes }] });
  const saved = submitted.ok ? await submitted.durable : submitted;
  if (!saved.ok) throw new Error(`${made.what}: ${saved.problem}`);
}

/** A document that must be there. */
export function standing({ desk }: Sitting, name: DocumentName): Document {
  const found = desk.get(name);
  if (found === undefined) throw new Error(`no ${name.kind} ${name.id}`);
  return found;
}

/** Starts an activity of the rig, as its key in the console does. */
export async function startNow(sitting: Sitting, activity: string, hole?: string): Promise<void> {
  const { desk, project } = sitting;
  const said = { rig: 'RC7', activity, ...(hole === undefined ? {} : { hole }) };
  const { document, made } = granted(
    startActivityNow(project, desk.documents().values(), said, makerNow(sitting)),
  );
  await make(sitting, document, made);
}

/**
 * Plays the lines of a hole as they were typed. Comments move the story: `# 07:08` is the time of the next line, `# 07:08 survey` starts an
 * activity at it, `# mend bags-too-few 118–119` is what was chosen when the next rod does not agree. Every other line must be taken.
 */
export async function playLines(sitting: Sitting, hole: DocumentName): Promise<void> {
  const at: LinesAt = { desk: sitting.desk, project: sitting.project, hole, noteMismatches: false };
  const lines = readFileSync(join(import.meta.dirname, `${hole.id}.lines`), 'utf8').split('\n');
  let mend: readonly string[] | undefined;
  for (const [index, line] of lines.entries()) {
    const [, time, activity] = /^# (\d\d:\d\d)(?: (\S+))?$/.exec(line) ?? [];
    if (time !== undefined) sitting.clock.set(sitting.clock.date(), time);
    if (activity !== undefined) await startNow(sitting, activity, hole.id);
    const chosen = /^# mend (\S+) (\S+)$/.exec(line);
    if (chosen !== null) mend = chosen.slice(1);
    if (line === '' || line.startsWith('#')) continue;
    sitting.clock.pass(24 + ((index * 7) % 13));
    const taken = mend === undefined ? await takeLine(at, line) : await mendRod(sitting, at, line, mend);
    mend = undefined;
    if (taken.kind !== 'done')
      throw new Error(`${hole.id}.lines:${index + 1}: ${line}: ${JSON.stringify(taken)}`);
  }
  await sitting.desk.snapshot();
}

/** A rod whose bags did not agree, mended the way that was chosen. */
async function mendRod(sitting: Sitting, at: LinesAt, line: string, mend: readonly string[]) {
  const hole = standing(sitting, at.hole);
  const rod = nextRod(hole);
  const seen = readRod(line.replace(/^;rod/, '')) ?? {};
  const check = checkRod(
    sitting.project,
    sitting.desk.documents().values(),
    hole,
    rod,
    seen,
    sitting.desk.now(),
  );
  const named = check.named.find((each) => each.code === mend[0]);
  const way = named?.ways.findIndex((each) => each.at === mend[1]) ?? -1;
  if (named === undefined || way < 0)
    throw new Error(
      `${line}: no such way to mend it: ${JSON.stringify(check.named.map(({ code, ways }) => [code, ways.map((each) => each.at)]))}`,
    );
  return submitMade(at, rodMended(hole, rod, named, way, makerNow(sitting)));
}
