import { resolve } from 'node:path';
import type { LeftAlone } from '../desk/arriving/arrival.ts';
import { isFine, type Received, type ReceivedAt, receiveFiles } from '../desk/arriving/receive-files.ts';
import type { TakenArrival } from '../desk/arriving/take-arrival.ts';
import type { Outside } from '../desk/outside.ts';
import { realDisk } from '../files/real-disk.ts';
import type { OpenQuestion } from '../standing/questions.ts';
import { atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { oneLine } from './questions.ts';
import { EXIT, say, sayTrouble } from './say.ts';

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
    const { desk, project } = at;
    const place = { desk, project, disk: realDisk, mayClear: asked.mayClear === true };
    return (await takeFiles(outside, place, asked.files)) ? EXIT.fine : EXIT.findings;
  });
}

/** Takes files in, saying what comes of each; true where everything went in and asks nothing. */
export async function takeFiles(
  outside: Outside,
  at: ReceivedAt,
  files: readonly string[],
): Promise<boolean> {
  let fine = true;
  await receiveFiles(
    at,
    files.map((file) => resolve(file)),
    (received) => {
      sayReceived(outside, received);
      if (!isFine(received)) fine = false;
    },
  );
  return fine;
}

/** Says what came of one thing that arrived. */
export function sayReceived(outside: Outside, received: Received): void {
  if (received.kind === 'taken') sayTaken(outside, received.taken);
  else if (received.kind === 'refused') sayTrouble(outside, { findings: received.findings });
  else if (received.kind === 'left') sayLeft(outside, received.left, received.drift);
  else if (received.kind === 'heard') say(outside, heardWords(received));
  else if (received.kind === 'waiting') say(outside, waitingWords(received));
  else {
    const { what, problem } = received;
    const remedy =
      'Free space and receive it again: what was taken in stays, and changes nothing a second time.';
    sayTrouble(outside, { findings: [wrongUse.at({ thing: what }, { problem, remedy })] });
  }
}

function sayLeft(outside: Outside, { what, why, lacking }: LeftAlone, drift: readonly string[]): void {
  if (lacking === undefined)
    say(outside, [`Left: ${what}: ${why}`, ...drift.map((each) => `  ${each}`)].join('\n'));
  else {
    const about = { problem: why, remedy: `${lacking} What else came was taken in.` };
    sayTrouble(outside, { findings: [wrongUse.at({ thing: what }, about)] });
  }
}

function sayTaken(outside: Outside, taken: TakenArrival): void {
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

/** What another copy acknowledged of ours. */
function heardWords({ by, holds, of }: Extract<Received, { readonly kind: 'heard' }>): string {
  return `The copy of ${by} holds ${holds} of ${of} documents as they are here. What is packed for it next goes on from there.`;
}

/** Which parts of a bundle are here and which are not. */
function waitingWords({ header, missing }: Extract<Received, { readonly kind: 'waiting' }>): string {
  const here = header.of - missing.length;
  return `${header.bundle}: ${here} of ${header.of} parts ${here === 1 ? 'is' : 'are'} here and kept in the inbox. Missing: ${missing.length === 1 ? 'part' : 'parts'} ${missing.join(', ')}. Nothing of it is taken in until all are here: receive the ${missing.length === 1 ? 'mail that brings it' : 'mails that bring them'}.`;
}
