import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { recordDecision } from '../hole/commands/states.ts';
import type { Decision } from '../hole/ending.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, planOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Depth, depthFromMm, formatDepth } from '../quantity/depth.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { hashJson } from '../record/hash.ts';
import type { Until } from '../shorthand/reason.ts';
import { adviceFor, adviceOn, endingAt, situationOf } from '../standing/advice.ts';
import { headsOf } from '../standing/heads.ts';
import { aboutCall, stillAsks, waitingForCall } from '../termination/advice/about-call.ts';
import { isSettled } from '../termination/advice/answered.ts';
import { decide } from '../termination/advice/decision.ts';
import { isDanger } from '../termination/advice/verdict.ts';
import { rodEndFrom } from '../termination/conditions/rod-finished.ts';
import type { RuleOutcome } from '../termination/evaluate/evaluate-rule.ts';
import { speakerProblem } from './speakers.ts';

/** What a person decides about the end of a hole. */
export interface Decided {
  readonly depthMm: Depth;
  readonly reason: string;
  readonly called?: string;
  readonly settles?: readonly string[];
  readonly toMm?: Depth;
  readonly at: Stamp;
  readonly by: string;
  /** The project's other holes, whose metres count against a shared budget. */
  readonly others?: Iterable<Document>;
}

/**
 * The decision to end a hole at a depth, with the verdict and the rules as they are at that moment; refused where it goes
 * against the advice and gives no reason. Short of the planned depth it is an early end.
 */
export function endingDecision(project: Project, hole: Document, decided: Decided): Result<Decision> {
  const { called, by } = decided;
  const spoke = called === undefined ? undefined : callerRefusal(project, hole, called, by);
  if (spoke !== undefined) return refused(spoke);
  const planned = planOf(hole)?.depthMm;
  const early = planned !== undefined && decided.depthMm < planned;
  return decisionNow(project, hole, early ? 'ended early' : 'ended', decided);
}

/** A decision that ends nothing, at the drilled head: the hole is held open, or goes on past the plan or past what was asked. */
export function goingOn(
  project: Project,
  hole: Document,
  said: {
    readonly kind: 'held' | 'extended';
    readonly reason: string;
    readonly called?: string;
    readonly until?: Until;
  },
  maker: Maker,
  documents?: Iterable<Document>,
  insisted = false,
): Result<Made> {
  const hold = said.kind === 'extended' ? holdOn(hole) : undefined;
  if (hold !== undefined && hold.by !== maker.by && said.called === undefined && !insisted)
    return refused(
      REFUSALS.asked.at(
        { hole: headerOf(hole).name, fromMm: hold.depthMm },
        {
          problem: `the hole is ${heldWords(hold)}`,
          remedy: `Call ${hold.called ?? hold.by} first. Then say who was called (;extend called …), or add = at the end: going on ends the hold.`,
        },
      ),
    );
  const others = documents === undefined ? undefined : [...documents];
  const spoke = said.called === undefined ? undefined : callerRefusal(project, hole, said.called, maker.by);
  if (spoke !== undefined) return refused(spoke);
  const { outcomes } = adviceFor(project, hole, others);
  const about = said.kind === 'extended' && said.called !== undefined ? aboutCall(said.reason, outcomes) : [];
  if (about === undefined && !insisted) return refused(aboutWhich(hole, said, outcomes));
  const { drilledMm } = headsOf(hole);
  const toMm = said.until === undefined ? undefined : depthOf(said.until, drilledMm);
  const decided = {
    reason: said.reason,
    ...(said.called === undefined ? {} : { called: said.called }),
    ...(said.kind === 'extended' && said.called !== undefined
      ? { settles: (about ?? []).map(({ rule }) => rule.name) }
      : {}),
    ...(toMm === undefined ? {} : { toMm }),
    ...(others === undefined ? {} : { others }),
    depthMm: drilledMm,
    at: maker.at,
    by: maker.by,
  };
  const decision = decisionNow(project, hole, said.kind, decided);
  if (!decision.ok) return decision;
  const made = recordDecision(hole, decision.value, maker);
  if (!made.ok || said.kind !== 'extended') return made;
  const rodEndMm = rodEndFrom({ header: headerOf(hole) }, drilledMm + 1);
  const ended = hold === undefined ? '' : `; this ends the hold: ${heldWords(hold)}`;
  const end = toMm === undefined ? `, to the end of the rod at ${formatDepth(rodEndMm)} m` : '';
  return ok({
    ...made.value,
    what: `${made.value.what}${end}${ended}${settledAndNot(project, hole, decision.value, others)}`,
  });
}

/** A call is one to someone else: the signer, or no one, can't have been called. */
function callerRefusal({ settings }: Project, hole: Document, called: string, by: string) {
  const problem = speakerProblem(settings.people, by, called, 'another');
  return problem === undefined
    ? undefined
    : REFUSALS.asked.at(
        { hole: headerOf(hole).name },
        {
          problem,
          remedy: 'Type who was called, like called Ines Falk: …; leave it out where no one was reached.',
        },
      );
}

/** Several rules wait for a call and the line names none: a call about one of them says nothing of the others. */
function aboutWhich(
  hole: Document,
  { called, reason }: { readonly called?: string; readonly reason: string },
  outcomes: readonly RuleOutcome[],
) {
  const names = waitingForCall(outcomes).map(({ rule }) => rule.name);
  return REFUSALS.asked.at(
    { hole: headerOf(hole).name },
    {
      problem: `was the call about ${names.slice(0, -1).join(', ')} or ${names.at(-1)}?`,
      remedy: `Name it: ;extend called ${called}: ${reason}, ${names.at(-1)}. If it settled none of them, add = at the end.`,
    },
  );
}

/** The hold that is on a hole: its latest decision, where that is one. */
function holdOn(hole: Document): Decision | undefined {
  const last = holeNouns(hole, 'decisions').at(-1);
  return last?.kind === 'held' ? last : undefined;
}

/** `held by IF at 30 m: zone open`. */
function heldWords({ by, depthMm, reason }: Decision): string {
  return `held by ${by} at ${formatDepth(depthMm)} m${reason === undefined ? '' : `: ${reason}`}`;
}

/** What a decision to go on settles, and what asks still: a danger, whoever was called, and what the call was not about. */
function settledAndNot(
  project: Project,
  hole: Document,
  decision: Decision,
  others: Iterable<Document> | undefined,
): string {
  const { hold: _ended, decisions = [], ...rest } = situationOf(project, hole, others);
  const after = adviceOn(project, hole, { ...rest, decisions: [...decisions, decision] }).outcomes;
  const names = (outcomes: readonly RuleOutcome[]) => outcomes.map(({ rule }) => rule.name);
  const verb = (of: readonly unknown[]) => (of.length === 1 ? 'asks' : 'ask');
  const settled = names(after.filter((each) => each.answered === decision && isSettled(each)));
  const asks = stillAsks(after);
  const dangers = names(asks.filter(isDanger));
  const doubts = names(asks.filter((each) => !isDanger(each)));
  const how =
    decision.called === undefined
      ? 'say who was called, ;extend called Ines Falk: …'
      : `the call was not about ${doubts.length === 1 ? 'it' : 'them'}`;
  return [
    ...(settled.length === 0 ? [] : [`; settles ${settled.join(', ')}`]),
    ...(dangers.length === 0
      ? []
      : [
          `; ${dangers.join(', ')} still ${verb(dangers)}: going on settles no danger, go by the site procedure`,
        ]),
    ...(doubts.length === 0 ? [] : [`; ${doubts.join(', ')} still ${verb(doubts)}: ${how}`]),
  ].join('');
}

function depthOf(until: Until, drilledMm: Depth): Depth {
  return 'toMm' in until ? until.toMm : depthFromMm(drilledMm + until.moreMm);
}

function decisionNow(
  project: Project,
  hole: Document,
  kind: Decision['kind'],
  { depthMm, others, ...decided }: Decided,
): Result<Decision> {
  const situation = endingAt(situationOf(project, hole, others), depthMm);
  const { outcomes } = adviceOn(project, hole, situation);
  const hashes = { rulesHash: hashJson(project.settings.termination), schemaHash: hashJson(project.schema) };
  return decide({ kind, ...decided, ...hashes }, outcomes, situation, { hole: headerOf(hole).name });
}
