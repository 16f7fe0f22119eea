import { acceptFinding, openFinding, openHoleAgain, signHoleOff } from '../acts/acceptance.ts';
import { isOpen, type Judged, judgedAll } from '../check/accepted.ts';
import { checkHole, checkProject } from '../check/check-hole.ts';
import type { Outside } from '../desk/outside.ts';
import { unsavedFound } from '../files/findings.ts';
import { type Finding, formatFinding, ok, refused } from '../finding/finding.ts';
import { formatPlace } from '../finding/place.ts';
import { type Accepted, signedOff } from '../hole/acceptance.ts';
import { STANDING_FINDINGS } from '../hole/findings.ts';
import { type Document, documentKey } from '../record/document.ts';
import { shiftThings } from '../shift/shift.ts';
import { checkShifts } from '../shift/shift-checks.ts';
import { unfinishedIn } from '../standing/unfinished.ts';
import { type AtProject, atProject, holeNamed, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { submitOn } from './submit.ts';

/** What `offsider check` is given. */
export interface CheckAsked extends Shared {
  readonly hole?: string | undefined;
  readonly json: boolean;
  /** The least severity that gives the exit code 1; warning if left out. */
  readonly from?: Finding['severity'] | undefined;
  /** Key of a finding to accept as it is, with `because`; or to open again. */
  readonly accept?: string | undefined;
  readonly because?: string | undefined;
  readonly open?: string | undefined;
  /** Sign the hole off; a remark, or true for none. */
  readonly signOff?: string | true | undefined;
  /** Open a hole that was signed off again: the reason. */
  readonly openAgain?: string | undefined;
}

/**
 * Compares a project, or one hole of it, with every check, the worst first; accepted findings stand at the foot. Accepts one of them, or signs a
 * hole off, first where that is asked. 1 where a finding is open that is as bad as `from`.
 */
export function check(outside: Outside, asked: CheckAsked): Promise<number> {
  const isWriting = [asked.accept, asked.open, asked.signOff, asked.openAgain].some(
    (each) => each !== undefined,
  );
  return atProject(outside, { ...asked, saysFound: true, write: isWriting }, async (at) => {
    const hole = asked.hole === undefined ? undefined : holeNamed(at, asked.hole);
    if (hole !== undefined && !hole.ok) return refuse(outside, ...hole.findings);
    const id = hole?.value.id;
    const failed = isWriting ? await acceptAsked(at, asked, id) : undefined;
    if (failed !== undefined) return failed;
    return sayJudged(at, asked, id);
  });
}

/** Every finding of the project, or of one hole, with what was accepted of it. */
function judgedIn(at: AtProject, id: string | undefined): readonly Judged[] {
  const { desk, project, warnings } = at;
  const documents = desk.documents();
  if (id === undefined)
    return judgedAll(
      [
        ...desk.findings(),
        ...warnings,
        ...checkProject(project, documents.values()),
        ...checkShifts([...documents.values()], project.shift, desk.now()),
      ],
      documents.values(),
    );
  const hole = documents.get(documentKey({ kind: 'hole', id }));
  if (hole === undefined) return [];
  const ofFile = desk
    .findings()
    .filter(
      ({ place, code }) => place.hole === id || place.file === `holes/${id}.json` || OF_EVERY_HOLE.has(code),
    );
  return judgedAll([...ofFile, ...checkHole(project, hole, documents.values())], documents.values());
}

/** Does what is asked to be recorded; the exit code where it can't be. */
async function acceptAsked(
  at: AtProject,
  asked: CheckAsked,
  id: string | undefined,
): Promise<number | undefined> {
  const { desk, outside, project } = at;
  const maker = { newId: desk.newId, at: desk.now(), by: desk.person };
  const key = asked.accept ?? asked.open;
  const made = (() => {
    if (key !== undefined) {
      const found = judgedIn(at, id).filter((each) => each.key === key.toLowerCase());
      const [one] = found;
      if (one === undefined)
        return refused<never>(
          wrongUse.at(
            { thing: key },
            {
              problem: 'no finding is called that now',
              remedy: 'Copy its key from the list: offsider check.',
            },
          ),
        );
      return asked.accept === undefined ? openFinding(one) : acceptFinding(one, asked.because ?? '', maker);
    }
    const document = id === undefined ? undefined : desk.documents().get(documentKey({ kind: 'hole', id }));
    if (document === undefined)
      return refused<never>(
        wrongUse.at(
          { thing: 'the hole' },
          { problem: 'no hole is named', remedy: 'Name it: offsider check ZQRC014 --sign-off.' },
        ),
      );
    const remark = typeof asked.signOff === 'string' ? asked.signOff : '';
    const done =
      asked.openAgain === undefined
        ? signHoleOff(project, document, desk.documents().values(), remark, maker)
        : openHoleAgain(document, asked.openAgain, maker);
    return done.ok ? ok({ ...done.value, document }) : done;
  })();
  if (!made.ok) return refuse(outside, ...made.findings);
  const failed = await submitOn(at, { document: made.value.document, made: made.value });
  if (failed === undefined && !asked.json) say(outside, `${made.value.what}.`);
  return failed;
}

function sayJudged(at: AtProject, asked: CheckAsked, id: string | undefined): number {
  const { outside, desk } = at;
  const judged = judgedIn(at, id);
  const code = judged.some((each) => isOpen(each, asked.from ?? 'warning')) ? EXIT.findings : EXIT.fine;
  if (asked.json) {
    sayJson(
      outside,
      judged.map(({ finding, key, accepted, before }) => ({
        ...finding,
        key,
        ...(accepted === undefined ? {} : { accepted: acceptedFacts(accepted) }),
        ...(before === undefined
          ? {}
          : { acceptedBefore: { ...acceptedFacts(before), problem: before.problem } }),
      })),
    );
    return code;
  }
  const documents = [...desk.documents().values()];
  const hole = documents.find((each) => each.kind === 'hole' && each.id === id);
  const below = openIn(at, hole === undefined ? documents : [hole, ...shiftsOn(at, hole.id)]);
  const open = judged.filter((each) => isOpen(each));
  const settled = judged.filter(({ accepted }) => accepted !== undefined);
  say(
    outside,
    [
      ...open.map(openText),
      countText(
        open.map(({ finding }) => finding),
        settled.length === 0 ? below : [...below, ''],
      ),
      ...(settled.length === 0 ? [] : [`Accepted, ${settled.length}:`, ...settled.map(acceptedText)]),
      ...signOffText(hole),
      ...below,
    ].join('\n'),
  );
  return code;
}

const acceptedFacts = ({ by, at, reason }: Accepted) => ({ by, at, reason });

function openText({ finding, key, before }: Judged): string {
  const problem = `${finding.problem} [${key}]`;
  const text = `${finding.severity}: ${formatFinding({ ...finding, problem })}`;
  return before === undefined
    ? text
    : `${text}\n  ${before.by} accepted it on ${before.at.slice(0, 10)} (${before.reason}) when it said: ${before.problem}`;
}

function acceptedText({ finding, key, accepted }: Judged): string {
  return `  ${formatPlace(finding.place)}: ${finding.problem} [${key}]\n    ${accepted?.by} ${accepted?.at.slice(0, 10)}: ${accepted?.reason}`;
}

function signOffText(hole: Document | undefined): readonly string[] {
  const by = hole === undefined ? undefined : signedOff(hole);
  if (by === undefined) return [];
  return [
    `Signed off by ${by.by} on ${by.at.slice(0, 10)}${by.reason === undefined ? '' : `: ${by.reason}`}. It takes no change until it is opened again.`,
  ];
}

/** Shifts whose record or plod names a hole: what is open there is open of the hole too. */
function shiftsOn({ desk }: AtProject, hole: string): readonly Document[] {
  return [...desk.documents().values()].filter(
    (each) =>
      each.kind === 'shift' &&
      [...shiftThings(each, 'activities'), ...shiftThings(each, 'plodLines')].some(
        ([, thing]) => thing.hole === hole,
      ),
  );
}

/** What the opening found that can be about any hole: rows that are not in the log yet, a clock that stamps wrongly. */
const OF_EVERY_HOLE: ReadonlySet<string> = new Set([unsavedFound.code, STANDING_FINDINGS.clockBehind.code]);

/** What is not finished in some documents, in the words of the letter to camp. It is not a finding: a hole that goes on always has some. */
function openIn({ desk, project }: AtProject, of: readonly Document[]): readonly string[] {
  const documents = [...desk.documents().values()];
  const open = unfinishedIn({ project, documents, now: desk.now() }, of);
  const items = open.flatMap(({ name, items: each }) => each.map((item) => `  ${name}: ${item}`));
  return items.length === 0 ? [] : ['Not finished:', ...items];
}

/** Prints findings on stdout, with their count, then what is given to stand below; gives 1 where one of them is more than a note. */
export function sayFindings(
  outside: Outside,
  findings: readonly Finding[],
  json: boolean,
  below: readonly string[] = [],
): number {
  if (json) sayJson(outside, findings);
  else
    say(
      outside,
      [
        ...findings.map((finding) => `${finding.severity}: ${formatFinding(finding)}`),
        countText(findings, below),
        ...below,
      ].join('\n'),
    );
  return findings.some((finding) => finding.severity !== 'note') ? EXIT.findings : EXIT.fine;
}

/** What is not finished is no finding, and yet "nothing" is not to be read above it. */
function countText(findings: readonly Finding[], below: readonly string[]): string {
  if (findings.length === 0 && below.length === 0) return 'Nothing found.';
  const count = (severity: Finding['severity']) =>
    findings.filter((each) => each.severity === severity).length;
  const words = (['fault', 'warning', 'note'] as const).map(
    (each) => `${count(each)} ${each}${count(each) === 1 ? '' : 's'}`,
  );
  return `${words.join(', ')}.`;
}
