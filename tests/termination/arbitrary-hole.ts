import fc from 'fast-check';
import type { Condition } from '../../src/condition/condition.ts';
import { MOISTURES, RECOVERIES } from '../../src/hole/drilled.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import type { Situation } from '../../src/termination/evaluate/situation.ts';
import type { RuleCondition } from '../../src/termination/rules/rule.ts';
import type { Row } from '../../src/value/row.ts';
import { SCHEMA } from './build.ts';
import type { Asked, Hole, Said, Stream, Test } from './reference.ts';

/** A hole of some tens of millimetres, as rows for the rules and by the millimetre for the reference. */
export type Pair = { readonly situation: Situation; readonly hole: Hole };

const saidArbitrary: fc.Arbitrary<Said> = fc.record(
  {
    rock: fc.constantFrom('BST', 'GRN'),
    pyrite: fc.oneof(
      { weight: 4, arbitrary: fc.constant(0) },
      { weight: 3, arbitrary: fc.constantFrom(0.1, 0.5, 1, 2, 5) },
      { weight: 1, arbitrary: fc.constant<'not observed'>('not observed') },
    ),
    second: fc.constantFrom('BST', 'GRN'),
    habit: fc.constantFrom('DIS', 'MAS'),
    doubt: fc.constantFrom<'no return' | 'asked' | 'pyrite asked'>('no return', 'asked', 'pyrite asked'),
  },
  { requiredKeys: ['rock', 'pyrite', 'habit'] },
);
/** What a metre says. Doubt is rare, or nothing could ever be told. */
export const metreArbitrary = fc
  .tuple(saidArbitrary, fc.nat(7))
  .map(([{ doubt, ...said }, luck]): Said => (luck === 0 && doubt !== undefined ? { ...said, doubt } : said));

const pieceArbitrary = fc.record({
  length: fc.integer({ min: 1, max: 5 }),
  said: metreArbitrary,
  gap: fc.nat(14).map((luck) => luck === 0),
});
const amendmentArbitrary = fc.record({
  row: fc.nat(30),
  count: fc.integer({ min: 1, max: 4 }),
  said: metreArbitrary,
});
const factArbitrary = fc.record(
  {
    from: fc.nat(30),
    length: fc.integer({ min: 1, max: 12 }),
    moisture: fc.constantFrom(...MOISTURES),
    recovery: fc.constantFrom(...RECOVERIES),
  },
  { requiredKeys: ['from', 'length'] },
);

/** What the row of one thing said holds, the trace among them. */
function rowOf(fromMm: number, toMm: number, { rock, second, pyrite, habit, doubt }: Said): Row {
  const place = { fromMm: depthFromMm(fromMm), toMm: depthFromMm(toMm) };
  const absent = { absent: 'not observed' } as const;
  const sulphides =
    pyrite === 'not observed'
      ? absent
      : pyrite === 0
        ? ({ absent: 'none' } as const)
        : { percents: { PYR: pyrite === 0.1 ? ('trace' as const) : pyrite } };
  // A row edited outside may say both no return and what it held: it is no return.
  const nothing = doubt === 'no return' && pyrite === 0;
  const other = second === undefined || second === rock ? {} : { second: { code: second, percent: 30 } };
  const cells = {
    rock: { code: rock, ...other },
    sulphides,
    ...('percents' in sulphides ? { habit: { code: habit! } } : {}),
  };
  return {
    ...place,
    cells: nothing ? { rock: absent, sulphides: absent } : cells,
    ...(doubt === 'asked' ? { asked: ['a level jump'] } : {}),
    ...(doubt === 'pyrite asked' ? { asked: ['a percent step'], askedOf: ['sulphides'] } : {}),
    ...(doubt === 'no return' ? { noReturn: true as const } : {}),
  };
}

/** Holes with gaps, no returns, composites of uneven length, amendments, heads that part, and a stream in pieces that overlap. */
export const pairArbitrary: fc.Arbitrary<Pair> = fc
  .record({
    top: fc.constantFrom(0, 0, 0, 3),
    pieces: fc.array(pieceArbitrary, { maxLength: 14 }),
    amendments: fc.array(amendmentArbitrary, { maxLength: 3 }),
    unread: fc.constantFrom(0, 0, 0, 1, 3, 7),
    ahead: fc.integer({ min: -6, max: 12 }),
    facts: fc.array(factArbitrary, { maxLength: 6 }),
    planned: fc.option(fc.integer({ min: 5, max: 40 }), { nil: undefined }),
    rod: fc.constantFrom(3, 6, 7),
    rodOffset: fc.integer({ min: -5, max: 5 }),
    offPlan: fc.array(fc.record({ at: fc.nat(30), mm: fc.option(fc.nat(9), { nil: undefined }) }), {
      maxLength: 3,
    }),
    heldSince: fc.option(fc.nat(30), { nil: undefined }),
  })
  .map(({ top, pieces, amendments, unread, ahead, facts, planned, rod, rodOffset, offPlan, heldSince }) => {
    const log: (Said | undefined)[] = Array.from({ length: top }, () => undefined);
    const rows: Row[] = [];
    for (const { length, said, gap } of pieces) {
      if (!gap) rows.push(rowOf(log.length, log.length + length, said));
      for (let mm = 0; mm < length; mm++) log.push(gap ? undefined : said);
    }
    for (const { row, count, said } of amendments) amend(rows, log, row, count, said);
    // Rows cleared at the foot leave a hole that is drilled deeper than its log.
    log.length = Math.max(top, log.length - unread);
    const cut = rows.flatMap((row) => cutAbove(row, log.length));
    while (log.length > 0 && log.at(-1) === undefined) log.pop();
    const drilled = Math.max(0, log.length + ahead);
    const told = [...offPlan]
      .sort((a, b) => a.at - b.at)
      .filter((each, i, all) => all[i + 1]?.at !== each.at);
    const held =
      heldSince !== undefined && heldSince <= Math.max(log.length, drilled) ? heldSince : undefined;
    const hole: Hole = {
      top,
      log,
      drilled,
      stream: streamByMm(facts),
      rod,
      rodOffset,
      offPlan: told.map(({ at, mm }) => (mm === undefined ? { at } : { at, mm })),
      ...(planned === undefined ? {} : { planned }),
      ...(held === undefined ? {} : { heldSince: held }),
    };
    return { hole, situation: situationOf(hole, cut, facts) };
  });

function cutAbove(row: Row, footMm: number): readonly Row[] {
  return row.fromMm >= footMm ? [] : [{ ...row, toMm: depthFromMm(Math.min(row.toMm, footMm)) }];
}

/** The foot of unbroken cover. */
function loggedTo({ top, log }: Hole): number {
  const gap = log.findIndex((each, mm) => mm >= top && each === undefined);
  return Math.max(top, gap < 0 ? log.length : gap);
}

/** Rows amended from the one at an index on, as a range of the log is amended at a stroke. */
function amend(rows: Row[], log: (Said | undefined)[], first: number, count: number, said: Said): void {
  for (let index = first; index < Math.min(first + count, rows.length); index++) {
    const { fromMm, toMm } = rows[index]!;
    rows[index] = rowOf(fromMm, toMm, said);
    for (let mm: number = fromMm; mm < toMm; mm++) log[mm] = said;
  }
}

type Fact = { readonly from: number; readonly length: number } & Stream;

function streamByMm(facts: readonly Fact[]): readonly Stream[] {
  const stream: Stream[] = [];
  for (const { from, length, ...said } of facts)
    for (let mm = from; mm < from + length; mm++) stream[mm] = { ...stream[mm], ...said };
  return stream;
}

function situationOf(hole: Hole, rows: readonly Row[], facts: readonly Fact[]): Situation {
  return {
    schema: SCHEMA,
    header: {
      logFromMm: depthFromMm(hole.top),
      intervalMm: 1,
      rodMm: hole.rod,
      firstRodOffsetMm: hole.rodOffset,
    },
    ...(hole.planned === undefined ? {} : { plan: { depthMm: depthFromMm(hole.planned) } }),
    rows,
    loggedMm: depthFromMm(loggedTo(hole)),
    drilledMm: depthFromMm(hole.drilled),
    stream: facts.map(({ from, length, ...said }) => ({
      fromMm: depthFromMm(from),
      toMm: depthFromMm(from + length),
      ...said,
    })),
    expects: [],
    direction: hole.offPlan.map(({ at, mm }) => ({
      atMm: depthFromMm(at),
      ...(mm === undefined ? {} : { offPlanMm: mm }),
    })),
    pace: [],
    ...(hole.heldSince === undefined
      ? {}
      : { hold: { because: 'wait', by: 'ABC', sinceMm: depthFromMm(hole.heldSince) } }),
  };
}

const leafTest: fc.Arbitrary<Test> = fc.oneof(
  fc.record({ rock: fc.constantFrom('BST', 'GRN') }),
  fc.record({ habit: fc.constantFrom('DIS', 'MAS') }),
  fc.record({ pyrite: fc.constantFrom<'<' | '>='>('<', '>='), percent: fc.constantFrom(0.1, 0.5, 1, 2) }),
);
const testArbitrary: fc.Arbitrary<Test> = fc.oneof(
  { weight: 4, arbitrary: leafTest },
  { weight: 1, arbitrary: fc.record({ not: leafTest }) },
  { weight: 1, arbitrary: fc.record({ both: fc.array(leafTest, { minLength: 2, maxLength: 2 }) }) },
);
const mm = fc.integer({ min: 1, max: 12 });

/** One condition, as the reference asks it. */
export const leafArbitrary: fc.Arbitrary<Asked> = fc.oneof(
  fc.record({
    ask: fc.constantFrom<'run' | 'seen' | 'since'>('run', 'seen', 'since'),
    test: testArbitrary,
    mm,
  }),
  fc.record({
    ask: fc.constant<'past contact'>('past contact'),
    test: testArbitrary,
    mm,
    thick: fc.integer({ min: 1, max: 5 }),
  }),
  fc.record({ ask: fc.constant<'of last'>('of last'), test: testArbitrary, mm, of: mm }),
  fc.record({
    ask: fc.constant<'share'>('share'),
    test: testArbitrary,
    tenths: fc.integer({ min: 1, max: 1000 }),
  }),
  fc.record({
    ask: fc.constantFrom<'wet' | 'no return' | 'off plan' | 'planned' | 'minimum' | 'maximum'>(
      'wet',
      'no return',
      'off plan',
      'planned',
      'minimum',
      'maximum',
    ),
    mm,
  }),
  fc.record({
    ask: fc.constant<'poor'>('poor'),
    classes: fc.integer({ min: 0, max: 4 }).map((least) => RECOVERIES.slice(least)),
    mm,
  }),
  fc.record({ ask: fc.constantFrom<'rod end' | 'held'>('rod end', 'held') }),
);

/** Conditions joined by all, any and not, up to three deep. */
export const askedArbitrary: fc.Arbitrary<Asked> = fc.letrec<{ asked: Asked }>((tie) => ({
  asked: fc.oneof(
    { maxDepth: 3 },
    { weight: 3, arbitrary: leafArbitrary },
    {
      weight: 1,
      arbitrary: fc.record({
        ask: fc.constantFrom<'all' | 'any'>('all', 'any'),
        parts: fc.array(tie('asked'), { minLength: 1, maxLength: 3 }),
      }),
    },
    { weight: 1, arbitrary: fc.record({ ask: fc.constant<'not'>('not'), part: tie('asked') }) },
  ),
})).asked;

/** The test of a millimetre as a condition over rows. */
function whereOf(test: Test): Condition {
  if ('rock' in test) return { field: 'rock', is: test.rock };
  if ('habit' in test) return { field: 'habit', is: test.habit };
  if ('both' in test) return { all: test.both.map(whereOf) };
  if ('not' in test) return { not: whereOf(test.not) };
  const field = { field: 'sulphides', of: 'PYR' };
  return test.pyrite === '<' ? { ...field, lessThan: test.percent } : { ...field, atLeast: test.percent };
}

/** A condition of the reference as a rule in a file says it, in metres. */
export function asRule(asked: Asked): RuleCondition {
  switch (asked.ask) {
    case 'run':
      return { inARow: { where: whereOf(asked.test), forM: asked.mm / 1000 } };
    case 'seen':
      return { seen: { where: whereOf(asked.test), forM: asked.mm / 1000 } };
    case 'since':
      return { sinceLastSeen: { where: whereOf(asked.test), atLeastM: asked.mm / 1000 } };
    case 'past contact':
      return { pastContact: { into: whereOf(asked.test), byM: asked.mm / 1000, thickM: asked.thick / 1000 } };
    case 'of last':
      return { ofLast: { where: whereOf(asked.test), atLeastM: asked.mm / 1000, ofM: asked.of / 1000 } };
    case 'share':
      return { share: { where: whereOf(asked.test), atLeastPercent: asked.tenths / 10 } };
    case 'wet':
      return { wetInARow: { forM: asked.mm / 1000 } };
    case 'no return':
      return { noReturnInARow: { forM: asked.mm / 1000 } };
    case 'poor':
      return { recoveryInARow: { atMost: asked.classes[0] as 'poor', forM: asked.mm / 1000 } };
    case 'off plan':
      return { offPlan: { moreThanM: asked.mm / 1000 } };
    case 'planned':
      return { plannedDepthReached: { plusM: asked.mm / 1000 } };
    case 'minimum':
      return { minimumReached: { minimumM: asked.mm / 1000 } };
    case 'maximum':
      return { maximumReached: { maximumM: asked.mm / 1000 } };
    case 'rod end':
      return { rodFinished: {} };
    case 'held':
      return { held: {} };
    case 'not':
      return { not: asRule(asked.part) };
    case 'all':
      return { all: asked.parts.map(asRule) };
    case 'any':
      return { any: asked.parts.map(asRule) };
  }
}
