import type { Bag } from '../../src/hole/bags.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import type { Fix, OtherHole, RodSeen } from '../../src/sampling/rod/mismatch.ts';
import { type RodCheck, rodCheck } from '../../src/sampling/rod/rod-check.ts';
import type { Sampling } from '../../src/sampling/sampling.ts';
import { checkBags } from '../../src/sampling/stream/bags-check.ts';
import type { StreamState } from '../../src/sampling/stream/stream.ts';
import { atCollar, spoiledBag, withSlots } from './build.ts';
import { type Ground, isTransposed, type Judged, judgedSentence } from './claims.ts';
import { scanRound } from './scan-round.ts';
import { type Plan, planOf, ROD_M, type Slip } from './slips.ts';
import { bagRod, type Calico, chance, type Hands, type Label, pile, type Scheme } from './splitter.ts';

const RODS = 14;
const SCHEMES: readonly Scheme[] = [
  { every: 20, standardAt: 0, blankAt: 7, duplicateAt: 13 },
  { every: 25, standardAt: 5, blankAt: 16, duplicateAt: 24 },
  { every: 40, standardAt: 0, blankAt: 27, duplicateAt: 13 },
];

/** What came of one hole. */
export interface Outcome {
  readonly seed: number;
  readonly slip: Slip | 'none';
  /** Rods checked before the slip, or in a clean hole, that were called wrong. */
  readonly falseAlarms: number;
  /** At some rod check the last digits or the count were none that a clean rod gives, its closing sachets put in or still to come. */
  readonly visible: boolean;
  /** The rod check called the rod wrong at the first rod at which it was visible. */
  readonly detected: boolean;
  /** The slip was made: a rod gave the occasion for it. */
  readonly made: boolean;
  /** What the rod check knows of the rod at which it was visible, whatever the hole's numbers are ({@link readingOf}). */
  readonly read?: string;
  /** What a scan of every calico of the slip's rod, beside its pile and under its chute, names; only where the numbers never show it. */
  readonly scanned?: string;
  /** Looks that were asked for. */
  readonly looks?: number;
  /** What was named first from the last digits and the count alone, and after the looks that it asked for. */
  readonly namedFirst?: string;
  readonly namedAfterLooks?: string;
  /** The record as mended one of the ways offered says what is in every calico. Only where the slip was named and the mending is in the numbers. */
  readonly mended?: boolean;
  /** Faults in the bags of the record once it is mended: none is right. */
  readonly faultsLeft?: readonly string[];
  /** What was said at once, and after the looks, each sentence compared with what lies there. */
  readonly said?: readonly Judged[];
}

interface Hole {
  readonly sampling: Sampling;
  readonly scheme: Scheme;
  readonly random: () => number;
  readonly other: OtherHole;
  readonly otherLabels: readonly Label[];
}

/** Two worlds side by side: the splitter as it went, and as it should have gone. */
interface World {
  readonly labels: Label[];
  before: readonly number[];
}

/** Drills one seeded hole with one slip in it, and checks every rod until the slip can be seen. */
export function drill(seed: number, slip: Slip | 'none'): Outcome {
  const hole = setUp(seed);
  const first = 1000 + Math.floor(hole.random() * 7000);
  const spoiled = `ZQ${String(first + 150).padStart(6, '0')}`;
  const labels = pile(hole.scheme, first, 260).filter((label) => label.number !== spoiled);
  const labelled = new Set(labels.map(({ number }) => number));
  const kept = new Set(labels.flatMap((label) => (label.kept === undefined ? [] : [label.number])));
  const real: World = { labels, before: [] };
  let clean: World = { labels: [...labels], before: [] };
  let state: StreamState = {
    ...atCollar(labels[0]?.number, labels.at(-1)?.number),
    bags: [spoiledBag(spoiled)],
  };
  let due = 1 + Math.floor(hole.random() * 4);
  let slippedAt = Number.POSITIVE_INFINITY;
  let falseAlarms = 0;
  let scanned: string | undefined;
  const grounds: Ground[] = [];
  for (let rod = 0; rod < RODS; rod++) {
    const metres = Array.from({ length: ROD_M }, (_, index) => rod * ROD_M + index);
    const occasion = { ...hole, labels, metres, spoiled };
    const plan: Plan | undefined = slip !== 'none' && rod === due ? planOf(slip, occasion) : { hands: {} };
    if (plan === undefined) due += 1;
    else if (rod === due && slip !== 'none') slippedAt = rod;
    const { drilled = metres, hands } = plan ?? { hands: {} };
    const lateSachets = hole.random() < 0.5;
    const laid = bagIn(real, drilled, { lateSachets, ...hands });
    const clear = [lateSachets, !lateSachets].map((late) => bagClear(clean, metres, late));
    const alike = clear.find((each) => readsAlike(laid, each.laid));
    clean = alike?.world ?? clear[0]?.world ?? clean;
    const asked = { ...state, drilledMm: (rod + 1) * ROD_M * 1000 };
    // A stream that is ahead or behind slipped in a rod that was confirmed unread.
    const unread = rod === slippedAt && (slip === 'one-ahead' || slip === 'one-behind');
    // A break lies before every wrong restart, and before every other one of the other slips too.
    const seen = unread
      ? {}
      : reading(laid, drilled, rod === slippedAt && (slip === 'wrong-restart' || seed % 2 === 0));
    const check = rodCheck(hole.sampling, asked, seen, [hole.other]);
    if (rod < slippedAt && !check.agrees) falseAlarms += 1;
    if (rod >= slippedAt)
      grounds.push({
        ...{ row: laid, should: clear[lateSachets ? 1 : 0]?.laid ?? [], drilled, marked: metres },
        read: laid.at(-1)?.number ?? '',
        lastGiven:
          hands.lastReads === undefined ? (laid.at(-1)?.number ?? '') : (clear[0]?.laid.at(-1)?.number ?? ''),
        whose: whoseOf(hole, labelled, spoiled, laid.at(-1)?.number ?? ''),
        began:
          rod === slippedAt
            ? 'level'
            : slip === 'one-ahead'
              ? 'ahead'
              : slip === 'one-behind'
                ? 'behind'
                : 'level',
        isKept: (number) => kept.has(number),
      });
    if (rod >= slippedAt && !unread && alike === undefined) {
      const read = readingOf(seen, check.expected, laid, endings(hole, labelled, spoiled, seen));
      return {
        ...{ seed, slip, falseAlarms, read, made: true, visible: true },
        ...judged(slip, hole, asked, seen, check, laid, grounds),
      };
    }
    state = { ...asked, bags: [...state.bags, ...check.expected.map((bag) => ({ ...bag, rod: `r${rod}` }))] };
    if (rod === slippedAt) scanned = scanRound(hole.sampling, state, laid, [hole.other]);
  }
  const made = slippedAt < RODS;
  return { seed, slip, falseAlarms, made, visible: false, detected: false, ...(scanned && { scanned }) };
}

/** Whose a number is in this world. */
function whoseOf(
  { other }: Hole,
  labelled: ReadonlySet<string>,
  spoiled: string,
  number: string,
): Ground['whose'] {
  if (number === spoiled) return 'out of use';
  if (labelled.has(number)) return 'this hole';
  const [run] = other.bagRuns;
  if (run !== undefined && number >= run.first && number <= run.last) return 'another hole';
  return number.startsWith('ZQ') ? 'a block' : 'no one';
}

/** The rod as it should have gone, closing sachets put in or left for the next rod: either is right, and the next rod follows it. */
function bagClear(world: World, metres: readonly number[], lateSachets: boolean) {
  const after: World = { labels: [...world.labels], before: world.before };
  return { laid: bagIn(after, metres, { lateSachets }), world: after };
}

/** True where the last three digits (of one prefix) and the count are the same. */
function readsAlike(a: readonly Calico[], b: readonly Calico[]): boolean {
  return reading(a, [], false).digits === reading(b, [], false).digits && a.length === b.length;
}

function bagIn(world: World, metres: readonly number[], hands: Hands): readonly Calico[] {
  const laid = bagRod(world.labels, metres, hands, world.before);
  world.before = laid.findLast((calico) => calico.holds === 'metres')?.metres ?? world.before;
  return laid;
}

function setUp(seed: number): Hole {
  const random = chance(seed);
  const scheme = SCHEMES[seed % SCHEMES.length] ?? SCHEMES[0];
  if (scheme === undefined) throw new Error('no scheme');
  const { every, standardAt, blankAt, duplicateAt } = scheme;
  const otherFirst = 9000 + Math.floor(random() * 700);
  const otherLabels = pile(scheme, otherFirst, 250);
  const used = 60 + Math.floor(random() * 40);
  const other = {
    hole: 'ZQRC003',
    bagRuns: atCollar(otherLabels[0]?.number, otherLabels.at(-1)?.number).bagRuns,
    bags: otherLabels.slice(0, used).map((label) => ({ number: label.number, kind: 'primary' as const })),
  };
  const sampling = withSlots([
    { every, at: standardAt, kind: 'standard' },
    { every, at: blankAt, kind: 'blank' },
    { every, at: duplicateAt, kind: 'field duplicate' },
  ]);
  return { sampling, scheme, random, other, otherLabels: otherLabels.slice(used) };
}

/** What a person reads: the last three digits (the whole number where its prefix is another one), the count, and the rods. */
function reading(laid: readonly Calico[], drilled: readonly number[], afterBreak: boolean): RodSeen {
  const last = laid.at(-1)?.number ?? '';
  return {
    digits: last.startsWith('ZQ') ? last.slice(-3) : last,
    count: laid.length,
    depthByRodsMm: ((drilled.at(-1) ?? 0) + 1) * 1000,
    ...(afterBreak ? { afterBreak } : {}),
  };
}

/** Numbers this far from those expected are from another bundle: what tells them apart is whose numbers end in those digits. */
const FAR = 20;

/** Whether the digits end a number of this hole, of the other one, and the one that is out of use. */
function endings(
  { other }: Hole,
  labelled: ReadonlySet<string>,
  spoiled: string,
  { digits = '' }: RodSeen,
): readonly boolean[] {
  const [run] = other.bagRuns;
  const span = run === undefined ? 0 : Number(run.last.slice(2)) - Number(run.first.slice(2)) + 1;
  const others = Array.from({ length: span }, (_, step) => String(Number(run?.first.slice(2)) + step));
  const ends = (number: string) => number.endsWith(digits);
  return [[...labelled].some(ends), others.some(ends), ends(spoiled)];
}

/**
 * The rod as expected, kind by kind, and how far last number, count and depth are off: two slips with the same reading can't be told
 * apart by any namer that has the numbers alone.
 */
function readingOf(
  seen: RodSeen,
  expected: readonly Bag[],
  laid: readonly Calico[],
  fits: readonly boolean[],
): string {
  const serialOf = (number = '') => (number.startsWith('ZQ') ? Number(number.slice(2)) : Number.NaN);
  const off = serialOf(laid.at(-1)?.number) - serialOf(expected.at(-1)?.number);
  const last = expected.at(-1)?.number.slice(-3) ?? '';
  const where = Math.abs(off) <= FAR ? [off] : ['far', ...fits, isTransposed(last, seen.digits ?? '')];
  const metres = expected.findLast((bag) => bag.kind === 'primary')?.toMm ?? 0;
  const kinds = expected.map(({ kind }) => kind.charAt(0)).join('');
  const depth = (seen.depthByRodsMm ?? 0) - metres;
  return JSON.stringify([kinds, laid.length - expected.length, depth, seen.afterBreak === true, ...where]);
}

function judged(
  slip: Slip | 'none',
  hole: Hole,
  asked: StreamState,
  seen: RodSeen,
  check: RodCheck,
  laid: readonly Calico[],
  grounds: readonly Ground[],
): Pick<Outcome, 'said' | 'detected' | 'looks' | 'namedFirst' | 'namedAfterLooks' | 'mended' | 'faultsLeft'> {
  const truth = looks(laid);
  let told = seen;
  let after = check;
  let taken = 0;
  for (let look = after.look; look !== undefined; look = after.look) {
    taken += 1;
    told = { ...told, ...truth[look] };
    after = rodCheck(hole.sampling, asked, told, [hole.other]);
  }
  const namedFirst = check.named[0]?.code;
  const namedAfterLooks = after.named[0]?.code;
  const mending = after.named[0]?.ways.map((way) => way.fix) ?? [];
  return {
    detected: !check.agrees,
    said: [...judgedSentence(check, grounds), ...(taken === 0 ? [] : judgedSentence(after, grounds))],
    looks: taken,
    ...(namedFirst === undefined ? {} : { namedFirst }),
    ...(namedAfterLooks === undefined ? {} : { namedAfterLooks }),
    ...(namedAfterLooks === slip ? mendedRecord(hole, asked, mending, laid) : {}),
  };
}

/** What the record says once it is mended the way that fits the ground, or the first way where the bags are written again. */
function mendedRecord(
  hole: Hole,
  asked: StreamState,
  mending: readonly Fix[],
  laid: readonly Calico[],
): Pick<Outcome, 'mended' | 'faultsLeft'> {
  const fits = mending.find((fix) => saysWhatLies(fix, laid));
  const fix = fits ?? mending[0];
  const amended = new Map((fix?.amend ?? []).map((each) => [each.number, each.bag]));
  const bags = [...asked.bags.map((bag) => amended.get(bag.number) ?? bag), ...(fix?.issue ?? [])];
  const choices = [...asked.choices, ...(fix?.choices ?? [])];
  const found = checkBags(hole.sampling, [{ ...asked, hole: 'ZQRC004', bags, choices }]);
  return { mended: fits !== undefined, faultsLeft: found.map((each) => `${each.code} ${each.place.thing}`) };
}

/** The answers to every look. */
function looks(laid: readonly Calico[]): Readonly<Record<NonNullable<RodCheck['look']>, RodSeen>> {
  const endOf = (calico: Calico | undefined): string =>
    calico === undefined ? '' : calico.number.startsWith('ZQ') ? calico.number.slice(-3) : calico.number;
  const count = { count: laid.length };
  const double = { double: laid.some((calico) => calico.holds === 'metres' && calico.metres.length > 1) };
  const controls = { controls: laid.filter((calico) => calico.holds !== 'metres').length };
  return {
    ...{ count, double, controls },
    walk: { ...count, ...double, ...controls },
    lastTwo: { lastTwo: [endOf(laid.at(-2)), endOf(laid.at(-1))] },
    first: { first: endOf(laid[0]) },
  };
}

/** True where a mending writes down what is really in every calico of the rod that holds metres. */
function saysWhatLies(fix: Fix, laid: readonly Calico[]): boolean {
  const written = new Map<string, Bag>(
    [...(fix.amend ?? []).map(({ bag }) => bag), ...fix.issue].map((bag) => [bag.number, bag]),
  );
  return laid
    .filter((calico) => calico.holds === 'metres')
    .every((calico) => {
      const bag = written.get(calico.number);
      const fromM = Math.min(...calico.metres);
      const toM = Math.max(...calico.metres) + 1;
      return (
        bag?.kind === 'spoiled' ||
        (bag?.fromMm === depthFromMm(fromM * 1000) && bag.toMm === depthFromMm(toM * 1000))
      );
    });
}
