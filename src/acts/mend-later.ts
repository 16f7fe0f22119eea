import { ok, type Result, refused } from '../finding/finding.ts';
import type { Bag } from '../hole/bags.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import type { RodDone } from '../hole/drilled.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document, Id } from '../record/document.ts';
import { endsWithDigits } from '../sampling/numbers/bag-number.ts';
import { fixedWords } from '../sampling/rod/effect.ts';
import { withPlaced } from '../sampling/rod/lying.ts';
import { type Fix, type RodSeen, withAndWithoutTail } from '../sampling/rod/mismatch.ts';
import { type NamedMismatch, type RodCheck, rodCheck } from '../sampling/rod/rod-check.ts';
import { issue } from '../sampling/stream/issue.ts';
import { isNoSample } from '../sampling/stream/no-sample.ts';
import type { StreamState } from '../sampling/stream/stream.ts';
import type { RodThing } from '../standing/mismatches.ts';
import { depthOfRod } from '../standing/rods.ts';
import { noReturnOf, otherHoles, streamStateOf } from '../standing/stream.ts';
import { duplicatesFollow, type Laid, rodBagChanges, rodChange } from './mended-bags.ts';
import { fixChanges } from './rod.ts';

/** The rod check of a rod noted before, as it stood then, with what was read then and what is read now. Changes nothing. */
export function checkAgain(
  project: Project,
  documents: Iterable<Document>,
  hole: Document,
  [id, rod]: RodThing,
  seen: RodSeen,
): RodCheck {
  const before = stateBefore(hole, rod);
  return rodCheck(
    project.sampling,
    before,
    { ...readThen([id, rod]), depthByRodsMm: depthOfRod(hole, rod.rod), ...seen },
    otherHoles(documents, hole),
  );
}

/** What was read at a rod that was noted. */
function readThen([, { lastBag, bags }]: RodThing): RodSeen {
  return {
    ...(lastBag === undefined ? {} : { digits: lastBag }),
    ...(bags === undefined ? {} : { count: bags }),
  };
}

/**
 * A mismatch that was noted at a rod, mended one of its ways: the bags of that rod hold what the mending says, and those of the rods below
 * follow on from it, all as one edit. A rod below that then agrees with what was read there is mended with it. Refused where a bag of
 * these rods was amended since: no one's word is written over.
 */
export function rodMendedLater(
  project: Project,
  hole: Document,
  at: RodThing,
  named: NamedMismatch,
  way: number,
  maker: Maker,
): Result<Made> {
  const chosen = named.ways[way];
  if (chosen === undefined) return refused(noWay(hole));
  const { fix } = chosen;
  const rods = rodsFrom(hole, at[1]);
  const below = rods.slice(1);
  if (below.some(([, rod]) => rod.depthMm <= (fix.depthMm ?? 0))) return refused(tooDeep(hole));
  const before = stateBefore(hole, at[1]);
  const recorded = (rod: RodThing): readonly Bag[] => bagsOf(hole, rod[0]);
  const asRecorded = (rod: RodThing, endings: Endings) =>
    endings.find((bags) => alike(bags, recorded(rod))) ?? [];
  const asExpected = layDown(project, before, rods, asRecorded);
  if (!asExpected.every(({ rod, bags }) => alike(bags, recorded(rod))))
    return refused(amendedSince(hole, at[1]));
  const laid = [
    { rod: at, bags: fix.issue },
    ...layDown(project, withFix(before, fix, maker.at), below, asRead(hole)),
  ];
  const follow = duplicatesFollow(hole, laid);
  if (follow === undefined) return refused(amendedSince(hole, at[1]));
  const mendedToo = laid.slice(1).filter(({ rod, bags }) => rod[1].unmended && agrees(hole, rod, bags));
  return ok({
    what: `rod ${at[1].rod} afterwards ${fixedWords(named.name, chosen)}`,
    changes: [
      ...laid.flatMap(({ rod, bags }) => rodBagChanges(hole, rod, bags, laid, maker)),
      ...follow,
      ...fixChanges(hole, fix, maker),
      rodChange(at, fix.issue, named.code, fix.depthMm),
      ...mendedToo.map(({ rod, bags }) => rodChange(rod, bags, named.code)),
    ],
  });
}

/** A mismatch that was noted and is none: the bags fit as they are recorded, and what was read then was read or typed wrong. */
export function rodFits(hole: Document, [id, { rod }]: RodThing): Result<Made> {
  const bags = bagsOf(hole, id).filter((bag) => bag.kind !== 'spoiled');
  const last = bags.at(-1)?.number;
  return ok({
    what: `rod ${rod}: the bags match as they are recorded`,
    changes: [
      {
        patch: ['rods', id],
        set: { bags: bags.length, read: true, ...(last === undefined ? {} : { lastBag: last }) },
        unset: ['unmended', 'mismatch'],
      },
    ],
  });
}

/** What a rod may have given: its bags with and without the sachets that close it. */
type Endings = readonly (readonly Bag[])[];

/** The rods from one on, from the top down. */
function rodsFrom(hole: Document, { depthMm }: RodDone): readonly RodThing[] {
  return holeThings(hole, 'rods')
    .filter(([, each]) => each.depthMm >= depthMm)
    .sort(([, a], [, b]) => a.depthMm - b.depthMm);
}

/** The sample stream before a rod issued its bags, with the drilled head at its foot. */
function stateBefore(hole: Document, rod: RodDone): StreamState {
  const from = new Set(rodsFrom(hole, rod).map(([id]) => id));
  const state = streamStateOf(hole, rod.depthMm);
  return {
    ...state,
    bags: state.bags.filter((bag) => bag.byHand === true || bag.rod === undefined || !from.has(bag.rod)),
  };
}

function withFix(state: StreamState, fix: Fix, at: Stamp): StreamState {
  const amended = new Map((fix.amend ?? []).map(({ number, bag }) => [number, bag]));
  const putOffs = (fix.putOff ?? []).map((each) => ({ ...each, at }));
  return {
    ...state,
    bags: [...state.bags.map((bag) => amended.get(bag.number) ?? bag), ...fix.issue],
    putOffs: [...state.putOffs, ...putOffs],
    choices: [...state.choices, ...(fix.choices ?? [])],
    unsampled: [...state.unsampled, ...(fix.unsampled ?? [])],
  };
}

/** The bags of some rods, one after the other, as the stream gives them; `ending` says which of the two endings a rod had. */
function layDown(
  { sampling }: Project,
  state: StreamState,
  rods: readonly RodThing[],
  ending: (rod: RodThing, endings: Endings) => readonly Bag[],
): readonly Laid[] {
  const laid: Laid[] = [];
  let bags = state.bags;
  for (const rod of rods) {
    const given = ending(
      rod,
      withAndWithoutTail(issue(sampling, { ...state, bags, drilledMm: rod[1].depthMm })),
    );
    laid.push({ rod, bags: given });
    bags = [...bags, ...given];
  }
  return laid;
}

const asRead =
  (hole: Document) =>
  (rod: RodThing, endings: Endings): readonly Bag[] =>
    endings.find((bags) => agrees(hole, rod, bags)) ?? endings[0] ?? [];

/** True where what was read at a rod is what these bags give, with those placed by hand among them; calicos of no sample may be counted or not. */
function agrees(hole: Document, [id, { lastBag, bags: count }]: RodThing, bags: readonly Bag[]): boolean {
  const placed = holeNouns(hole, 'bags').filter(
    (bag) => bag.rod === id && bag.byHand === true && bag.kind !== 'spoiled',
  );
  const row = [...withPlaced(bags, placed), ...placed.filter(({ fromMm }) => fromMm === undefined)];
  const empty = row.filter((bag) => isNoSample(bag, noReturnOf(hole))).length;
  const ends = [bags.at(-1), withPlaced(bags, placed).at(-1)].some(
    (last) => lastBag !== undefined && last !== undefined && endsWithDigits(last.number, lastBag),
  );
  if (lastBag !== undefined && !ends) return false;
  return count === undefined || (row.length - empty <= count && count <= row.length);
}

function bagsOf(hole: Document, rod: Id): readonly Bag[] {
  return holeNouns(hole, 'bags').filter((bag) => bag.rod === rod && bag.byHand !== true);
}

/** True of bags that hold the same under the same numbers. */
function alike(a: readonly Bag[], b: readonly Bag[]): boolean {
  const held = (bags: readonly Bag[]) =>
    bags.map(({ number, kind, fromMm, toMm, of }) => JSON.stringify([number, kind, fromMm, toMm, of])).sort();
  return JSON.stringify(held(a)) === JSON.stringify(held(b));
}

const noWay = (hole: Document) =>
  REFUSALS.notThere.at(
    { hole: headerOf(hole).name },
    { problem: 'there is no such way to fix it', remedy: 'Choose one of the ways shown.' },
  );

const tooDeep = (hole: Document) =>
  REFUSALS.rodBackwards.at(
    { hole: headerOf(hole).name },
    {
      problem: 'the corrected depth would be below the next rod done',
      remedy: 'Ask the driller to count the rods. Undo the rods below first.',
    },
  );

const amendedSince = (hole: Document, { rod }: RodDone) =>
  REFUSALS.bagsAmended.at(
    { hole: headerOf(hole).name, thing: `rod ${rod}` },
    {
      problem: 'bags of this rod or of one below it were amended by hand since',
      remedy:
        'Correct the bags one by one: ;bag, ;spoiled, ;swap. Then ;fix fits. Nothing entered by hand is overwritten.',
    },
  );
