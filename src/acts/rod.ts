import { ok, type Result, refused } from '../finding/finding.ts';
import { rodDone } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { type Depth, formatDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import { fixedWords } from '../sampling/rod/effect.ts';
import type { Fix, RodSeen } from '../sampling/rod/mismatch.ts';
import { type NamedMismatch, type RodCheck, rodCheck } from '../sampling/rod/rod-check.ts';
import { unbaggedWords } from '../sampling/stream/issue.ts';
import { brokenOff } from '../standing/breaks.ts';
import { clockBehindWords } from '../standing/clock.ts';
import { depthOfRod } from '../standing/rods.ts';
import { otherHoles, streamStateOf } from '../standing/stream.ts';

/** A rod about to be recorded: its count and the depth it ends at. */
export interface RodAt {
  readonly rod: number;
  readonly depthMm: Depth;
}

/**
 * Holds what was read off the bags of a rod against the bags that it should have given, knowing the depth by the rod count and, from
 * the shift record, whether there was a break since the rod before. Changes nothing.
 */
export function checkRod(
  project: Project,
  documents: Iterable<Document>,
  hole: Document,
  at: RodAt,
  seen: RodSeen,
  now: Stamp,
): RodCheck {
  const all = [...documents];
  const afterBreak = brokenOff(all, hole, now);
  const known: RodSeen = {
    ...seen,
    depthByRodsMm: depthOfRod(hole, at.rod),
    ...(afterBreak === undefined ? {} : { afterBreak }),
  };
  return rodCheck(project.sampling, streamStateOf(hole, at.depthMm), known, otherHoles(all, hole));
}

/**
 * The rod as it should be: its bags are issued as expected, time, depth and last bag stamped. Where something was read off the bags and agreed,
 * that is kept: no later look can then find this rod guilty.
 */
export function rodAsExpected(
  hole: Document,
  at: RodAt,
  { expected, row }: Pick<RodCheck, 'expected' | 'row'>,
  maker: Maker,
  seen: RodSeen = {},
): Result<Made> {
  const last = row.at(-1)?.number;
  const rod = {
    at: maker.at,
    rod: at.rod,
    depthMm: at.depthMm,
    bags: seen.count ?? row.filter(({ kind }) => kind !== 'no sample').length,
    ...(last === undefined ? {} : { lastBag: last }),
    ...(isRead(seen) ? { read: true as const } : {}),
  };
  return byTheClock(hole, maker, rodDone(hole, rod, expected, maker));
}

/** A rod with a word of the clock where that lies more than a day behind what the hole has already: its time is wrong then. */
function byTheClock(hole: Document, maker: Maker, done: Result<Made>): Result<Made> {
  const behind = done.ok ? clockBehindWords([hole], maker.at) : undefined;
  if (!done.ok || behind === undefined) return done;
  return ok({ ...done.value, what: `${done.value.what}, at a WRONG time: ${behind}` });
}

/** A rod recorded, with the metres that have no bag named in its words: numbers ran out. */
export function withUnbagged(done: Result<Made>, { unbagged: metres }: RodCheck): Result<Made> {
  if (!done.ok || metres === undefined) return done;
  return ok({ ...done.value, what: `${done.value.what}; ${unbaggedWords(metres)}` });
}

/** Asked where the number read is kept for a metre that gave nothing: rock of another metre may be in that calico. Undefined where it is not. */
export function keptReadAsked({
  keptRead,
  row,
}: RodCheck): { readonly problem: string; readonly remedy: string } | undefined {
  const { number, fromMm, toMm } = keptRead ?? {};
  if (number === undefined || fromMm === undefined || toMm === undefined) return undefined;
  const last = row.findLast(({ kind }) => kind !== 'no sample')?.number;
  const instead =
    last === undefined ? '' : `, or type ${last.slice(-3)} if that is the last one with rock in it`;
  return {
    problem: `${number} is kept for ${formatInterval({ fromMm, toMm })}, where nothing came up`,
    remedy: `Look into the calico. Empty: add = behind its digits${instead}. Rock of that metre: ;bag ${formatDepth(fromMm)}-${formatDepth(toMm)} ${number.slice(-3)} = first.`,
  };
}

/** True where someone read a number or counted, so that the rod is known to be right. */
export function isRead({ digits, count }: RodSeen): boolean {
  return digits !== undefined || count !== undefined;
}

/** The rod with a mismatch mended one of its ways: what lies on the ground is recorded, in one edit that can be undone. */
export function rodMended(
  hole: Document,
  at: RodAt,
  named: NamedMismatch,
  way: number,
  maker: Maker,
): Result<Made> {
  const chosen = named.ways[way];
  if (chosen === undefined) {
    return refused(
      REFUSALS.notThere.at(
        { hole: headerOf(hole).name },
        { problem: 'there is no such way to fix it', remedy: 'Choose one of the ways shown.' },
      ),
    );
  }
  const { fix } = chosen;
  const filled = fix.issue.filter((bag) => bag.kind !== 'spoiled');
  const last = filled.at(-1)?.number;
  const rod = {
    at: maker.at,
    rod: at.rod,
    depthMm: (fix.depthMm ?? at.depthMm) as Depth,
    bags: filled.length + placedIn(hole, fix.depthMm ?? at.depthMm),
    read: true as const,
    mismatch: named.code,
    ...(last === undefined ? {} : { lastBag: last }),
  };
  const done = byTheClock(hole, maker, rodDone(hole, rod, fix.issue, maker));
  if (!done.ok) return done;
  return ok({
    what: `${done.value.what}, ${fixedWords(named.name, chosen)}`,
    changes: [...done.value.changes, ...fixChanges(hole, fix, maker)],
  });
}

/** How many bags placed by hand since the rod before lie in the row of one that ends at a depth. */
function placedIn(hole: Document, depthMm: number): number {
  return holeNouns(hole, 'bags').filter(
    ({ byHand, rod, kind, toMm }) =>
      byHand === true && rod === undefined && kind !== 'spoiled' && (toMm ?? 0) <= depthMm,
  ).length;
}

/** The rod recorded with the bags expected, though the check disagreed: the mismatch and what was read stay noted, to be mended later. */
export function rodNoted(
  hole: Document,
  at: RodAt,
  check: RodCheck,
  seen: RodSeen,
  maker: Maker,
): Result<Made> {
  const rod = {
    at: maker.at,
    rod: at.rod,
    depthMm: at.depthMm,
    ...(seen.count === undefined ? {} : { bags: seen.count }),
    ...(seen.digits === undefined ? {} : { lastBag: seen.digits }),
    mismatch: check.named[0]?.code ?? 'unnamed',
    unmended: true as const,
  };
  return byTheClock(hole, maker, rodDone(hole, rod, check.expected, maker));
}

/** Everything of a mending beside the bags that the rod issues: bags amended, controls that wait, choices, metres without a sample. */
export function fixChanges(hole: Document, fix: Fix, maker: Maker): readonly Change[] {
  const amended = (fix.amend ?? []).flatMap(({ number, bag }): readonly Change[] => {
    const there = holeThings(hole, 'bags').find(([, each]) => each.number === number);
    if (there === undefined) return [];
    const { number: _number, rod: _rod, ...set } = bag;
    const unset = ['fromMm', 'toMm', 'rank', 'of', 'method', 'material', 'reason'].filter(
      (field) => field in there[1] && !(field in set),
    );
    return [{ patch: ['bags', there[0]], set: set as Thing, ...(unset.length === 0 ? {} : { unset }) }];
  });
  const putOff = (fix.putOff ?? []).map(
    (each): Change => ({ put: ['putOff', maker.newId()], thing: { ...each, at: maker.at } as Thing }),
  );
  const choices = (fix.choices ?? []).map(
    (each): Change => ({ put: ['controlChoices', maker.newId()], thing: { ...each, at: maker.at } as Thing }),
  );
  const unsampled = (fix.unsampled ?? []).map(
    ({ fromMm, toMm, reason }): Change => ({
      put: ['stream', maker.newId()],
      thing: { fromMm, toMm, unsampled: reason },
    }),
  );
  return [...amended, ...putOff, ...choices, ...unsampled];
}
