import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { warnAhead } from '../../../src/termination/advice/ahead.ts';
import { adviceOf, alarms, restsOn, shownAdvice } from '../../../src/termination/advice/verdict.ts';
import { evaluateRules } from '../../../src/termination/evaluate/evaluate-rule.ts';
import type { Situation } from '../../../src/termination/evaluate/situation.ts';
import type { Rule } from '../../../src/termination/rules/rule.ts';
import { BARREN, metresOf, row, rule, situation, times } from '../build.ts';

const TAIL = rule({ inARow: { where: BARREN, forM: 10 } }, { name: 'barren tail' });
const MINIMUM = rule({ minimumReached: { minimumM: 60 } }, { name: 'minimum', verdict: 'not yet' });
const MAXIMUM = rule({ maximumReached: { maximumM: 24 } }, { name: 'maximum', verdict: 'end' });
const ROD = rule({ rodFinished: {} }, { name: 'finish the rod', verdict: 'not yet' });

const advice = (rules: readonly Rule[], at: Situation) => adviceOf(evaluateRules(rules, at), at);
const ahead = (rules: readonly Rule[], at: Situation) =>
  warnAhead(evaluateRules(rules, at), at).map(({ words }) => words);

describe('the advice', () => {
  test('says why not yet: what cut off the rule that is nearest to ending the hole', () => {
    const at = situation(metresOf([0, 0, 2]), { drilledM: 12 });
    expect(advice([TAIL], at)).toMatchObject({
      heading: 'advice on ending the hole',
      verdict: 'not yet',
      sentence: 'NOT YET: barren tail: pyrite < 1 % for 0 of 10 m in a row to 3 m: pyrite 2 % at 2–3.',
    });
  });

  test('says the log it rests on and the metres drilled and not logged', () => {
    const found = advice([TAIL], situation(metresOf(times(4, 0)), { drilledM: 12 }));
    expect(restsOn(found)).toBe('on the log to 4 m; 8 m drilled and not logged');
    expect(restsOn(advice([TAIL], situation(metresOf([0]))))).toBe('on the log to 1 m');
    const cleared = situation(metresOf([0, 0, 'not logged', 0]), { loggedM: 2, drilledM: 4 });
    expect(restsOn(advice([TAIL], cleared))).toBe('on the log to 4 m; 1 m drilled and not logged');
  });

  test('names every rule that gave the verdict', () => {
    const at = situation(metresOf(times(24, 0)));
    expect(advice([MAXIMUM, { ...TAIL, verdict: 'end' }], at).sentence).toBe(
      'END: maximum: drilled 24 of 24 m maximum; barren tail: pyrite < 1 % for 24 m (10 needed) in a row.',
    );
  });

  test('says that it can’t tell where a rule that holds the hole open can’t be told', () => {
    const noPlan = rule({ plannedDepthReached: { plusM: 0 } }, { name: 'plan', verdict: 'not yet' });
    expect(advice([noPlan], situation(metresOf([0]))).sentence).toBe(
      'NOT YET: plan holds the hole until met: can’t tell, the hole has no plan.',
    );
  });

  test('says so where no rule could end the hole', () => {
    expect(advice([], situation(metresOf([0]))).sentence).toBe(
      'NOT YET: no rule ends this hole, drilled 1 m.',
    );
  });

  test('is hidden while the driller has stopped for safety or hole condition, and says by whom and why', () => {
    const at = situation(metresOf([0]), { openStop: { because: 'hose', by: 'the driller' } });
    expect(shownAdvice(evaluateRules([TAIL], at), at)).toEqual({
      shown: false,
      because: 'the driller has stopped: hose (recorded by the driller)',
    });
    const { openStop: _over, ...rest } = at;
    expect(shownAdvice(evaluateRules([TAIL], rest), rest).shown).toBe(true);
  });
});

describe('warned ahead, within the next rod, is', () => {
  test('a rule that comes to be met if what holds goes on', () => {
    expect(ahead([TAIL], situation(metresOf(times(6, 0))))).toEqual([
      'if pyrite < 1 % goes on: may end in 4 m, at 10 m (barren tail)',
    ]);
  });

  test('a rule that comes to be met once metres that are drilled are logged', () => {
    expect(ahead([TAIL], situation(metresOf(times(6, 0)), { drilledM: 12 }))).toEqual([
      'if pyrite < 1 % goes on: may end once the log is at 12 m (barren tail)',
    ]);
  });

  test('only once what asks is answered, and if a gap in the log is no different', () => {
    const VOID = rule(
      { voidNear: { inLastM: 12, aheadM: 6 } },
      { name: 'void', verdict: 'ask', safety: true },
    );
    const log = [...times(14, 0), 'not logged' as const, ...times(5, 0)];
    expect(ahead([{ ...TAIL, verdict: 'end' }, VOID], situation(metresOf(log)))).toEqual([
      'once void is answered, if pyrite < 1 % goes on and 14–15, not logged, is no different: end once the log is at 20 m (barren tail)',
    ]);
    expect(ahead([MAXIMUM, VOID], situation(metresOf(log)))).toEqual([
      'once void is answered: end in 4 m, at 24 m (maximum)',
    ]);
  });

  test('a depth, with no proviso', () => {
    expect(ahead([MAXIMUM], situation(metresOf(times(20, 0))))).toEqual(['end in 4 m, at 24 m (maximum)']);
  });

  test('nothing that is further than the next rod', () => {
    expect(ahead([TAIL], situation(metresOf([0])))).toEqual([]);
    expect(ahead([MAXIMUM], situation(metresOf(times(17, 0))))).toEqual([]);
  });

  test('nothing that a minimum holds back for longer', () => {
    expect(ahead([TAIL, MINIMUM], situation(metresOf(times(6, 0))))).toEqual([]);
  });

  test('a rule at the end of the rod that holds it back', () => {
    expect(ahead([TAIL, ROD], situation(metresOf(times(7, 0))))).toEqual([
      'if pyrite < 1 % goes on: may end in 5 m, at 12 m (barren tail)',
    ]);
  });

  test('nothing that says what the verdict says already, and no rule that is met', () => {
    expect(ahead([TAIL, { ...MAXIMUM, verdict: 'may end' }], situation(metresOf(times(20, 0))))).toEqual([]);
  });

  test('the soonest first', () => {
    const at = situation(metresOf(times(19, 0)));
    const sooner = rule({ maximumReached: { maximumM: 21 } }, { name: 'sooner', verdict: 'ask' });
    expect(ahead([MAXIMUM, sooner], at)).toEqual([
      'ask in 2 m, at 21 m (sooner)',
      'end in 5 m, at 24 m (maximum)',
    ]);
  });

  test('nothing that has not begun: a run of which the last metre is none, a contact not yet seen', () => {
    const short = rule({ inARow: { where: BARREN, forM: 4 } }, { name: 'short tail' });
    expect(ahead([short], situation(metresOf([0, 0, 5])))).toEqual([]);
    expect(ahead([short], situation(metresOf([0, 5, 0])))).toHaveLength(1);
    expect(ahead([rule({ pastContact: { into: BARREN, byM: 2 } })], situation(metresOf([5, 5])))).toEqual([]);
  });

  test('nothing that may turn at any metre: a hold, a shot, the pace, a void', () => {
    const at = situation(metresOf(times(6, 0)), { direction: [{ atMm: depthFromMetres(3), offPlanMm: 1 }] });
    const rules = [
      rule({ held: {} }, { verdict: 'ask' }),
      rule({ offPlan: { moreThanM: 5 } }, { verdict: 'ask' }),
      rule({ paceBelow: { metresPerHour: 5 } }, { verdict: 'ask' }),
      rule({ voidNear: { inLastM: 6, aheadM: 0 } }, { verdict: 'ask' }),
    ];
    expect(ahead(rules, at)).toEqual([]);
    expect(ahead([rule({ any: rules.map(({ when }) => when) })], at)).toEqual([]);
  });

  test('a void that the plan expects, before the rig is near it', () => {
    const expects = [{ name: 'stope', fromMm: depthFromMetres(20), hazard: 'void' as const }];
    const near = rule({ voidNear: { inLastM: 6, aheadM: 10 } }, { name: 'void', verdict: 'ask' });
    expect(ahead([near], situation(metresOf(times(6, 0)), { expects }))).toEqual([
      'ask in 4 m, at 10 m (void)',
    ]);
  });

  test('nothing of all that waits for something unforeseen', () => {
    const both = rule({ all: [{ maximumReached: { maximumM: 8 } }, { offPlan: { moreThanM: 5 } }] });
    expect(ahead([both], situation(metresOf(times(6, 0))))).toEqual([]);
  });

  test('counted in rods from the first rod’s offset', () => {
    const header = { logFromMm: depthFromMetres(0), intervalMm: 1000, rodMm: 6000, firstRodOffsetMm: -500 };
    const at = situation(metresOf(times(17, 0)), { header });
    expect(
      ahead([rule({ maximumReached: { maximumM: 17.5 } }, { name: 'limit', verdict: 'end' })], at),
    ).toEqual(['end in 0.5 m, at 17.5 m (limit)']);
  });
});

describe('a hole that is about to be ended', () => {
  const SHORT = rule(
    { shortOfPlan: { byMoreThanM: 30 } },
    { name: 'stopping short', verdict: 'ask', whenEnding: true, call: 'Ines Falk' },
  );
  const at = situation(metresOf(times(65, 5)), { plan: { depthMm: depthFromMetres(120) } });
  const rules = evaluateRules([SHORT, TAIL], at);

  test('far short of its plan asks, though no rule ends it', () => {
    expect(adviceOf(rules, at).verdict).toBe('not yet');
    expect(adviceOf(rules, at, true)).toMatchObject({
      verdict: 'ask',
      sentence: 'ASK: stopping short: 55 m short of the planned 120 m (30 m need no call): call Ines Falk.',
    });
  });

  test('is not asked about by a rule on stopping short while no one ends it: that is not an alarm', () => {
    expect(rules.map(alarms)).toEqual([false, false]);
  });
});

describe('a danger that is met', () => {
  const VOID = rule(
    { voidNear: { inLastM: 6, aheadM: 12 } },
    { name: 'void', verdict: 'ask', safety: true, call: 'the mine on channel 6' },
  );
  const expects = [
    { name: 'old stope', fromMm: depthFromMetres(104), toMm: depthFromMetres(108), hazard: 'void' as const },
  ];
  const at = situation([row(0, 96, 0)], { expects });

  test('says what, how far from the bit, whom to call and that the site procedure holds, before any other question', () => {
    const deep = rule({ maximumReached: { maximumM: 90 } }, { name: 'deep', verdict: 'ask' });
    expect(advice([deep, VOID], at).sentence).toBe(
      'ASK: void: old stope could come at 104 m, 8 m below the bit or less: call the mine on channel 6, go by the site procedure.',
    );
    expect(evaluateRules([VOID], at).map(alarms)).toEqual([true]);
  });
});
