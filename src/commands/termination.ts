import type { Outside } from '../desk/outside.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Depth, depthFromMm, formatDepth, parseDepth } from '../quantity/depth.ts';
import { asOf } from '../record/chain.ts';
import type { Document } from '../record/document.ts';
import { adviceOn, situationOf } from '../standing/advice.ts';
import { extendedBy, situationAt } from '../termination/advice/what-if.ts';
import { deepestMm, type Situation } from '../termination/evaluate/situation.ts';
import { checkTermination } from '../termination/rules/check-rules.ts';
import { type AtProject, atProject, holeNamed, type Shared } from './at-project.ts';
import { sayFindings } from './check.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { replayHoles } from './termination/replay-holes.ts';
import { adviceText, whyText } from './termination/texts.ts';
import { whatIfRows } from './termination/what-if-rows.ts';

/** What `offsider termination` is given. */
export interface TerminationAsked extends Shared {
  readonly holes: readonly string[];
  /** A depth in metres: as if the hole had come so far. */
  readonly at?: string | undefined;
  /** With `at`: by what was recorded when the rig was there, amendments later left out. */
  readonly asThen: boolean;
  /** Lines of the shorthand that might come below the log, parted by `;`. */
  readonly whatIf?: string | undefined;
  readonly why?: string | undefined;
  readonly check: boolean;
  readonly replay: boolean;
  readonly json: boolean;
}

/** Advice on ending a hole: as it is, at a depth, with rows that might come; why a rule stands so; rules checked, or replayed on finished holes. */
export function termination(outside: Outside, asked: TerminationAsked): Promise<number> {
  return atProject(outside, asked, async (at) => {
    const { project } = at;
    if (asked.check) {
      const place = { file: 'project.json' };
      return sayFindings(
        outside,
        checkTermination(project.settings.termination, project.schema, place),
        asked.json,
      );
    }
    const holes = holesNamed(at, asked.holes);
    if (!holes.ok) return refuse(outside, ...holes.findings);
    if (asked.replay) {
      const documents = [...at.desk.documents().values()];
      return replayHoles(outside, project, holes.value, documents, asked.json);
    }
    const [hole, second] = holes.value;
    if (hole === undefined || second !== undefined) return refuse(outside, oneHole(holes.value.length));
    const situation = situationAsked(at, hole, asked);
    if (!situation.ok) return refuse(outside, ...situation.findings);
    return sayAdvice(outside, project, hole, situation.value, asked);
  });
}

function holesNamed(at: AtProject, names: readonly string[]): Result<readonly Document[]> {
  const found = names.map((name) => holeNamed(at, name));
  const findings = found.flatMap((each) => (each.ok ? [] : each.findings));
  return findings.length > 0
    ? refused(...findings)
    : ok(found.flatMap((each) => (each.ok ? [each.value] : [])));
}

/** The situation that is asked about, or what can't be used of what was said. */
function situationAsked(
  { project, desk }: AtProject,
  now: Document,
  asked: TerminationAsked,
): Result<Situation> {
  const atMm = asked.at === undefined ? undefined : parseDepth(asked.at);
  if (asked.at !== undefined && atMm === undefined)
    return refused(bad('--at', `${asked.at} is not a depth in metres`, 'Give one like 46 or 46.5.'));
  if (asked.asThen && atMm === undefined)
    return refused(bad('--as-then', 'it needs the depth that the rig had then', 'Give it with --at.'));
  const hole = asked.asThen && atMm !== undefined ? holeAsThen(now, atMm) : now;
  const whole = situationOf(project, hole, desk.documents().values());
  const deepest = deepestMm(situationOf(project, now, desk.documents().values()));
  if (atMm !== undefined && atMm > deepest)
    return refused(
      bad(
        '--at',
        `${asked.at} m is below all that is drilled or logged, ${formatDepth(depthFromMm(deepest))} m`,
        'Give a depth that the hole has come to; what may come below it is --what-if with its rows.',
      ),
    );
  const situation = atMm === undefined ? whole : situationAt(whole, atMm as Depth);
  if (asked.whatIf === undefined) return ok(situation);
  const rows = whatIfRows(project, situation, asked.whatIf);
  return rows.ok ? ok(extendedBy(situation, rows.value)) : rows;
}

function sayAdvice(
  outside: Outside,
  project: Project,
  hole: Document,
  situation: Situation,
  asked: TerminationAsked,
): number {
  const standing = adviceOn(project, hole, situation);
  const { outcomes, shown, ahead } = standing;
  if (asked.why !== undefined) {
    const outcome = outcomes.find((each) => each.rule.name === asked.why);
    const names = outcomes.map((each) => each.rule.name).join(', ');
    if (outcome === undefined)
      return refuse(outside, bad('--why', `no rule of this hole is called ${asked.why}`, `Rules: ${names}.`));
    if (asked.json) sayJson(outside, outcome);
    else say(outside, whyText(outcome));
    return EXIT.fine;
  }
  if (asked.json) sayJson(outside, { hole: headerOf(hole).name, shown, rules: outcomes, ahead });
  else say(outside, adviceText(headerOf(hole).name, standing));
  return EXIT.fine;
}

function oneHole(count: number): Finding {
  return bad(
    'hole',
    count === 0 ? 'no hole is named' : 'several holes are named',
    'Name one hole; several only with --replay.',
  );
}

function bad(field: string, problem: string, remedy: string): Finding {
  return wrongUse.at({ field }, { problem, remedy });
}

/**
 * A hole as it stood when the rig was at a depth: its history up to the first rod below that, so that whatever was amended later is left
 * out. `atMm` in millimetres; the hole as it is now where the rig has not gone past it.
 */
export function holeAsThen(hole: Document, atMm: number): Document {
  const cut = hole.history.findIndex(({ changes }) =>
    changes.some(
      (change) => 'put' in change && change.put[0] === 'rods' && Number(change.thing.depthMm) > atMm,
    ),
  );
  return cut < 0 ? hole : asOf(hole, cut);
}
