import type { StreamFact } from '../../hole/drilled.ts';
import { type Depth, depthFromMm } from '../../quantity/depth.ts';
import { overlaps } from '../../quantity/interval.ts';
import type { Row } from '../../value/row.ts';
import { deepestMm, type Situation } from '../evaluate/situation.ts';

/** The part of a situation above a depth: today's log and drilling as if the hole had come so far (`--at`). */
export function situationAt(situation: Situation, depthMm: Depth): Situation {
  const { hold, decisions, ...rest } = situation;
  return {
    ...rest,
    cutMm: shallower(depthFromMm(deepestMm(situation)), depthMm),
    ...(hold === undefined || hold.sinceMm > depthMm ? {} : { hold }),
    rows: cutAt(situation.rows, depthMm),
    stream: cutAt<StreamFact>(situation.stream, depthMm),
    ...(situation.waiting === undefined
      ? {}
      : { waiting: situation.waiting.filter(({ atMm }) => atMm < depthMm) }),
    ...(situation.felt === undefined ? {} : { felt: cutAt(situation.felt, depthMm) }),
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
 * A situation with rows that might come where nothing is logged (`--what-if`): the log reaches to the foot of the new cover, and
 * the rig at least as far. Rows over logged metres are left out: what is logged is not in question.
 */
export function extendedBy(situation: Situation, rows: readonly Row[]): Situation {
  const added = rows.filter((row) => !situation.rows.some((logged) => overlaps(row, logged)));
  const down = [...situation.rows, ...added].sort((a, b) => a.fromMm - b.fromMm);
  const loggedMm = down.reduce<number>(
    (foot, row) => (row.fromMm <= foot ? Math.max(foot, row.toMm) : foot),
    situation.loggedMm,
  );
  return {
    ...situation,
    rows: down,
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
