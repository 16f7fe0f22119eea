import { notHere } from '../desk/not-here.ts';
import type { Outside } from '../desk/outside.ts';
import { headerOf, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { azimuth, formatAzimuth } from '../quantity/azimuth.ts';
import { depthFromMm, formatDepth, metres } from '../quantity/depth.ts';
import { asOf, chainFault } from '../record/chain.ts';
import type { Document, Entry } from '../record/document.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { headsOf, logged } from '../standing/heads.ts';
import { chainWords, entryWords, stateWords } from '../standing/history-words.ts';
import { numbersLabelled } from '../standing/stream.ts';
import { isLinedUp } from '../standing/survey.ts';
import { type AtProject, atProject, holeNamed, holesOf, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayJson } from './say.ts';
import { tableText } from './table-text.ts';

/** What `offsider holes` is given. */
export interface HolesAsked extends Shared {
  readonly json: boolean;
  /** Name of a hole whose history is wanted instead of the list. */
  readonly history?: string | undefined;
  /** With `history`: the hole after the edit of this number. */
  readonly after?: number | undefined;
}

/** Lists the holes of a project with their states (1 where one can't be read), or the history of one: who did what, when, before and after, and any earlier state. */
export function holes(outside: Outside, asked: HolesAsked): Promise<number> {
  return atProject(outside, asked, async (at) => {
    if (asked.history === undefined) {
      const found = holesOf(at.desk);
      const gone = notHere(at.desk).filter(({ kind }) => kind === 'hole');
      if (asked.json)
        sayJson(outside, [
          ...found.map((hole) => holeFacts(at.project, hole)),
          ...gone.map(({ id, file, why }) => ({ id, name: id, file, problem: why })),
        ]);
      else
        say(
          outside,
          [holesText(at.project, found), ...gone.map(({ id, file, why }) => `${id}: ${why} (${file})`)].join(
            '\n',
          ),
        );
      return gone.length === 0 ? EXIT.fine : EXIT.findings;
    }
    const hole = holeNamed(at, asked.history);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    return sayHistory(at, hole.value, asked);
  });
}

/** Every edit of a hole with what stood before and after it, and whether the chain holds; or the hole as it stood after one of them. */
function sayHistory({ outside, project }: AtProject, hole: Document, asked: HolesAsked): number {
  const { schema } = project;
  const chain = chainWords(hole);
  const code = chainFault(hole.history) === undefined ? EXIT.fine : EXIT.findings;
  if (asked.after === undefined) {
    if (asked.json) sayJson(outside, hole.history);
    else
      say(
        outside,
        [...hole.history.flatMap((entry, index) => entryText(schema, hole, entry, index)), chain].join('\n'),
      );
    return code;
  }
  const edits = hole.history.length;
  if (asked.after < 1 || asked.after > edits)
    return refuse(
      outside,
      wrongUse.at(
        { hole: hole.id },
        { problem: `it has no edit ${asked.after}`, remedy: `Give the number of an edit, 1 to ${edits}.` },
      ),
    );
  const then = asOf(hole, asked.after);
  if (asked.json) sayJson(outside, then.tables);
  else say(outside, [...stateText(schema, then), `${chain}; ${edits} edits in all`].join('\n'));
  return code;
}

function entryText(schema: LoggingSchema, hole: Document, entry: Entry, index: number): readonly string[] {
  const { when, by, what, outside, changes } = entryWords(schema, hole, entry);
  const head = `${String(index + 1).padStart(4)}  ${when}  ${by}  ${what}${outside ? ' (edited outside)' : ''}`;
  return [head, ...changes.map((each) => `        ${each}`)];
}

function stateText(schema: LoggingSchema, hole: Document): readonly string[] {
  return stateWords(schema, hole).flatMap(({ head, lines }) => [head, ...lines.map((each) => `  ${each}`)]);
}

/** A hole as data for other programs: metres, with the unit in the name. */
function holeFacts(project: Project, hole: Document) {
  const { name, state, stateReason, parent, plannedName } = headerOf(hole);
  const { drilledMm, loggedMm, behindMm } = headsOf(hole);
  const plan = planOf(hole);
  return {
    id: hole.id,
    name,
    plannedName,
    state,
    stateReason,
    parent,
    drilledM: metres(drilledMm),
    loggedM: metres(loggedMm),
    notLoggedM: metres(depthFromMm(behindMm)),
    linedUp: isLinedUp(hole),
    bagsNumbered: numbersLabelled(project, hole),
    plannedM: plan === undefined ? undefined : metres(plan.depthMm),
    azimuthDeg: plan?.azimuthDeg,
    azimuthNorth: plan?.azimuthNorth,
    dipDeg: plan?.dipDeg,
    target: plan?.target,
  };
}

/** The list of holes as text. */
export function holesText(project: Project, found: readonly Document[]): string {
  if (found.length === 0) return 'No holes yet.';
  const head = [
    'hole',
    'state',
    'drilled m',
    'logged m',
    'planned m',
    'azimuth',
    'dip',
    'lined up',
    'bags',
    'for',
  ];
  return tableText([head, ...found.map((hole) => holeCells(project, hole))]);
}

function holeCells(project: Project, hole: Document): readonly string[] {
  const { name, state, stateReason, parent, imported } = headerOf(hole);
  const { drilledMm } = headsOf(hole);
  const { toMm, missingMm } = logged(hole);
  const plan = planOf(hole);
  const from = imported === undefined ? plan?.target : 'imported, not logged here';
  const because = stateReason ?? (parent === undefined ? from : `${parent.reason} of ${parent.hole}`);
  return [
    name,
    state,
    formatDepth(drilledMm),
    formatDepth(toMm - missingMm),
    plan === undefined ? '' : formatDepth(plan.depthMm),
    plan === undefined ? '' : formatAzimuth(azimuth(plan.azimuthDeg, plan.azimuthNorth)),
    plan === undefined ? '' : String(plan.dipDeg),
    isLinedUp(hole) ? 'yes' : '',
    String(numbersLabelled(project, hole) || ''),
    because ?? '',
  ];
}
