import { makingOf } from '../acts/making.ts';
import type { MissingDocument } from '../desk/contract.ts';
import type { Outside } from '../desk/outside.ts';
import { remedyUnsaved, untilSaved } from '../desk/until-saved.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';

/** What `offsider recover` is given. */
export interface RecoverAsked extends Shared {
  /** The file (`holes/ZQRC001.json`) or id of a document whose file is gone; every one is listed if none is given. */
  readonly file?: string | undefined;
  /** Why it may be let go. */
  readonly letGo?: string | undefined;
  /** Make it again from what the journal holds. */
  readonly restore: boolean;
  readonly json: boolean;
}

/**
 * Lists documents whose files are gone, with what the journal still holds of each; lets one go for good, with the reason, or makes
 * it again from the journal. 0 where none is missing any more, 1 where one is.
 */
export function recover(outside: Outside, asked: RecoverAsked): Promise<number> {
  const { file } = asked;
  if (file === undefined) return atProject(outside, asked, async (at) => list(at, asked.json));
  return atProject(outside, { ...asked, write: true }, async (at) => {
    const wanted = file.toUpperCase();
    const found = at.desk
      .missing()
      .find((each) => each.file.toUpperCase() === wanted || each.name.id === wanted);
    if (found === undefined) return refuse(outside, notMissing(at, file));
    if (asked.restore === (asked.letGo !== undefined)) return refuse(outside, sayWhich(found));
    return asked.restore ? restore(at, found) : letGo(at, found, asked.letGo ?? '');
  });
}

function list({ outside, desk }: AtProject, json: boolean): number {
  const missing = desk.missing();
  if (json) sayJson(outside, missing);
  else say(outside, missing.length === 0 ? 'No file is missing.' : missing.map(missingText).join('\n'));
  return missing.length === 0 ? EXIT.fine : EXIT.findings;
}

function missingText({ file, held, isOlder }: MissingDocument): string {
  if (isOlder) return `${file} is older than when it was last written`;
  const what =
    held.length === 0
      ? [
          'the journal in use holds nothing of it; an older copy that is put back gets what the journal set aside',
        ]
      : held;
  return [`${file} is missing`, ...what.map((each) => `  ${each}`)].join('\n');
}

function notMissing({ desk }: AtProject, file: string) {
  const names = desk.missing().map((each) => each.file);
  return wrongUse.at(
    { file },
    {
      problem: 'this file is not missing',
      remedy: names.length === 0 ? 'No file of this project is.' : `Missing: ${names.join(', ')}.`,
    },
  );
}

const OLDER =
  'Put the later file back, or take a copy in with receive: nothing is lost then. Or go on from this one: --let-go and why.';

function sayWhich({ file, isOlder }: MissingDocument) {
  if (isOlder)
    return wrongUse.at({ file }, { problem: 'it is older than when it was last written', remedy: OLDER });
  return wrongUse.at(
    { file },
    {
      problem: 'what to do with it is missing',
      remedy:
        'Say either --restore, or --let-go and why. A copy of the file is taken in with receive. Nothing was changed.',
    },
  );
}

async function restore(
  { outside, desk, project }: AtProject,
  { name, file, isOlder }: MissingDocument,
): Promise<number> {
  if (isOlder)
    return refuse(
      outside,
      wrongUse.at({ file }, { problem: 'the journal holds nothing of what it lacks', remedy: OLDER }),
    );
  const restored = desk.restore(name, makingOf(project, name, desk.now()));
  if (!restored.ok) return refuse(outside, refused(file, restored.problem));
  const saved = await untilSaved(desk, restored);
  if (!saved.ok)
    return refuse(
      outside,
      wrongUse.at({ file }, { problem: saved.problem, remedy: remedyUnsaved(saved, 'the command') }),
    );
  say(outside, `${file}: ${restored.edit.what}`);
  return EXIT.fine;
}

async function letGo(
  { outside, desk }: AtProject,
  { name, file }: MissingDocument,
  why: string,
): Promise<number> {
  const done = await desk.letGo(name, why);
  if (!done.ok) return refuse(outside, refused(file, done.problem));
  say(
    outside,
    done.kept === undefined
      ? `${file}: work goes on from this copy; what was later is given up`
      : `${file} is given up. What the journal had of it is kept in ${done.kept}`,
  );
  return EXIT.fine;
}

const refused = (file: string, problem: string) =>
  wrongUse.at({ file }, { problem, remedy: 'Put the file back, or take a copy of it in with receive.' });
