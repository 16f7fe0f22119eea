import type { Bag } from '../../src/hole/bags.ts';
import type { OtherHole, RodSeen } from '../../src/sampling/rod/mismatch.ts';
import { type RodCheck, rodCheck } from '../../src/sampling/rod/rod-check.ts';
import type { Sampling } from '../../src/sampling/sampling.ts';
import type { StreamState } from '../../src/sampling/stream/stream.ts';
import { atCollar, SETTINGS, sampling } from './build.ts';
import { type Ground, type Judged, judgedSentence } from './claims.ts';
import {
  dice,
  drillRod,
  type Helper,
  hasOccasion,
  type InTheRow,
  MISHAPS,
  type Mishap,
  type Moment,
  markOf,
  STAMPS,
} from './second-rig.ts';

/** What is read at the end of a row. */
export type Reading = 'digits' | 'digits and count';

/** The name that a mishap should be given; more than one where it was carried on from a rod no one read, or by whose bundle it was. */
export type Told = Readonly<Record<Mishap, string>>;
const NAME: Told = {
  'walked past a metre': 'bags-too-few',
  'changed the bag in the middle of a metre': 'bags-too-many',
  'left a bag on for two metres': 'two-metres-in-one-bag',
  'dropped a calico': 'skipped',
  'forgot the sachet': 'control-forgotten',
  'second chute blocked': 'empty-duplicate',
  'read the wrong calico': 'last-but-one-read',
  'laid the last two the wrong way round': 'closing-bags-swapped',
  'took up another bundle': 'another-bundle',
};

/** What came of a hole: only one look is answered, for that is what someone has patience for. */
export interface DayOutcome {
  readonly seed: number;
  readonly mishap: Mishap | 'none';
  readonly truth: string;
  readonly seen: boolean;
  readonly detected: boolean;
  readonly falseAlarms: number;
  readonly named?: string;
  readonly namedAfterOne?: string;
  readonly look?: string;
  /** What any namer has: the rod as it should be and what was read ({@link signature}). */
  readonly signature?: string;
  readonly signatureAfterOne?: string;
  /** The check as it stood at once and after the look, with what is true, for whoever reads its sentences. */
  readonly checks?: readonly RodCheck[];
  readonly world?: World;
  /** What was said at once and after the look, each sentence compared with what lies there. */
  readonly said?: readonly Judged[];
}

/** What is true of the numbers of the project in this simulated world. */
export interface World {
  readonly truth: string;
  readonly written: string;
  /** Whose the number in hand is: this hole's, another hole's by its name, of no hole but of the rig's block, or of no one. */
  readonly whose: string;
  readonly row: readonly InTheRow[];
  /** The row as it should lie, sachets that close it put in at once. */
  readonly should: readonly InTheRow[];
  readonly metres: readonly number[];
  readonly carried?: string;
  readonly markOf: (serial: number) => string;
}

const RODS = 15;
const PER_ROD = 6;
const LABELLED = 240;
const number = (serial: number): string => `ZQ${String(serial).padStart(6, '0')}`;

/** A hole with one mishap somewhere in it, read rod by rod as someone at the end of the row reads. */
export function day(seed: number, mishap: Mishap | 'none', reading: Reading): DayOutcome {
  const roll = dice(seed);
  const stamp = STAMPS[Math.floor(roll() * STAMPS.length)] ?? STAMPS[0];
  const first = 1000 + Math.floor(roll() * 6000);
  const world = project(stamp, first, roll);
  const helper: Helper = {
    stamp,
    stack: Array.from({ length: LABELLED }, (_, index) => first + index),
    lastMetre: [],
    unheeded: new Set(),
  };
  let state: StreamState = atCollar(number(first), number(first + LABELLED - 1));
  let due = 1 + Math.floor(roll() * 8);
  let falseAlarms = 0;
  let carried: string | undefined;
  let readMm = 0;
  let tidyBefore = true;
  for (let rod = 0; rod < RODS; rod++) {
    if (mishap !== 'none' && rod === due && !hasOccasion(helper, mishap)) due += 1;
    const now = mishap !== 'none' && rod === due;
    const moment = now ? momentOf(mishap, helper, world, roll) : undefined;
    const metres = Array.from({ length: PER_ROD }, (_, index) => rod * PER_ROD + index);
    const tidy = roll() < 0.6;
    const clean = [true, false].map((each) => drillRod(copyOf(helper), metres, each));
    const row = drillRod(helper, metres, tidy, moment);
    const asked: StreamState = { ...state, drilledMm: (rod + 1) * PER_ROD * 1000 };
    const carries =
      now && (mishap === 'walked past a metre' || mishap === 'dropped a calico') && roll() < 0.15;
    const unread = carries || (!now && roll() < 0.25);
    if (carries) carried = mishap === 'dropped a calico' ? 'one-ahead' : 'one-behind';
    const eyes = readAt(row, moment);
    const wrong = !clean.some(
      (each) => last(each) === eyes && (reading === 'digits' || each.length === row.length),
    );
    const afterSlip = mishap !== 'none' && (rod > due || now);
    const known = { ...asked, readMm };
    const seen: RodSeen = unread
      ? { depthByRodsMm: known.drilledMm }
      : {
          digits: number(eyes).slice(-3),
          depthByRodsMm: known.drilledMm,
          ...(reading === 'digits' ? {} : { count: row.length }),
        };
    const check = rodCheck(world.sampling, known, seen, world.others);
    // A carried slip shows in the stack: its clean twin is a stack that never slipped.
    const shows = carried !== undefined && rod > due ? !check.agrees : wrong;
    if (!afterSlip && !check.agrees) falseAlarms += 1;
    if (afterSlip && !unread && (shows || (now && !check.agrees))) {
      const truth = carried ?? truthOf(mishap as Mishap, moment, world);
      const held: World = {
        truth,
        written: number(eyes),
        whose: world.whose(eyes),
        row,
        should: clean[0] ?? [],
        metres,
        ...(carried === undefined || rod === due ? {} : { carried }),
        markOf: (serial) => markOf(helper, serial),
      };
      return { seed, mishap, seen: true, falseAlarms, ...judge(world, known, seen, check, held, eyes) };
    }
    if (!unread) readMm = known.drilledMm;
    tidyBefore = tidy;
    state = {
      ...asked,
      bags: [
        ...state.bags,
        ...issuedAsLaid(check, row, unread, tidyBefore).map((bag) => ({ ...bag, rod: `r${rod}` })),
      ],
    };
    if (now && carried === undefined) break;
  }
  return { seed, mishap, truth: '', seen: false, detected: false, falseAlarms };
}

/** A rod that is confirmed unread is recorded as expected, its closing sachets with it. */
function issuedAsLaid(
  check: RodCheck,
  _row: readonly InTheRow[],
  _unread: boolean,
  _tidy: boolean,
): readonly Bag[] {
  return check.expected;
}

function copyOf(helper: Helper): Helper {
  return {
    ...helper,
    stack: [...helper.stack],
    lastMetre: [...helper.lastMetre],
    unheeded: new Set(helper.unheeded),
  };
}

function last(row: readonly InTheRow[]): number {
  return row.at(-1)?.written ?? -1;
}

function readAt(row: readonly InTheRow[], moment: Moment | undefined): number {
  return (moment?.mishap === 'read the wrong calico' ? row.at(-2) : row.at(-1))?.written ?? -1;
}

interface Project {
  readonly sampling: Sampling;
  readonly others: readonly OtherHole[];
  readonly bundles: readonly { readonly truth: string; readonly serials: readonly number[] }[];
  readonly whose: (serial: number) => string;
}

/** The rig's block holds this hole's calicos, those of the hole before with what is left of them, those of the next hole, and more. */
function project(stamp: string, first: number, roll: () => number): Project {
  const every = stamp.length;
  const of = (letter: string, kind: 'standard' | 'blank' | 'field duplicate') => ({
    every,
    at: stamp.indexOf(letter),
    kind,
  });
  const before = { from: first - 200, used: 120 + Math.floor(roll() * 60) };
  const next = { from: first + LABELLED, to: first + LABELLED + 139 };
  const blank = next.to + 1;
  const resolved = sampling({
    numbers: {
      ...SETTINGS.numbers,
      blocks: [
        { rig: 'Rig 1', first: number(first - 400), last: number(first + 999) },
        { rig: 'Rig 2', first: number(first + 1000), last: number(first + 1999) },
      ],
    },
    controls: {
      ...SETTINGS.controls,
      slots: [of('S', 'standard'), of('B', 'blank'), of('D', 'field duplicate')],
    },
  });
  const run = (from: number, to: number) => atCollar(number(from), number(to)).bagRuns;
  const others: OtherHole[] = [
    {
      hole: 'ZQRC003',
      bagRuns: run(before.from, first - 1),
      bags: Array.from({ length: before.used }, (_, index) => ({
        number: number(before.from + index),
        kind: 'primary' as const,
      })),
    },
    { hole: 'ZQRC005', bagRuns: run(next.from, next.to), bags: [] },
  ];
  const range = (from: number, count: number) => Array.from({ length: count }, (_, index) => from + index);
  return {
    sampling: resolved,
    others,
    bundles: [
      { truth: 'last-holes-bags', serials: range(before.from + before.used, 60) },
      { truth: 'last-holes-bags', serials: range(next.from, 60) },
      { truth: 'another-bundle', serials: range(blank, 60) },
      { truth: 'another-bundle', serials: range(first + 1000, 60) },
    ],
    whose: (serial) =>
      serial >= first && serial < first + LABELLED
        ? 'this hole'
        : serial >= before.from && serial < first
          ? 'ZQRC003'
          : serial >= next.from && serial <= next.to
            ? 'ZQRC005'
            : 'no hole',
  };
}

function momentOf(mishap: Mishap, helper: Helper, world: Project, roll: () => number): Moment {
  const at = Math.floor(roll() * PER_ROD);
  if (mishap === 'took up another bundle')
    return { mishap, at, bundle: world.bundles[Math.floor(roll() * world.bundles.length)]?.serials ?? [] };
  if (mishap === 'left a bag on for two metres')
    return { mishap, at: 1 + Math.floor(roll() * (PER_ROD - 1)) };
  if (mishap === 'dropped a calico') return { mishap, at, dropped: roll() < 0.85 ? 1 : 2 };
  const wanted = mishap === 'second chute blocked' ? ['second chute'] : ['standard', 'blank'];
  const bundle = helper.stack.slice(1, 5).filter((serial) => wanted.includes(markOf(helper, serial)));
  return { mishap, at, bundle, sachetAside: roll() < 0.4 };
}

function truthOf(mishap: Mishap, moment: Moment | undefined, world: Project): string {
  if (mishap !== 'took up another bundle') return NAME[mishap];
  return world.bundles.find((each) => each.serials[0] === moment?.bundle?.[0])?.truth ?? NAME[mishap];
}

/** The true answers to every look that can be asked for. */
function answers(row: readonly InTheRow[]): Readonly<Record<string, RodSeen>> {
  const digits = (serial: number | undefined): string => number(serial ?? 0).slice(-3);
  return {
    count: { count: row.length },
    walk: {
      count: row.length,
      double: row.some((each) => each.inside === 'rock' && each.metres.length > 1),
      controls: row.filter((each) => each.inside !== 'rock').length,
    },
    first: { first: digits(row[0]?.written) },
    double: { double: row.some((each) => each.inside === 'rock' && each.metres.length > 1) },
    controls: { controls: row.filter((each) => each.inside !== 'rock').length },
    lastTwo: { lastTwo: [digits(row.at(-2)?.written), digits(row.at(-1)?.written)] } as RodSeen,
  };
}

function judge(
  world: Project,
  state: StreamState,
  seen: RodSeen,
  check: RodCheck,
  held: World,
  eyes: number,
) {
  const one = check.look === undefined ? undefined : answers(held.row)[check.look];
  const after =
    one === undefined ? check : rodCheck(world.sampling, state, { ...seen, ...one }, world.others);
  const name = check.named[0]?.code;
  const nameAfter = after.agrees ? 'last-but-one-read' : after.named[0]?.code;
  return {
    truth: held.truth,
    detected: !check.agrees,
    ...(name === undefined ? {} : { named: name }),
    ...(nameAfter === undefined ? {} : { namedAfterOne: nameAfter }),
    ...(check.look === undefined ? {} : { look: check.look }),
    signature: signature(check.expected, eyes, held, seen),
    signatureAfterOne: JSON.stringify([
      signature(check.expected, eyes, held, seen),
      check.look,
      shifted(one, check.expected),
    ]),
    checks: one === undefined ? [check] : [check, after],
    said: (one === undefined ? [check] : [check, after]).flatMap((each) =>
      judgedSentence(each, [groundOf(held)]),
    ),
    world: held,
  };
}

/** The world as claims are compared with it. */
function groundOf({ row, should, metres, written, whose, carried, markOf: mark }: World): Ground {
  const lying = (rows: readonly InTheRow[]) =>
    rows.map((each) => ({
      number: number(each.written),
      holds:
        each.inside === 'rock'
          ? ('metres' as const)
          : each.inside === 'sachet'
            ? ('sachet' as const)
            : ('second split' as const),
      metres: each.metres,
    }));
  return {
    ...{ row: lying(row), should: lying(should), drilled: metres, marked: metres, read: written },
    lastGiven: number(last(row)),
    whose:
      whose === 'this hole'
        ? whose
        : whose === 'no one'
          ? whose
          : whose === 'no hole'
            ? 'a block'
            : 'another hole',
    began: carried === 'one-ahead' ? 'ahead' : carried === 'one-behind' ? 'behind' : 'level',
    isKept: (each) => mark(Number(each.slice(2))) !== 'rock',
  };
}

/** The rod as it should be, kind by kind, and how far the number read and the count are off, whatever the hole's numbers are. */
function signature(expected: readonly Bag[], eyes: number, { whose }: World, seen: RodSeen): string {
  const should = Number(expected.at(-1)?.number.slice(2));
  const off = Math.abs(eyes - should) < 20 ? eyes - should : whose === 'this hole' ? 'far' : 'elsewhere';
  const kinds = expected.map((bag) => bag.kind.charAt(0)).join('');
  return JSON.stringify([kinds, off, seen.count === undefined ? '' : seen.count - expected.length]);
}

/** An answer as told beside what is expected, so that holes with other numbers fall together. */
function shifted(one: RodSeen | undefined, expected: readonly Bag[]): unknown {
  if (one === undefined) return undefined;
  const ends = expected.map((bag) => bag.number.slice(-3));
  const place = (digits: string | undefined) => (digits === undefined ? undefined : ends.indexOf(digits));
  const two = (one as { lastTwo?: readonly string[] }).lastTwo;
  return two === undefined ? ('first' in one ? place(one.first) : one) : two.map(place);
}

/** Holes from a first seed, every mishap in turn. */
export function days(firstSeed: number, holes: number, reading: Reading): readonly DayOutcome[] {
  return Array.from({ length: holes }, (_, index) =>
    day(firstSeed + index, MISHAPS[index % MISHAPS.length] ?? 'none', reading),
  );
}
