import type { Bag } from '../../src/hole/bags.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import type { Fix, OtherHole, RodSeen } from '../../src/sampling/mismatch.ts';
import { type RodCheck, rodCheck } from '../../src/sampling/rod-check.ts';
import type { Sampling } from '../../src/sampling/sampling.ts';
import type { StreamState } from '../../src/sampling/stream.ts';
import { atCollar, voidBag, withSlots } from './build.ts';
import { bagRod, type Calico, chance, type Hands, type Label, pile, type Scheme } from './splitter.ts';

/** Kinds of slip that the simulator makes, by the code that the rod check should give them. */
export const SLIPS = [
  'bags-too-few',
  'bags-too-many',
  'two-metres-in-one-bag',
  'last-holes-bags',
  'skipped',
  'used-twice',
  'transposed-digits',
  'control-forgotten',
  'control-early',
  'empty-duplicate',
  'one-ahead',
  'one-behind',
  'wrong-restart',
  'depth-mark-out',
  'foreign',
  'void-used',
] as const;
export type Slip = (typeof SLIPS)[number];

const RODS = 14;
const ROD_M = 6;
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
  /** What was named first from the last digits and the count alone, and after the looks that it asked for. */
  readonly namedFirst?: string;
  readonly namedAfterLooks?: string;
  /** The record as mended one of the ways offered says what is in every calico. Only where the slip was named and the mending is in the numbers. */
  readonly mended?: boolean;
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
  const real: World = { labels, before: [] };
  let clean: World = { labels: [...labels], before: [] };
  let state: StreamState = {
    ...atCollar(labels[0]?.number, labels.at(-1)?.number),
    bags: [voidBag(spoiled)],
  };
  let due = 1 + Math.floor(hole.random() * 4);
  let slippedAt = Number.POSITIVE_INFINITY;
  let falseAlarms = 0;
  for (let rod = 0; rod < RODS; rod++) {
    const metres = Array.from({ length: ROD_M }, (_, index) => rod * ROD_M + index);
    const plan =
      slip !== 'none' && rod === due ? handsFor(slip, hole, labels, metres, spoiled) : { hands: {} };
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
    const seen = unread ? {} : reading(laid, drilled, rod === slippedAt && slip === 'wrong-restart');
    const check = rodCheck(hole.sampling, asked, seen, [hole.other]);
    if (rod < slippedAt && !check.agrees) falseAlarms += 1;
    if (rod >= slippedAt && !unread && alike === undefined)
      return { seed, slip, falseAlarms, visible: true, ...judged(slip, hole, asked, seen, check, laid) };
    state = { ...asked, bags: [...state.bags, ...check.expected.map((bag) => ({ ...bag, rod: `r${rod}` }))] };
  }
  return { seed, slip, falseAlarms, visible: false, detected: false };
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

interface Plan {
  readonly hands: Hands;
  /** The metres really drilled, where the mark says otherwise. */
  readonly drilled?: readonly number[];
}

/** How the slip is made in this rod, or undefined where the rod gives no occasion for it. */
function handsFor(
  slip: Slip,
  hole: Hole,
  labels: readonly Label[],
  metres: readonly number[],
  spoiled: string,
): Plan | undefined {
  const { random, scheme } = hole;
  const any = metres[Math.floor(random() * ROD_M)] ?? 0;
  const later = metres[1 + Math.floor(random() * (ROD_M - 1))] ?? 0;
  const inRod = labels.slice(0, ROD_M).filter((label) => label.kept !== undefined);
  const control = inRod[Math.floor(random() * inRod.length)];
  const foot = metres.at(-1) ?? 0;
  const plans: Readonly<Record<Slip, () => Plan | undefined>> = {
    'bags-too-few': () => ({ hands: { bareAt: any } }),
    'one-behind': () => ({ hands: { bareAt: any } }),
    'bags-too-many': () => ({ hands: { twiceAt: any } }),
    'two-metres-in-one-bag': () => ({ hands: { leftOnAt: later } }),
    'last-holes-bags': () => ({ hands: { otherPile: { at: any, labels: hole.otherLabels } } }),
    skipped: () => ({ hands: { passOver: { at: later, count: random() < 0.8 ? 1 : 2 } } }),
    'one-ahead': () => ({ hands: { passOver: { at: any, count: 1 } } }),
    'used-twice': () => ({ hands: { repeatAt: later } }),
    'transposed-digits': () => ({ hands: { lastReads: (number) => transposed(number, random()) } }),
    'control-forgotten': () => {
      if (control === undefined) return undefined;
      const slipped = control.kept === 'duplicate' || random() < 0.5 ? 'used for a metre' : 'left out';
      return { hands: { control: { number: control.number, slip: slipped } } };
    },
    'empty-duplicate': () =>
      control?.kept === 'duplicate'
        ? { hands: { control: { number: control.number, slip: 'nothing caught' } } }
        : undefined,
    'control-early': () => {
      const due = labels.findIndex((label) => label.kept === 'standard' || label.kept === 'blank');
      return due >= ROD_M + 1 && due < 2 * ROD_M ? { hands: { earlyAt: any } } : undefined;
    },
    'wrong-restart': () => {
      const past = pile(scheme, Number(labels[0]?.number.slice(2)), 250).slice(8 + Math.floor(random() * 50));
      const kept = past.filter((label) => labels.some((each) => each.number === label.number));
      return { hands: { otherPile: { at: any, labels: kept } } };
    },
    'depth-mark-out': () => {
      const deep = random() < 0.5;
      return { hands: {}, drilled: deep ? [...metres, foot + 1] : metres.slice(0, -1) };
    },
    foreign: () => ({
      hands: { lastReads: () => `KX${String(Math.floor(random() * 1e6)).padStart(6, '0')}` },
    }),
    'void-used': () => ({ hands: { lastReads: () => spoiled } }),
  };
  return plans[slip]();
}

/** The number with two different neighbours of its last three digits swapped; unchanged where all three are alike. */
function transposed(number: string, roll: number): string {
  const pairs = [number.length - 2, number.length - 3].filter((at) => number[at] !== number[at + 1]);
  const at = pairs[Math.floor(roll * pairs.length)];
  if (at === undefined) return number;
  return number.slice(0, at) + number[at + 1] + number[at] + number.slice(at + 2);
}

function judged(
  slip: Slip | 'none',
  hole: Hole,
  asked: StreamState,
  seen: RodSeen,
  check: RodCheck,
  laid: readonly Calico[],
): Pick<Outcome, 'detected' | 'namedFirst' | 'namedAfterLooks' | 'mended'> {
  const truth = looks(laid);
  let told = seen;
  let after = check;
  for (let look = after.look; look !== undefined; look = after.look) {
    told = { ...told, [look]: truth[look] };
    after = rodCheck(hole.sampling, asked, told, [hole.other]);
  }
  const namedFirst = check.named[0]?.code;
  const namedAfterLooks = after.named[0]?.code;
  const mending = after.named[0]?.ways.map((way) => way.fix) ?? [];
  return {
    detected: !check.agrees,
    ...(namedFirst === undefined ? {} : { namedFirst }),
    ...(namedAfterLooks === undefined ? {} : { namedAfterLooks }),
    ...(namedAfterLooks === slip ? { mended: mending.some((fix) => saysWhatLies(fix, laid)) } : {}),
  };
}

/** The answers to every look. */
function looks(laid: readonly Calico[]): Required<Pick<RodSeen, 'first' | 'double' | 'controls'>> {
  return {
    first: laid[0]?.number.slice(-3) ?? '',
    double: laid.some((calico) => calico.holds === 'metres' && calico.metres.length > 1),
    controls: laid.filter((calico) => calico.holds !== 'metres').length,
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
        bag?.kind === 'void' ||
        (bag?.fromMm === depthFromMm(fromM * 1000) && bag.toMm === depthFromMm(toM * 1000))
      );
    });
}
