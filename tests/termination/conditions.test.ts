import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import type { Situation } from '../../src/termination/evaluate/situation.ts';
import type { RuleCondition } from '../../src/termination/rules/rule.ts';
import { BARREN, basalt, metresOf, outcome, row, situation, times } from './build.ts';

const m = depthFromMetres;
const drilled = (drilledM: number, more: Partial<Situation> = {}) => situation([], { drilledM, ...more });
const state = (when: RuleCondition, at: Situation) => outcome(when, at).state;
const text = (when: RuleCondition, at: Situation) => outcome(when, at).progress.text;

describe('depths', () => {
  const plan = { depthMm: m(120), targetMm: m(90) };

  test('planned: met at the planned depth, or so far past it or short of it', () => {
    const planned = (plusM: number) => ({ plannedDepthReached: { plusM } });
    expect(text(planned(0), drilled(54, { plan }))).toBe('drilled 54 of 120 m planned');
    expect(text(planned(-6), drilled(54, { plan }))).toBe('drilled 54 of 114 m planned − 6');
    expect(state(planned(0), drilled(119.999, { plan }))).toBe('not met');
    expect(state(planned(0), drilled(120, { plan }))).toBe('met');
    expect(state(planned(6), drilled(125, { plan }))).toBe('not met');
    expect(state(planned(-6), drilled(114, { plan }))).toBe('met');
    expect(state(planned(0), drilled(54))).toBe('cannot tell');
  });

  test('past the target, where the plan names one', () => {
    const past = { pastTarget: { byM: 20 } };
    expect(state(past, drilled(109, { plan }))).toBe('not met');
    expect(state(past, drilled(110, { plan }))).toBe('met');
    expect(state(past, drilled(110, { plan: { depthMm: m(120) } }))).toBe('cannot tell');
  });

  test('past an expected zone by its foot, or by its depth where it has none', () => {
    const past = { pastExpected: { zone: 'lode', byM: 10 } };
    const expects = (toM?: number) => [
      { name: 'lode', fromMm: m(60), ...(toM === undefined ? {} : { toMm: m(toM) }) },
    ];
    expect(state(past, drilled(70, { expects: expects() }))).toBe('met');
    expect(state(past, drilled(70, { expects: expects(65) }))).toBe('not met');
    expect(state(past, drilled(75, { expects: expects(65) }))).toBe('met');
    expect(outcome(past, drilled(75)).reason).toBe('the plan expects no lode');
  });

  test('near a boundary: so far before it', () => {
    const near = { boundaryNear: { boundaryM: 150, withinM: 6 } };
    expect(state(near, drilled(143))).toBe('not met');
    expect(outcome(near, drilled(144))).toMatchObject({ state: 'met', sinceMm: 144_000 });
  });

  test('of the budget: with what the other holes have used, and not without knowing it', () => {
    const spent = { budgetSpent: { budgetM: 1000 } };
    expect(state(spent, drilled(99, { usedElsewhereMm: 900_000 }))).toBe('not met');
    expect(state(spent, drilled(100, { usedElsewhereMm: 900_000 }))).toBe('met');
    expect(state(spent, drilled(1, { usedElsewhereMm: 1_200_000 }))).toBe('met');
    expect(state(spent, drilled(100))).toBe('cannot tell');
  });

  test('of a rod’s end, by the first rod’s offset', () => {
    const header = { logFromMm: m(0), intervalMm: 1000, rodMm: 6000, firstRodOffsetMm: -300 };
    const end = { rodFinished: {} };
    expect(outcome(end, drilled(6, { header }))).toMatchObject({ state: 'not met', earliestMm: 11_700 });
    expect(text(end, drilled(6, { header }))).toBe('drilled 6 m, the rod ends at 11.7 m');
    expect(state(end, drilled(11.7, { header }))).toBe('met');
    expect(state(end, drilled(0, { header }))).toBe('met');
  });

  test('delegated: asked before the rod that passes the limit, not after it', () => {
    const limit = { delegatedLimit: { overM: 12 } };
    const odd = { depthMm: m(119) };
    expect(state(limit, drilled(126, { plan }))).toBe('not met');
    expect(state(limit, drilled(132, { plan }))).toBe('met');
    expect(state(limit, drilled(120, { plan: odd }))).toBe('not met');
    expect(state(limit, drilled(126, { plan: odd }))).toBe('met');
    expect(state(limit, drilled(126))).toBe('cannot tell');
  });

  test('short of the plan by more than may be decided', () => {
    const short = { shortOfPlan: { byMoreThanM: 20 } };
    expect(state(short, drilled(99, { plan }))).toBe('met');
    expect(state(short, drilled(100, { plan }))).toBe('not met');
  });
});

describe('the sample stream', () => {
  const wet = (fromM: number, toM: number) => ({ fromMm: m(fromM), toMm: m(toM), moisture: 'wet' as const });
  const dry = (fromM: number, toM: number) => ({ fromMm: m(fromM), toMm: m(toM), moisture: 'dry' as const });

  test('counts wet metres back from the drilled head, where the log has not come to', () => {
    const found = outcome({ wetInARow: { forM: 4 } }, drilled(12, { stream: [dry(0, 8), wet(8, 12)] }));
    expect(found).toMatchObject({ state: 'met', sinceMm: 12_000 });
    expect(found.progress.text).toBe('wet for 4 of 4 m in a row');
  });

  test('can’t be told of metres that no one noted', () => {
    const found = outcome({ wetInARow: { forM: 4 } }, drilled(12, { stream: [dry(0, 6), wet(9, 12)] }));
    expect(found.state).toBe('cannot tell');
    expect(found.reason).toBe(
      'wet for 3 of 4 m in a row: moisture not noted at 8–9; note it: ;dry 8-9, or moist or wet',
    );
  });

  test('takes the latest word on a metre', () => {
    const at = drilled(12, { stream: [wet(0, 12), dry(11, 12)] });
    expect(outcome({ wetInARow: { forM: 4 } }, at).reason).toBe('wet for 0 of 4 m in a row: not wet to 12 m');
  });

  test('counts recovery at or below a class', () => {
    const poor = { recoveryInARow: { atMost: 'poor' as const, forM: 2 } };
    const fact = (fromM: number, recovery: 'fair' | 'poor' | 'none') => ({
      fromMm: m(fromM),
      toMm: m(fromM + 1),
      recovery,
    });
    expect(state(poor, drilled(3, { stream: [fact(0, 'fair'), fact(1, 'poor'), fact(2, 'none')] }))).toBe(
      'met',
    );
    expect(state(poor, drilled(3, { stream: [fact(0, 'none'), fact(1, 'poor'), fact(2, 'fair')] }))).toBe(
      'not met',
    );
  });
});

describe('direction and time', () => {
  test('stand as they were last told, and can’t be told before', () => {
    const direction = [
      { atMm: m(30), offPlanMm: 1000 },
      { atMm: m(60), offPlanMm: 6200 },
      { atMm: m(90), projectedMissMm: 4000 },
    ];
    const found = outcome({ offPlan: { moreThanM: 5 } }, drilled(100, { direction }));
    expect(found).toMatchObject({ state: 'met', sinceMm: 60_000 });
    expect(found.reason).toBe('6.2 m from the plan (limit 5 m)');
    expect(found.history).toEqual([
      { atMm: 0, state: 'cannot tell' },
      { atMm: 30_000, state: 'no' },
      { atMm: 60_000, state: 'yes' },
    ]);
    expect(state({ projectedMiss: { moreThanM: 5 } }, drilled(100, { direction }))).toBe('not met');
    expect(state({ targetUnreachable: {} }, drilled(100, { direction }))).toBe('cannot tell');
  });

  test('say what they wait for', () => {
    const reason = (when: RuleCondition) => outcome(when, drilled(60)).reason;
    expect(reason({ offPlan: { moreThanM: 5 } })).toContain(
      'no shot yet to compare with the plan: record one (;shot)',
    );
    expect(reason({ paceBelow: { metresPerHour: 4 } })).toContain(
      'it needs two rods done (;rod) at two times',
    );
  });

  test('of a target that is out of reach', () => {
    const told = (targetReachable: 'yes' | 'no' | 'cannot tell') =>
      drilled(60, { direction: [{ atMm: m(60), targetReachable }] });
    expect(state({ targetUnreachable: {} }, told('no'))).toBe('met');
    expect(state({ targetUnreachable: {} }, told('yes'))).toBe('not met');
    expect(state({ targetUnreachable: {} }, told('cannot tell'))).toBe('cannot tell');
  });

  test('of pace and hours', () => {
    const at = drilled(60, { pace: [{ atMm: m(60), metresPerHour: 3.25, hoursOnHole: 20 }] });
    expect(text({ paceBelow: { metresPerHour: 4 } }, at)).toBe('3.3 m an hour (limit 4)');
    expect(state({ paceBelow: { metresPerHour: 4 } }, at)).toBe('met');
    expect(state({ hoursSpent: { atLeastH: 20.5 } }, at)).toBe('not met');
    expect(state({ hoursSpent: { atLeastH: 1 } }, drilled(60))).toBe('cannot tell');
  });
});

describe('an instrument', () => {
  const reading = (fromM: number, number: number | undefined) =>
    row(fromM, fromM + 1, {
      ...basalt(0),
      suscept: number === undefined ? { absent: 'not observed' } : { number },
    });
  const below = { instrumentBelow: { field: 'suscept', lessThan: 0.5, forM: 2 } };

  test('is below a value for so many metres', () => {
    expect(state(below, situation([reading(0, 9), reading(1, 0.4), reading(2, 0.1)]))).toBe('met');
    expect(outcome(below, situation([reading(0, 0.1), reading(1, 0.5), reading(2, 0.1)])).reason).toBe(
      'magnetic susceptibility < 0.5 10⁻³ SI for 1 of 2 m in a row: magnetic susceptibility 0.5 10⁻³ SI at 1–2',
    );
  });

  test('can’t be told until the last metres are read', () => {
    expect(state(below, situation([reading(0, 0.1), reading(1, 0.1), reading(2, undefined)]))).toBe(
      'cannot tell',
    );
  });
});

describe('a void', () => {
  const near = { voidNear: { inLastM: 3, aheadM: 10 } };
  /** A hole of which every metre is logged, and none of them is a void. */
  const logged = (drilledM: number, more: Partial<Situation> = {}) => situation([row(0, drilledM, 0)], more);
  const hole = (at: number, length: number) =>
    Array.from({ length }, (_, metre) =>
      row(metre, metre + 1, metre === at ? { rock: { code: 'VOI' } } : basalt(0)),
    );

  test('is near while a code that cautions of one is in the last metres of the log, then no more', () => {
    expect(outcome(near, situation(hole(1, 2)))).toMatchObject({
      state: 'met',
      deciding: [{ fromMm: 1000, toMm: 2000 }],
    });
    expect(state(near, situation(hole(1, 4)))).toBe('met');
    expect(state(near, situation(hole(1, 5)))).toBe('not met');
  });

  test('as a second rock counts', () => {
    const cells = { rock: { code: 'BST', second: { code: 'VOI', percent: 10 } } } as const;
    expect(state(near, situation([row(0, 1, cells)]))).toBe('met');
  });

  test('is seen in a row below a gap, and in one about which a question is open', () => {
    const rows = [...hole(99, 3), row(5, 6, { rock: { code: 'VOI' } })];
    expect(outcome(near, situation(rows, { loggedM: 3, drilledM: 6 })).reason).toBe(
      'void logged at 5–6, at the bit',
    );
    const asked = { ...row(0, 1, { rock: { code: 'VOI' } }), asked: ['already so'] };
    expect(state(near, situation([asked]))).toBe('met');
  });

  test('counts from the moment it is logged, though the rig is further on than the window is long', () => {
    const found = outcome(near, situation(hole(3, 4), { drilledM: 40 }));
    expect(found.state).toBe('met');
    expect(found.reason).toBe('void logged at 3–4, 36 m above the bit');
  });

  test('that a scale or a flag names is one, as one of a code is', () => {
    const caution = { kind: 'void', words: 'Call: site procedures.' } as const;
    const flag = {
      name: 'cavity',
      label: 'cavity',
      kind: 'flag',
      required: false,
      carry: false,
      unsaid: 'none',
      canBeNone: true,
      caution,
    } as const;
    const base = situation([row(0, 1, { cavity: { flag: true } })]);
    const schema = { ...base.schema, fields: [...base.schema.fields, flag] };
    expect(state(near, { ...base, schema })).toBe('met');
  });

  test('may be in metres drilled and not logged: it can’t be told, and says what to log', () => {
    const found = outcome(near, situation(hole(99, 4), { drilledM: 10 }));
    expect(found.state).toBe('cannot tell');
    expect(found.reason).toBe('not all of the last 3 m seen: log 6 m more');
  });

  test('may be in a metre without return: it can’t be told', () => {
    expect(state(near, situation(metresOf([0, 'no return', 0])))).toBe('cannot tell');
    expect(state(near, situation(metresOf([0, 'no return', 0, 0, 0])))).toBe('not met');
  });

  test('is near from so far before the depth it is expected at to its foot', () => {
    const expects = [{ name: 'old stope', fromMm: m(40), toMm: m(44), hazard: 'void' as const }];
    const at = (drilledM: number) => logged(drilledM, { expects });
    expect(state(near, at(29.999))).toBe('not met');
    expect(state(near, at(30))).toBe('met');
    expect(state(near, at(44))).toBe('met');
    expect(state(near, at(44.001))).toBe('not met');
    expect(outcome(near, at(32)).reason).toBe('old stope could come at 40 m, 8 m below the bit or less');
    expect(outcome(near, at(42)).reason).toBe(
      'old stope could come at any metre to 44 m, the bit is at 42 m or deeper',
    );
  });

  test('expected without a foot is never left behind; a fibre zone is none', () => {
    const expects = [{ name: 'stope', fromMm: m(40), hazard: 'void' as const }];
    expect(state(near, drilled(200, { expects }))).toBe('met');
    const fibre = [{ name: 'amphibole', fromMm: m(40), hazard: 'fibre' as const }];
    expect(state(near, logged(40, { expects: fibre }))).toBe('not met');
  });
});

describe('a hold', () => {
  test('is met while it stands, from the depth it was put on', () => {
    const at = drilled(60, { hold: { because: 'assays due', by: 'ABC', sinceMm: m(48) } });
    expect(outcome({ held: {} }, at)).toMatchObject({
      state: 'met',
      sinceMm: 48_000,
      reason: 'held by ABC since 48 m: assays due',
    });
    expect(state({ held: {} }, drilled(60))).toBe('not met');
  });
});

describe('all, any and not', () => {
  const tail = { inARow: { where: BARREN, forM: 3 } };
  const deep = { maximumReached: { maximumM: 6 } };
  const at = situation(metresOf([5, 0, 0, 0]));

  test('all says what is in its way, and shows the part that wants most', () => {
    const found = outcome({ all: [deep, tail] }, at);
    expect(found).toMatchObject({ state: 'not met', earliestMm: 6000 });
    expect(found.progress).toEqual({ haveMm: 4000, needMm: 6000, text: 'drilled 4 of 6 m maximum' });
  });

  test('any says what it is met by', () => {
    expect(outcome({ any: [deep, tail] }, at)).toMatchObject({
      state: 'met',
      sinceMm: 4000,
      progress: { text: 'pyrite < 1 % for 3 of 3 m in a row' },
    });
  });

  test('not says what there is, and has no amount', () => {
    expect(outcome({ not: tail }, at)).toMatchObject({
      state: 'not met',
      progress: { text: 'pyrite < 1 % for 3 of 3 m in a row' },
      earliestMm: 5000,
    });
    expect(outcome({ not: tail }, at).progress.haveMm).toBeUndefined();
  });

  test('are settled by the parts that can be told where these settle them', () => {
    const noPlan = { plannedDepthReached: { plusM: 0 } };
    expect(state({ all: [noPlan, deep] }, at)).toBe('not met');
    expect(state({ any: [noPlan, tail] }, at)).toBe('met');
    expect(state({ all: [noPlan, tail] }, at)).toBe('cannot tell');
    expect(state({ not: noPlan }, at)).toBe('cannot tell');
  });
});

describe('words of what is seen', () => {
  test('name the field where it was not observed, and a level by its code', () => {
    const level = (cells: Parameters<typeof row>[2]) =>
      outcome(
        { inARow: { where: { field: 'weathering', is: 'frs' }, forM: 1 } },
        situation([row(0, 1, cells)]),
      ).reason;
    const start = 'weathering is fresh for 0 of 1 m in a row:';
    expect(level({ weathering: { level: 2 } })).toBe(`${start} weathering weathered at 0–1`);
    expect(level({})).toBe(`${start} weathering never observed in this hole, needed at 0–1`);
  });

  test('say none where none was seen', () => {
    const where = { field: 'sulphides', atLeast: 1 } as const;
    expect(outcome({ inARow: { where, forM: 1 } }, situation(metresOf(times(1, 0)))).reason).toBe(
      'sulphides ≥ 1 % for 0 of 1 m in a row: no sulphides at 0–1',
    );
  });
});
