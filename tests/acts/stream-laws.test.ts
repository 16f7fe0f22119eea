import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { act, type PlainCommand } from '../../src/acts/act.ts';
import { checkAgain, rodMendedLater } from '../../src/acts/mend-later.ts';
import { checkRod, rodAsExpected, rodMended, rodNoted } from '../../src/acts/rod.ts';
import type { Result } from '../../src/finding/finding.ts';
import type { Made, Maker } from '../../src/hole/commands/made.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import type { Project } from '../../src/project/project.ts';
import { applyChanges, inverse } from '../../src/record/apply.ts';
import type { Document, DoneChange } from '../../src/record/document.ts';
import type { NamedMismatch, RodCheck } from '../../src/sampling/rod/rod-check.ts';
import { checkBags } from '../../src/sampling/stream/bags-check.ts';
import { waitingMismatches } from '../../src/standing/mismatches.ts';
import { nextRod } from '../../src/standing/rods.ts';
import { withSlots } from '../sampling/build.ts';
import { at, hole, makerAt } from '../shift/build.ts';
import { runs } from '../support/long-run.ts';

const NOW = at('08:00');
const MAKER: Maker = makerAt(NOW);

const project = {
  sampling: withSlots([
    { every: 20, at: 0, kind: 'standard' },
    { every: 20, at: 13, kind: 'field duplicate' },
    { every: 20, at: 7, oneOf: ['blank', 'standard'], usually: 'blank' },
  ]),
  settings: { rigs: [{ name: 'RIG1' }] },
} as Project;

const START = hole('ZQRC004', {
  bagRuns: [{ first: 'ZQ000121', last: 'ZQ000620', rig: 'Rig 1', at: at('06:00') }],
});

/** How far off the last number and the count read: as they should be, and as usual mismatches give them. */
const READINGS = [
  { last: 0, count: 0 },
  { last: 0, count: 0 },
  { last: -1, count: -1 },
  { last: 1, count: 1 },
  { last: 1, count: 0 },
  { last: -1, count: 0 },
  { last: 0, count: -1 },
  { last: 23, count: 0 },
] as const;
type Reading = (typeof READINGS)[number];

/** Something done to the bags of a hole, through the very acts of the console and the pipe. */
type Deed =
  /** A rod whose last bag reads so far from the one expected; mended one of the ways, or noted. */
  | { readonly rod: Reading; readonly way: number }
  | { readonly mend: number }
  | { readonly say: 'later' | 'place' | 'choose' | 'force' | 'spoiled' | 'swap'; readonly pick: number }
  | { readonly undo: true };

const deeds = fc.array(
  fc.oneof(
    {
      weight: 6,
      arbitrary: fc.record({ rod: fc.constantFrom(...READINGS), way: fc.oneof(fc.constant(-1), fc.nat(30)) }),
    },
    { weight: 3, arbitrary: fc.record({ mend: fc.nat(30) }) },
    {
      weight: 4,
      arbitrary: fc.record({
        say: fc.constantFrom('later', 'place', 'choose', 'force', 'spoiled', 'swap'),
        pick: fc.nat(30),
      }),
    },
    { weight: 3, arbitrary: fc.constant({ undo: true } as const) },
  ),
  { minLength: 6, maxLength: 25 },
);

function made(document: Document, deed: Exclude<Deed, { readonly undo: true }>): Result<Made> | undefined {
  if ('rod' in deed) return rodDone(document, deed);
  if ('mend' in deed) return mendLater(document, deed.mend);
  const command = commandOf(document, deed);
  return command === undefined ? undefined : act(project, document, command, MAKER);
}

function rodDone(document: Document, { rod, way }: Extract<Deed, { readonly rod: Reading }>) {
  const next = nextRod(document);
  const should = checkRod(project, [document], document, next, {}, NOW).expected;
  const last = Number(should.at(-1)?.number.slice(2) ?? 121) + rod.last;
  const seen = { digits: String(last).slice(-3), count: should.length + rod.count };
  const check = checkRod(project, [document], document, next, seen, NOW);
  if (check.agrees) return rodAsExpected(document, next, check, MAKER);
  const named = kindOf(check, Math.max(0, way));
  return way < 0 || named === undefined
    ? rodNoted(document, next, check, seen, MAKER)
    : rodMended(document, next, named, way % named.ways.length, MAKER);
}

/** One of the kinds named; `several`, which writes down what was expected, only where nothing else is named. */
function kindOf({ named }: RodCheck, pick: number): NamedMismatch | undefined {
  return named[pick % Math.max(1, named.length - 1)];
}

function mendLater(document: Document, pick: number) {
  const [waiting] = waitingMismatches(document);
  if (waiting === undefined) return undefined;
  const chosen = kindOf(checkAgain(project, [document], document, waiting, {}), pick);
  return chosen && rodMendedLater(project, document, waiting, chosen, pick % chosen.ways.length, MAKER);
}

function commandOf(
  document: Document,
  { say, pick }: Extract<Deed, { readonly say: string }>,
): PlainCommand | undefined {
  const bags = holeNouns(document, 'bags');
  const bag = bags[pick % Math.max(1, bags.length)];
  switch (say) {
    case 'later':
      return { does: 'put control off', reason: 'no sachets here' };
    case 'place':
      return { does: 'place control' };
    case 'choose':
      return { does: 'choose control', kind: pick % 2 === 0 ? 'standard' : 'blank', reason: 'past the lode' };
    case 'force':
      return {
        does: 'control',
        kind: 'blank',
        number: `ZQ${String(Number(bags.at(-1)?.number.slice(2) ?? 120) + 1).padStart(6, '0')}`,
      };
    case 'spoiled':
      return bag && { does: 'spoiled bag', number: bag.number, reason: 'torn' };
    case 'swap':
      return bag && { does: 'swap pair', lastDigits: bag.number };
  }
}

/** The hole after a series of deeds; one that is refused leaves it as it was, undo takes the latest back by its inverse. */
function play(all: readonly Deed[]): Document {
  let document = START;
  const done: (readonly DoneChange[])[] = [];
  for (const deed of all) {
    if ('undo' in deed) {
      document = after(document, inverse(done.pop() ?? [])).document;
      continue;
    }
    const result = made(document, deed);
    if (result?.ok !== true) continue;
    const applied = after(document, result.value.changes);
    document = applied.document;
    done.push(applied.done);
  }
  return document;
}

function after(document: Document, changes: Made['changes']) {
  const applied = applyChanges(document.tables, changes);
  if (!applied.ok) throw new Error(applied.problem);
  return { document: { ...document, tables: applied.tables }, done: applied.done };
}

/** The faults of the bags, but for a duplicate whose primary someone spoiled: it is alone, and the check says so rightly. */
function found(document: Document) {
  const bags = holeNouns(document, 'bags');
  const torn = new Set(bags.filter((bag) => bag.kind === 'spoiled').map((bag) => bag.number));
  const alone = new Set(bags.flatMap((bag) => (torn.has(bag.of ?? '') ? [`bag ${bag.number}`] : [])));
  const [bagRuns, choices] = [holeNouns(document, 'bagRuns'), holeNouns(document, 'controlChoices')];
  return checkBags(project.sampling, [{ hole: 'ZQRC004', bags, bagRuns, choices }])
    .map(({ code, place }) => [code, place.thing])
    .filter(([code, thing]) => code !== 'duplicate-without-primary' || !alone.has(thing ?? ''));
}

/** The last hole's bags noted at a rod, the duplicate of one of its metres put by hand, then the rod mended: the metre's number changes. */
const DUPLICATE_PLACED_BEFORE_MENDING: Deed[] = [
  { rod: READINGS[0], way: -1 },
  { say: 'later', pick: 0 },
  { rod: READINGS[7], way: -1 },
  { say: 'place', pick: 0 },
  { mend: 0 },
];

test('whatever is read at the rods, mended at once or later, put off, placed, chosen, forced, torn, swapped or undone: the bags hold no fault', () => {
  fc.assert(
    fc.property(deeds, (all) => {
      expect(found(play(all))).toEqual([]);
    }),
    { numRuns: runs(120, 20), examples: [[DUPLICATE_PLACED_BEFORE_MENDING]] },
  );
});

test('and undoing all of it leaves the hole as it was', () => {
  fc.assert(
    fc.property(deeds, (all) => {
      const undone = play([...all, ...all.map(() => ({ undo: true }) as const)]);
      expect(holeNouns(undone, 'bags')).toEqual([]);
      expect(undone.tables.bagRuns).toEqual(START.tables.bagRuns);
    }),
    { numRuns: runs(40, 15) },
  );
});
