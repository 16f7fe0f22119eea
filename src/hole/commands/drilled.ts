import { ok, type Result, refused } from '../../finding/finding.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Change, Document, Id, Thing } from '../../record/document.ts';
import type { Bag, BagRun, PutOff } from '../bags.ts';
import type { RodDone, StreamFact } from '../drilled.ts';
import { REFUSALS } from '../findings.ts';
import { headerOf, holeNouns, holeThing, holeThings } from '../hole.ts';
import type { Made, Maker } from './made.ts';
import { closedRefusal } from './open-hole.ts';

/**
 * The latest rod done: the deepest there is, for the drilled head only goes down. Not the one made last: after a merge or a redo
 * that may be a shallower one.
 */
export function latestRod(hole: Document): RodDone | undefined {
  return holeNouns(hole, 'rods').reduce<RodDone | undefined>(
    (deepest, rod) => (deepest === undefined || rod.depthMm > deepest.depthMm ? rod : deepest),
    undefined,
  );
}

/** The drilled depth in millimetres: that of the latest rod done, else of a hole that was imported its final depth, else where logging starts. */
export function drilledMm(hole: Document): number {
  const { imported, logFromMm } = headerOf(hole);
  return latestRod(hole)?.depthMm ?? imported?.depthMm ?? logFromMm;
}

/**
 * A rod is done: the drilled head moves, and the bags of the rod are issued, each as worked out beforehand (nothing is derived
 * again on replay). Refuses a depth at or above the drilled one and a number that was used before in this hole.
 */
export function rodDone(
  hole: Document,
  rod: RodDone,
  bags: readonly Omit<Bag, 'rod'>[],
  maker: Maker,
): Result<Made> {
  const closed = closedRefusal(hole);
  if (closed) return refused(closed);
  const header = headerOf(hole);
  if (header.state !== 'drilling') {
    return refused(
      REFUSALS.stateWrong.at(
        { hole: header.name },
        {
          problem: `the hole is ${header.state}`,
          remedy: 'Start drilling it first: Enter on the list of holes, or offsider enter with --rig.',
        },
      ),
    );
  }
  if (rod.depthMm <= drilledMm(hole)) {
    return refused(
      REFUSALS.rodBackwards.at(
        { hole: header.name, fromMm: rod.depthMm },
        {
          problem: `${formatDepth(rod.depthMm)} m is not below the ${formatDepth(drilledMm(hole))} m drilled already`,
          remedy: 'Ask the driller to check the rod count, then give the depth again.',
        },
      ),
    );
  }
  const used = usedTwice(hole, bags);
  if (used) return used;
  const id = maker.newId();
  return ok({
    what: `rod ${rod.rod} done at ${formatDepth(rod.depthMm)} m`,
    changes: [
      { put: ['rods', id], thing: rod as Thing },
      ...bags.map((bag): Change => ({ put: ['bags', maker.newId()], thing: { ...bag, rod: id } as Thing })),
      ...claims(hole, rod, id),
      ...placements(hole, bags, maker),
    ],
  });
}

/** Bags placed by hand since the rod before lie with this one, as far as their metres are drilled. */
function claims(hole: Document, { depthMm }: RodDone, id: Id): readonly Change[] {
  return holeThings(hole, 'bags')
    .filter(([, bag]) => bag.byHand === true && bag.rod === undefined && (bag.toMm ?? 0) <= depthMm)
    .map(([bag]): Change => ({ patch: ['bags', bag], set: { rod: id } }));
}

/** Bags placed outside a rod: a control put off and filled now, a spear duplicate, a fix after a mismatch. */
export function issueBags(hole: Document, what: string, bags: readonly Bag[], maker: Maker): Result<Made> {
  const used = usedTwice(hole, bags);
  if (used) return used;
  return ok({
    what,
    changes: [
      ...bags.map((bag): Change => ({ put: ['bags', maker.newId()], thing: bag as Thing })),
      ...placements(hole, bags, maker),
    ],
  });
}

/** Numbers labelled for this hole, ready on the rig. */
export function recordBagRun(run: BagRun, maker: Maker): Made {
  return {
    what: `bags ${run.first} to ${run.last} numbered`,
    changes: [{ put: ['bagRuns', maker.newId()], thing: run as Thing }],
  };
}

/** A control put off, with its reason: its number stays reserved for it. */
export function putOffControl(put: PutOff, maker: Maker): Made {
  return {
    what: `${put.kind} ${put.number} put off: ${put.reason}`,
    changes: [{ put: ['putOff', maker.newId()], thing: put as Thing }],
  };
}

/** What was seen at the drilled head over some metres. A fact on the same metres is amended, not doubled. */
export function recordStream(hole: Document, fact: StreamFact, maker: Maker): Made {
  const there = holeThings(hole, 'stream').findLast(
    ([, each]) => each.fromMm === fact.fromMm && each.toMm === fact.toMm,
  );
  const what = `${streamWords(fact)} at ${formatInterval(fact)}`;
  if (there === undefined)
    return { what, changes: [{ put: ['stream', maker.newId()], thing: fact as Thing }] };
  const { fromMm: _from, toMm: _to, ...set } = fact;
  return { what, changes: [{ patch: ['stream', there[0]], set: set as Thing }] };
}

/** Amends the fields of one thing of the hole: for a bag's kind after a mismatch, a plan, a collar state. Refuses what is not there. */
export function amendThing(
  hole: Document,
  table: 'bags' | 'rods' | 'plan' | 'hole' | 'shots' | 'putOff',
  id: Id,
  set: Thing,
  what: string,
): Result<Made> {
  if (holeThing(hole, table, id) === undefined) {
    return refused(
      REFUSALS.notThere.at(
        { hole: headerOf(hole).name, thing: id },
        { problem: 'it is no longer there', remedy: 'Look at the history of the hole.' },
      ),
    );
  }
  return ok({ what, changes: [{ patch: [table, id], set }] });
}

function streamWords(fact: StreamFact): string {
  const parts = [
    fact.moisture,
    fact.recovery === undefined ? undefined : `recovery ${fact.recovery}`,
    fact.contaminated ? 'contaminated' : undefined,
    fact.water,
  ];
  return parts.filter((part) => part !== undefined).join(', ') || 'sample stream noted';
}

function placements(hole: Document, bags: readonly Omit<Bag, 'rod'>[], maker: Maker): readonly Change[] {
  const numbers = new Set(bags.map((bag) => bag.number));
  return holeThings(hole, 'putOff')
    .filter(([, put]) => put.placedAt === undefined && numbers.has(put.number))
    .map(([id]): Change => ({ patch: ['putOff', id], set: { placedAt: maker.at } }));
}

function usedTwice(hole: Document, bags: readonly Omit<Bag, 'rod'>[]): Result<Made> | undefined {
  const numbers = new Set(holeNouns(hole, 'bags').map((bag) => bag.number));
  for (const bag of bags) {
    if (numbers.has(bag.number)) {
      return refused(
        REFUSALS.bagUsed.at(
          { hole: headerOf(hole).name, thing: `bag ${bag.number}` },
          {
            problem: 'the number is on a bag of this hole already',
            remedy: 'Read the calico again; a number is used once, ever.',
          },
        ),
      );
    }
    numbers.add(bag.number);
  }
  return undefined;
}
