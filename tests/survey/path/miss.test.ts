import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import {
  closestApproach,
  distanceFromPlan,
  missAtTarget,
  type PlannedLine,
  plannedPoint,
  reachOf,
} from '../../../src/survey/path/miss.ts';
import { pointAt } from '../../../src/survey/path/projection.ts';
import { reachWords } from '../../../src/survey/path/target-words.ts';
import { length, minus, ORIGIN } from '../../../src/survey/path/vector.ts';
import { pathOf, pointing } from '../build.ts';

const at = depthFromMetres;
const planTo = (azimuthDeg: number, dipDeg: number, targetM: number): PlannedLine => ({
  direction: pointing(azimuthDeg, dipDeg),
  targetMm: at(targetM),
  from: ORIGIN,
});

describe('distance from plan', () => {
  test('of a hole on its plan is nothing, wherever it is measured', () => {
    const path = pathOf([0, 90, -60], [60, 90, -60]);
    expect(distanceFromPlan(planTo(90, -60, 100), pointAt(path, at(47)))).toBeCloseTo(0, 9);
  });

  test('is square to the plan: drilling further adds nothing to it', () => {
    const plan = planTo(0, 0, 100);
    const offset = { north: 80, east: 3, down: 4 };
    expect(distanceFromPlan(plan, { offset })).toBeCloseTo(5, 9);
    expect(distanceFromPlan(plan, { offset: { ...offset, north: 150 } })).toBeCloseTo(5, 9);
  });

  test('counts a collar that is off its peg', () => {
    const plan = { ...planTo(90, -60, 100), from: { north: 3, east: 0, down: 0 } };
    expect(distanceFromPlan(plan, pointAt(pathOf([0, 90, -60]), at(50)))).toBeCloseTo(3, 9);
  });
});

describe('the miss at the target', () => {
  test('is split along the section, across it to the right, and below', () => {
    const plan = planTo(90, -60, 100);
    const flatter = missAtTarget(pathOf([0, 90, -59]), plan, 'straight');
    expect(flatter.alongM).toBeGreaterThan(0);
    expect(flatter.belowM).toBeLessThan(0);
    expect(flatter.acrossM).toBeCloseTo(0, 9);
    const right = missAtTarget(pathOf([0, 92, -60]), plan, 'straight');
    expect(right.acrossM).toBeCloseTo(50 * Math.sin((2 * Math.PI) / 180), 9);
    expect(right.totalM).toBeCloseTo(100 * Math.cos(Math.PI / 3) * 2 * Math.sin(Math.PI / 180), 9);
  });

  test('of the two projections differs by the bend', () => {
    const path = pathOf([0, 90, -60], [30, 90, -59], [60, 90, -58]);
    const plan = planTo(90, -60, 120);
    expect(missAtTarget(path, plan, 'trend').totalM).toBeGreaterThan(
      missAtTarget(path, plan, 'straight').totalM,
    );
  });
});

describe('the closest approach', () => {
  test('is where the hole passes the target, and says when that is projected', () => {
    const plan = planTo(0, -90, 50);
    const past = closestApproach(pathOf([0, 0, -90], [100, 0, -90]), plan, 'straight');
    expect(past).toMatchObject({ depthMm: 50_000, projected: false });
    expect(past.distanceM).toBeCloseTo(0, 9);
    const ahead = closestApproach(pathOf([0, 0, -90], [30, 0, -90]), plan, 'straight');
    expect(ahead).toMatchObject({ depthMm: 50_000, projected: true });
  });

  test('is nowhere beaten by any metre of the path', () => {
    const turn = fc.double({ min: -6, max: 6, noNaN: true });
    fc.assert(
      fc.property(turn, turn, turn, turn, fc.constantFrom('straight', 'trend'), (a, b, c, d, projection) => {
        const path = pathOf([0, 90, -60], [30, 90 + a, -60 + b], [60, 90 + a + c, -60 + b + d]);
        const plan = planTo(92, -61, 80);
        const target = plannedPoint(plan, plan.targetMm);
        const found = closestApproach(path, plan, projection);
        for (let depth = 0; depth <= 120; depth++) {
          const away = length(minus(pointAt(path, at(depth), projection).offset, target));
          expect(away).toBeGreaterThanOrEqual(found.distanceM - 1e-9);
        }
        const there = pointAt(path, found.depthMm, projection).offset;
        expect(length(minus(there, target))).toBeCloseTo(found.distanceM, 3);
      }),
      { numRuns: 50 },
    );
  });
});

describe('the reach', () => {
  test('of a hole on its plan asks for no bend', () => {
    const reach = reachOf(pathOf([0, 90, -60], [60, 90, -60]), planTo(90, -60, 120), 3, 5);
    expect(reach.severityPer30m).toBe(0);
    expect(reach.within).toBe(true);
    expect(reach.lengthM).toBeCloseTo(60, 9);
  });

  test('to a point asks for the bend of the arc through it', () => {
    // From vertical, an arc of radius 100 m through a quarter of a right angle ends here.
    const angle = Math.PI / 8;
    const reach = reachOf(
      pathOf([0, 0, -90]),
      {
        direction: pointing(0, -90),
        targetMm: at(0),
        from: { north: 100 * (1 - Math.cos(angle)), east: 0, down: 100 * Math.sin(angle) },
      },
      30,
      0,
    );
    expect(reach.severityPer30m).toBeCloseTo((30 / 100) * (180 / Math.PI), 9);
    expect(reach.lengthM).toBeCloseTo(100 * angle, 9);
  });

  test('within a radius asks for less, and inside it for nothing', () => {
    const path = pathOf([0, 90, -60], [60, 96, -54]);
    const plan = planTo(90, -60, 120);
    const exact = reachOf(path, plan, 3, 0).severityPer30m;
    const near = reachOf(path, plan, 3, 3).severityPer30m;
    expect(near).toBeLessThan(exact);
    expect(reachOf(path, plan, 3, 200)).toEqual({ severityPer30m: 0, within: true, lengthM: 0 });
  });

  test('says no when the bend is over the limit or the target lies behind', () => {
    const path = pathOf([0, 90, -60], [60, 96, -54]);
    expect(reachOf(path, planTo(90, -60, 80), 3, 0).within).toBe(false);
    expect(reachOf(path, planTo(90, -60, 20), 3, 0)).toEqual({
      severityPer30m: Number.POSITIVE_INFINITY,
      within: false,
      lengthM: undefined,
      passedM: expect.closeTo(closestApproach(path, planTo(90, -60, 20), 'straight').distanceM, 9),
    });
  });

  test('is not known by shots that are marked as wrong', () => {
    const reach = reachOf(pathOf([0, 90, -60], [120, 90, -50]), planTo(90, -60, 80), 3, 1);
    expect(reachWords(reach, 3, 1, 'shots marked as wrong')).toBe(
      'Whether the target can be reached is not known: settle the shots marked as wrong first.',
    );
  });

  test('of a target that was passed is how near: within the radius it was met, beyond it it can not be reached', () => {
    const path = pathOf([0, 90, -60], [120, 91.2, -60]);
    const met = reachOf(path, planTo(90, -60, 80), 3, 5);
    expect(met.within).toBe(true);
    expect(reachWords(met, 3, 5, 'shots')).toMatch(/^Target passed at 0\.[1-4] m, within 5 m of it\.$/);
    const missed = reachOf(pathOf([0, 90, -60], [120, 90, -50]), planTo(90, -60, 80), 3, 1);
    expect(missed.within).toBe(false);
    expect(reachWords(missed, 3, 1, 'shots')).toMatch(
      /^Target passed at \d\.\d m, and the hole is past it: it can’t be reached\.$/,
    );
  });
});
