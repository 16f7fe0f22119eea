import type { LineUpContext, LineUpReading, LineUpStep } from '../acts/line-up-order.ts';
import { takeTyped } from '../acts/line-up-steps.ts';
import { readGps } from '../files/read-gps.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { wrongUse } from './findings.ts';

/** What was read at the rig, as the options say it. */
export interface ReadingsAsked {
  readonly cautions?: string | undefined;
  readonly permission?: string | undefined;
  readonly way?: string | undefined;
  readonly azimuth?: string | undefined;
  /** Distance and readings: `22:269.5,270`, sighted back `30:89.5b`. */
  readonly compass: readonly string[];
  readonly crewDip?: string | undefined;
  readonly clinometer?: string | undefined;
  readonly collar?: string | undefined;
  /** File or device of a GPS. */
  readonly gps?: string | undefined;
}

/** True where anything was read at all. */
export function isRead(asked: ReadingsAsked): boolean {
  return Object.values(asked).some((each) => (Array.isArray(each) ? each.length > 0 : each !== undefined));
}

/** The ways of setting a rig as the option names them, by the digit that the screen takes for each. */
const WAY_DIGITS: Readonly<Record<string, string>> = { pegs: '1', device: '2', compass: '3' };

/** A reading made so far, and what was said of parts of it. */
export interface ReadingsTaken {
  readonly reading: LineUpReading;
  readonly said: readonly string[];
}

/** Takes the readings in the order of work, each as the screen does; refused with the option that can't be taken, and why. */
export async function takeReadings(
  asked: ReadingsAsked,
  context: LineUpContext,
): Promise<Result<ReadingsTaken>> {
  let taken: ReadingsTaken = { reading: { step: 'cautions', taken: { compass: [] } }, said: [] };
  const steps = await typedSteps(asked);
  if (!steps.ok) return steps;
  for (const { option, step, typed } of steps.value) {
    const next = takeTyped({ ...taken.reading, step }, typed, context);
    if (!next.ok) return refused(notTaken(option, typed, next.problem));
    taken = { reading: next.form, said: [...taken.said, ...(next.said === undefined ? [] : [next.said])] };
  }
  return ok(taken);
}

interface TypedStep {
  readonly option: string;
  readonly step: LineUpStep;
  readonly typed: string;
}

async function typedSteps(asked: ReadingsAsked): Promise<Result<readonly TypedStep[]>> {
  const said = (option: string, step: LineUpStep, typed: string | undefined): readonly TypedStep[] =>
    typed === undefined ? [] : [{ option, step, typed }];
  const compass = asked.compass.map(compassSteps);
  const unread = compass.flatMap((each) => (each.ok ? [] : each.findings));
  if (unread.length > 0) return refused(...unread);
  // = behind the path insists on the fix, as behind any reading.
  const [, path = '', insists = ''] = /^(.*?)(\s*=)?$/s.exec(asked.gps ?? '') ?? [];
  const gps = asked.gps === undefined ? undefined : await readGps(path);
  if (gps?.ok === false) return refused(notTaken('--gps', asked.gps ?? '', `${gps.problem}.`));
  return ok([
    ...said('--cautions', 'cautions', asked.cautions),
    ...said('--permission', 'permission', asked.permission),
    ...said('--way', 'way', asked.way === undefined ? undefined : WAY_DIGITS[asked.way]),
    ...said('--azimuth', 'azimuth', asked.azimuth),
    ...compass.flatMap((each) => (each.ok ? each.value : [])),
    ...said('--crew-dip', 'crew dip', asked.crewDip),
    ...said('--clinometer', 'clinometer', asked.clinometer),
    ...said('--collar', 'collar', asked.collar),
    ...said(
      '--gps',
      'collar',
      gps === undefined
        ? undefined
        : `${gps.text.includes('$') ? '' : '$'}${gps.text.trimEnd()}${insists === '' ? '' : ' ='}`,
    ),
  ]);
}

/** `22:269.5,270` as steps: the distance, then each reading at it. */
function compassSteps(text: string): Result<readonly TypedStep[]> {
  const [distance = '', readings, ...more] = text.split(':');
  const option = '--compass';
  if (readings === undefined || more.length > 0 || readings === '')
    return refused(notTaken(option, text, 'Metres from the rig and readings are wanted, like 22:269.5,270.'));
  return ok([
    { option, step: 'distance', typed: distance },
    ...readings.split(',').map((typed) => ({ option, step: 'compass' as const, typed })),
  ]);
}

function notTaken(option: string, excerpt: string, problem: string): Finding {
  return wrongUse.at(
    { file: option },
    { excerpt: excerpt.slice(0, 80), problem: problem.replace(/\.$/, ''), remedy: 'Nothing is recorded.' },
  );
}
