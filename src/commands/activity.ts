import { createInterface } from 'node:readline';
import { recordLine } from '../acts/shift-line.ts';
import type { RecordInput } from '../acts/shift-start.ts';
import type { Outside } from '../desk/outside.ts';
import { type Finding, type Result, refused } from '../finding/finding.ts';
import type { Document } from '../record/document.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { makerOf } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayTrouble } from './say.ts';
import { submitOn } from './submit.ts';

/** What `offsider activity` is given. */
export interface ActivityAsked extends Shared {
  /** One line of the shift record; from stdin, a line each, where none is given. */
  readonly line: string;
  /** Whole name of the shift that it is about; the latest of the rig where none is given. */
  readonly shift?: string | undefined;
  readonly keepGoing: boolean;
}

/**
 * Takes lines of the shift record, as F8 in the console does. Each is durable before it is reported. Stops at the first that is not
 * taken, and gives 1.
 */
export function activity(outside: Outside, asked: ActivityAsked): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async (at) => {
    const shift = shiftNamed(at, asked.shift);
    if (!shift.ok) return refuse(outside, ...shift.findings);
    const name = shift.value?.id;
    if (asked.line !== '') return takeRecordLine(at, asked.line, name);
    let code: number = EXIT.fine;
    for await (const text of createInterface({
      input: outside.stdin,
      crlfDelay: Number.POSITIVE_INFINITY,
    })) {
      if (text.trim() === '' || text.trim().startsWith('#')) continue;
      const taken = await takeRecordLine(at, text, name);
      if (taken === EXIT.fine) continue;
      code = taken;
      if (!asked.keepGoing) break;
    }
    return code;
  });
}

async function takeRecordLine(at: AtProject, text: string, shiftId: string | undefined): Promise<number> {
  const { desk, project, outside } = at;
  const shift = shiftId === undefined ? undefined : desk.get({ kind: 'shift', id: shiftId });
  const rig = shiftId === undefined ? (project.settings.rigs[0]?.name ?? '') : shiftId.split('_')[0];
  const input: RecordInput = { rig: rig ?? '', text, shift };
  const made = recordLine(project, desk.documents().values(), input, makerOf(desk));
  if (!made.ok) {
    sayTrouble(outside, { findings: made.findings.map((each) => withLine(each, text)) });
    return EXIT.findings;
  }
  if (made.value.made.changes.length > 0) {
    const refusedWith = await submitOn(at, made.value);
    if (refusedWith !== undefined) return refusedWith;
  }
  say(outside, `${made.value.document.id}: ${made.value.made.what}`);
  return EXIT.fine;
}

const withLine = (finding: Finding, text: string): Finding => ({ ...finding, excerpt: text.trim() });

/** The shift of that whole name, undefined where none is named, or why not. */
export function shiftNamed({ desk }: AtProject, name: string | undefined): Result<Document | undefined> {
  if (name === undefined) return { ok: true, value: undefined };
  const shifts = [...desk.documents().values()].filter((each) => each.kind === 'shift');
  const found = shifts.find((each) => each.id === name);
  if (found !== undefined) return { ok: true, value: found };
  const near = shifts.slice(-6).map((each) => each.id);
  return refused(
    wrongUse.at(
      { thing: `shift ${name}` },
      {
        problem: 'no such shift is recorded',
        remedy: near.length === 0 ? 'None is yet.' : `The latest are ${near.join(', ')}.`,
      },
    ),
  );
}
