import { checkHole, checkProject } from '../check/check-hole.ts';
import type { Outside } from '../desk/outside.ts';
import { unsavedFound } from '../files/findings.ts';
import { type Finding, formatFinding } from '../finding/finding.ts';
import { STANDING_FINDINGS } from '../hole/findings.ts';
import type { Document } from '../record/document.ts';
import { shiftThings } from '../shift/shift.ts';
import { checkShifts } from '../shift/shift-checks.ts';
import { unfinishedIn } from '../standing/unfinished.ts';
import { type AtProject, atProject, holeNamed, type Shared } from './at-project.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';

/** What `offsider check` is given. */
export interface CheckAsked extends Shared {
  readonly hole?: string | undefined;
  readonly json: boolean;
}

/** Compares a project, or one hole of it, with every check. Notes are said and are not a reason for the exit code 1. */
export function check(outside: Outside, asked: CheckAsked): Promise<number> {
  return atProject(outside, { ...asked, saysFound: true }, async (at) => {
    const documents = at.desk.documents();
    if (asked.hole === undefined) {
      const found = [
        ...checkProject(at.project, documents.values()),
        ...checkShifts([...documents.values()], at.project.shift, at.desk.now()),
      ];
      const findings = [...at.desk.findings(), ...at.warnings, ...found];
      return sayFindings(outside, findings, asked.json, openIn(at, [...documents.values()]));
    }
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const { id } = hole.value;
    const ofFile = at.desk
      .findings()
      .filter(
        ({ place, code }) =>
          place.hole === id || place.file === `holes/${id}.json` || OF_EVERY_HOLE.has(code),
      );
    const found = checkHole(at.project, hole.value, documents.values());
    return sayFindings(
      outside,
      [...ofFile, ...found],
      asked.json,
      openIn(at, [hole.value, ...shiftsOn(at, id)]),
    );
  });
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
  return `${count('fault')} faults, ${count('warning')} warnings, ${count('note')} notes.`;
}
