import { resolve } from 'node:path';
import { isFine, type Received, type ReceivedAt, receiveFiles } from '../desk/arriving/receive-files.ts';
import { receivedWords } from '../desk/arriving/received-words.ts';
import type { Outside } from '../desk/outside.ts';
import { realDisk } from '../files/real-disk.ts';
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
  const words = receivedWords(received, '--may-clear');
  if (words.fine) say(outside, [...words.lines, ...askedLines(received)].join('\n'));
  else if ('findings' in words) sayTrouble(outside, { findings: words.findings });
  else sayTrouble(outside, { findings: [wrongUse.at(words.place, words)] });
}

/** The questions that a copy taken in left, a line each. */
function askedLines(received: Received): readonly string[] {
  if (received.kind !== 'taken' || received.taken.ok !== true) return [];
  return received.taken.asked.map((question) => `  ${oneLine(question)}`);
}
