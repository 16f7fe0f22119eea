import { describe, expect, test } from 'vitest';
import { checkMastDip } from '../../../src/survey/checks/mast-dip.ts';
import {
  assessLineUp,
  formatAzimuthCompared,
  formatDipCompared,
  missAtDepthM,
} from '../../../src/survey/collar/line-up.ts';
import { surveySettingsOf } from '../../../src/survey/settings.ts';
import { AT, pointing } from '../build.ts';

const SETTINGS = surveySettingsOf({ azimuthToleranceDeg: 1, dipToleranceDeg: 0.5 });

describe('the miss at depth', () => {
  test('of one degree at 200 m is 3.5 m', () => {
    expect(missAtDepthM(200, 1)).toBeCloseTo(3.49, 2);
  });

  test('of one degree of azimuth alone at -60° is half that', () => {
    const answer = assessLineUp(pointing(90, -60), pointing(91, -60), 200, SETTINGS);
    expect(answer.missM).toBeCloseTo(3.49 / 2, 2);
    expect(answer.azimuth.differenceDeg).toBe(1);
  });
});

describe('a line-up', () => {
  test('inside both tolerances is accepted and asks nothing of the driller', () => {
    const answer = assessLineUp(pointing(90, -60), pointing(91, -59.5), 150, SETTINGS);
    expect(answer).toMatchObject({ accepted: true, request: undefined });
  });

  test('outside gives the correction to request, which way and how much', () => {
    const right = assessLineUp(pointing(359, -60), pointing(2.4, -60.8), 150, SETTINGS);
    expect(right.accepted).toBe(false);
    expect(right.request).toBe(
      'Ask the driller to bring the rig round 3.4° left, seen along the hole and bring the mast 0.8° flatter, to reach 359.0° grid and -60.0°.',
    );
    const left = assessLineUp(pointing(90, -60), pointing(88, -60), 150, SETTINGS);
    expect(left.request).toBe(
      'Ask the driller to bring the rig round 2.0° right, seen along the hole, to reach 090.0° grid and -60.0°.',
    );
    const flat = assessLineUp(pointing(90, -60), pointing(90, -59), 150, SETTINGS);
    expect(flat.request).toContain('bring the mast 1.0° steeper');
  });

  test('of a steep hole is judged by its direction in space: azimuth says little there', () => {
    const turned = assessLineUp(pointing(90, -89), pointing(110, -89), 150, SETTINGS);
    expect(turned).toMatchObject({ steep: true, accepted: true });
    expect(turned.azimuth.inside).toBe(false);
    const leaning = assessLineUp(pointing(90, -89), pointing(90, -88), 150, SETTINGS);
    expect(leaning).toMatchObject({ accepted: false });
  });

  test('is only compared in one north', () => {
    expect(() => assessLineUp(pointing(90, -60), pointing(90, -60, 'true'), 150, SETTINGS)).toThrow(
      'azimuths of grid and true north compared',
    );
  });

  test('is shown as planned, measured, difference and inside or not', () => {
    const answer = assessLineUp(pointing(90, -60), pointing(91.4, -59.8), 150, SETTINGS);
    expect(formatAzimuthCompared(answer.azimuth, pointing(90, -60).azimuth)).toBe(
      'planned 090.0° grid, measured 091.4° grid: 1.4° to the right, OUTSIDE 1.0°',
    );
    expect(formatDipCompared(answer.dip)).toBe('planned -60.0°, measured -59.8°: 0.2° flatter, inside 0.5°');
  });
});

describe('the dip of the mast', () => {
  const problems = (crew: number | undefined, own: number | undefined) =>
    checkMastDip(crew, own, 0.5, AT).map((one) => one.problem);

  test('read twice and alike raises nothing', () => {
    expect(problems(-60, -60.5)).toEqual([]);
  });

  test('read twice and unlike, or read once, is a finding', () => {
    expect(problems(-60, -61)).toEqual(['crew and clinometer differ by 1.0°']);
    expect(problems(-60, undefined)).toEqual(['the dip of the mast was read once only']);
  });
});
