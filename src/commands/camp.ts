import { resolve } from 'node:path';
import type { Home } from '../desk/arriving/arrival.ts';
import { readArrival } from '../desk/arriving/read-arrival.ts';
import { type TakenArrival, takeArrival } from '../desk/arriving/take-arrival.ts';
import { parentsOf } from '../desk/load-project.ts';
import type { Outside } from '../desk/outside.ts';
import { HAND_WRITTEN } from '../files/project-folder.ts';
import { realDisk } from '../files/real-disk.ts';
import { schemaDiff } from '../schema/change/schema-diff.ts';
import { resolveSchema } from '../schema/read/resolve.ts';
import type { OpenQuestion } from '../standing/questions.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { oneLine } from './questions.ts';
import { EXIT, say, sayTrouble } from './say.ts';
import { differenceLine } from './schema-diff.ts';

/** What `offsider receive` is given. */
export interface ReceiveAsked extends Shared {
  /** Bundles, saved mails, files of documents. */
  readonly files: readonly string[];
  /** Take in a copy that takes much away of ours, too. */
  readonly mayClear?: boolean;
}

/**
 * Takes in what arrives: bundles, mails with bundles or files of documents attached, or such files by themselves. A newer copy is taken,
 * an older one changes nothing, one that went its own way is merged, and where both changed the same cell ours stays and a question is
 * kept. A file is taken in whole or not at all. 0 where all went in; 1 where one was refused or asks.
 */
export function receive(outside: Outside, asked: ReceiveAsked): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async (at) => {
    let code: number = EXIT.fine;
    for (const file of asked.files)
      if (!(await takeFile(at, file, asked.mayClear === true))) code = EXIT.findings;
    return code;
  });
}

/** Takes one file in; true where all of it went in and asks nothing. */
export async function takeFile(at: AtProject, file: string, mayClear: boolean): Promise<boolean> {
  const arrival = await readArrival(realDisk, resolve(file), homeOf(at));
  if (!arrival.ok) {
    sayTrouble(at.outside, { findings: arrival.findings });
    return false;
  }
  let fine = true;
  for (const each of arrival.value.documents) {
    const taken = await takeArrival(at.desk, at.project.schema, each, mayClear);
    sayTaken(at, taken);
    if (taken.ok !== true || taken.asked.length > 0 || taken.drift.length > 0) fine = false;
  }
  for (const { what, why, logging } of arrival.value.left) {
    const drift = logging === undefined ? [] : await schemaDrift(at, logging);
    say(at.outside, [`Left: ${what}: ${why}`, ...drift].join('\n'));
    if (drift.length > 0) fine = false;
  }
  return fine;
}

/** What the sender's schema logs otherwise than ours, as `schema diff` says it. What both extend beside it is ours. */
async function schemaDrift({ desk, project }: AtProject, text: string): Promise<readonly string[]> {
  const ours = desk.logging();
  const parents = ours === undefined ? undefined : await parentsOf(realDisk, desk.folder(), ours);
  const theirs = resolveSchema({ file: `their ${HAND_WRITTEN.logging}`, text }, parents);
  if (!theirs.ok) return [`  it can't be read as a schema: ${theirs.findings[0]?.problem ?? ''}`];
  return schemaDiff(project.schema, theirs.value.schema).map(
    (each) => `  ${differenceLine(each, { first: 'ours', second: 'theirs' })}`,
  );
}

function homeOf({ desk, project }: AtProject): Home {
  const handWritten = {
    [HAND_WRITTEN.project]: desk.project()?.text,
    [HAND_WRITTEN.logging]: desk.logging()?.text,
  };
  return { project: project.settings.name, handWritten };
}

function sayTaken({ outside }: AtProject, taken: TakenArrival): void {
  if (taken.ok === 'ask') {
    const { from, name, does, who } = taken;
    const problem = `it takes away of ours what someone has to agree to: it ${does} (${who})`;
    const remedy = 'Nothing of it was taken in. Ask whoever did that; if it is meant, give --may-clear too.';
    sayTrouble(outside, { findings: [wrongUse.at({ file: from, thing: name }, { problem, remedy })] });
    return;
  }
  if (!taken.ok) {
    const { from, name, problem } = taken;
    const remedy = 'Nothing of it was taken in. Look at where the file came from.';
    sayTrouble(outside, { findings: [wrongUse.at({ file: from, thing: name }, { problem, remedy })] });
    return;
  }
  const drift = taken.drift.map((each) => `  by our schema: ${each}`);
  say(outside, [`${taken.name}: ${outcomeWords(taken)}`, ...taken.asked.map(askedLine), ...drift].join('\n'));
}

const WORDS = {
  new: 'new here, taken in',
  same: 'the same as ours',
  older: 'older than ours, nothing changed',
  newer: 'newer than ours, taken in',
  merged: 'went its own way, merged with ours',
} as const;

function outcomeWords({ outcome, edited, asked, did }: Extract<TakenArrival, { readonly ok: true }>): string {
  const byHand =
    edited === 0
      ? ''
      : `; ${edited === 1 ? 'one thing in it was' : `${edited} things in it were`} edited outside offsider, which its history says`;
  const open =
    asked.length === 0
      ? ''
      : `; ${asked.length} ${asked.length === 1 ? 'question' : 'questions'} to settle, nothing of theirs is lost: offsider questions`;
  return `${WORDS[outcome]}${did === '' ? '' : `: it ${did}`}${byHand}${open}`;
}

function askedLine(question: OpenQuestion): string {
  return `  ${oneLine(question)}`;
}
