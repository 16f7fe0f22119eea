import type { StreamFact } from '../../hole/drilled.ts';
import { type Depth, depthFromMm } from '../../quantity/depth.ts';
import type { Row } from '../../value/row.ts';
import type { Situation } from '../evaluate/situation.ts';

/** The part of a situation above a depth: today's log and drilling as if the hole had come so far (`--at`). */
export function situationAt(situation: Situation, depthMm: Depth): Situation {
  const { hold, decisions, ...rest } = situation;
  return {
    ...rest,
    ...(hold === undefined || hold.sinceMm > depthMm ? {} : { hold }),
    rows: cutAt(situation.rows, depthMm),
    stream: cutAt<StreamFact>(situation.stream, depthMm),
    loggedMm: shallower(situation.loggedMm, depthMm),
    drilledMm: shallower(situation.drilledMm, depthMm),
    ...(decisions === undefined
      ? {}
      : { decisions: decisions.filter((decision) => decision.depthMm <= depthMm) }),
    direction: situation.direction.filter((each) => each.atMm <= depthMm),
    pace: situation.pace.filter((each) => each.atMm <= depthMm),
  };
}

/**
 * A situation with rows that might come below its logged head (`--what-if`): the log reaches to the foot of the new cover, and
 * the rig at least as far. Rows above the logged head are left out: what is logged is not in question.
 */
export function extendedBy(situation: Situation, rows: readonly Row[]): Situation {
  const added = rows.filter((row) => row.fromMm >= situation.loggedMm).sort((a, b) => a.fromMm - b.fromMm);
  const logged = situation.rows.filter((row) => row.fromMm < situation.loggedMm);
  const loggedMm = added.reduce<number>(
    (foot, row) => (row.fromMm <= foot ? Math.max(foot, row.toMm) : foot),
    situation.loggedMm,
  );
  return {
    ...situation,
    rows: [...logged, ...added],
    loggedMm: depthFromMm(loggedMm),
    drilledMm: depthFromMm(Math.max(situation.drilledMm, loggedMm)),
  };
}

function cutAt<Part extends { readonly fromMm: Depth; readonly toMm: Depth }>(
  parts: readonly Part[],
  depthMm: Depth,
): readonly Part[] {
  return parts
    .filter((part) => part.fromMm < depthMm)
    .map((part) => (part.toMm > depthMm ? { ...part, toMm: depthMm } : part));
}

function shallower(a: Depth, b: Depth): Depth {
  return a < b ? a : b;
}
