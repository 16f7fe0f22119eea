import { resolve } from 'node:path';
import type { Received } from '../desk/contract.ts';
import type { Outside } from '../desk/outside.ts';
import { readCopy } from '../files/read-copy.ts';
import { realDisk } from '../files/real-disk.ts';
import { type AtProject, atProject } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, say, sayTrouble } from './say.ts';

/** What `offsider receive` is given. */
export interface ReceiveAsked {
  readonly folder: string;
  readonly by?: string | undefined;
  /** Files of documents, copies of ours or new ones. */
  readonly files: readonly string[];
}

/**
 * Takes copies of documents into a project: a newer one is taken, an older one changes nothing, one that went its own way is
 * merged, and where both changed the same cell ours stays and a question is kept. 0 where all went in; 1 where one was refused or asks.
 */
export function receive(outside: Outside, asked: ReceiveAsked): Promise<number> {
  return atProject(outside, { folder: asked.folder, write: true, by: asked.by }, async (at) => {
    let code: number = EXIT.fine;
    for (const file of asked.files) if (!(await takeFile(at, file))) code = EXIT.findings;
    return code;
  });
}

/** Takes one file in; true where it went in and asks nothing. */
async function takeFile(at: AtProject, file: string): Promise<boolean> {
  const copy = await readCopy(realDisk, resolve(file));
  if (!copy.ok) {
    sayTrouble(at.outside, { findings: copy.findings });
    return false;
  }
  const received = at.desk.receive(copy.value);
  const saved = received.ok ? await received.durable : undefined;
  if (!received.ok || saved?.ok === false) {
    const problem = received.ok
      ? `it is not saved: ${saved?.ok === false ? saved.problem : ''}`
      : received.problem;
    sayTrouble(at.outside, {
      findings: [
        wrongUse.at(
          { file },
          { problem, remedy: 'Nothing of it was taken in. Look at where the file came from.' },
        ),
      ],
    });
    return false;
  }
  say(at.outside, `${received.document.kind} ${received.document.id}: ${outcomeWords(received)}`);
  return received.questions === 0;
}

function outcomeWords({ outcome, questions }: Extract<Received, { readonly ok: true }>): string {
  const words = {
    new: 'new here, taken in',
    same: 'the same as ours',
    older: 'older than ours, nothing changed',
    newer: 'newer than ours, taken in',
    merged: 'went its own way, merged with ours',
  }[outcome];
  if (questions === 0) return words;
  return `${words}; ${questions} ${questions === 1 ? 'cell was' : 'cells were'} changed in both: ours stands, theirs is kept as a question`;
}
