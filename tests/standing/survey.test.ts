import { beforeAll, describe, expect, it } from 'vitest';
import type { Project } from '../../src/project/project.ts';
import type { Document, Table } from '../../src/record/document.ts';
import { situationOf } from '../../src/standing/advice.ts';
import {
  directionKnown,
  expectedOf,
  hazardsOf,
  surveyChecksOf,
  surveyOf,
  targetOf,
} from '../../src/standing/survey.ts';
import { basisWords, chanceWords, leftOutWords } from '../../src/survey/path/target-words.ts';
import { directionWanted } from '../../src/termination/evaluate/known.ts';
import { sampleFiles, sitDown } from '../console/support/sitting.ts';

let project: Project;
let drilling: Document;
beforeAll(async () => {
  const sitting = await sitDown(sampleFiles());
  project = sitting.state().project;
  drilling = sitting.hole('MBRC003');
});

const withTables = (tables: Readonly<Record<string, Table>>): Document => ({
  ...drilling,
  tables: { ...drilling.tables, ...tables },
});

const withPlan = (more: Readonly<Record<string, unknown>>): Document =>
  withTables({ plan: { plan: { ...drilling.tables.plan?.plan, ...more } } as unknown as Table });

describe('the survey of a hole', () => {
  it('is its line-up and its shots, in the grid of the project', () => {
    const survey = surveyOf(project, drilling);
    expect(survey.north).toBe('grid');
    expect(survey.stations.map((one) => [one.depthMm, one.basis])).toEqual([
      [0, 'set'],
      [12_000, 'measured'],
      [42_000, 'measured'],
    ]);
    expect(surveyChecksOf(project, drilling, []).findings).toEqual([]);
  });

  it('says of a grid that can not be read that it can not, and goes on without it', () => {
    const broken: Project = {
      ...project,
      settings: { ...project.settings, survey: { grid: { epsg: 1 } } },
    };
    const survey = surveyOf(broken, drilling);
    expect(survey.site.grid).toBeUndefined();
    const { findings } = surveyChecksOf(broken, drilling, []);
    expect(findings.map((each) => each.code)).toContain('survey-grid-unreadable');
  });
});

describe('the target', () => {
  it('has no standing without a plan, or without any direction', () => {
    expect(targetOf(project, withTables({ plan: {} }))).toBeUndefined();
    expect(targetOf(project, withTables({ lineUps: {}, runs: {}, shots: {} }))).toBeUndefined();
  });

  it('is missed by both ways of carrying the hole on, and the nearest point is not a further than the miss', () => {
    const target = targetOf(project, drilling);
    expect(target?.ways.map((way) => way.projection)).toEqual(['straight', 'trend']);
    for (const way of target?.ways ?? []) {
      expect(way.nearest.distanceM).toBeLessThanOrEqual(way.miss.totalM + 1e-9);
      expect(way.chance).toBeGreaterThan(0.9);
    }
    expect(target).toMatchObject({ targetMm: 74_000, measuredMm: 42_000, reach: { within: true } });
  });
});

describe('what the rules are told of the direction', () => {
  it('is an entry for each depth of the rig at which a shot became known, the shallowest first', () => {
    const known = directionKnown(project, drilling);
    expect(known.map((each) => each.atMm)).toEqual([12_000, 42_000]);
    expect(known.every((each) => each.targetReachable === 'yes')).toBe(true);
    expect(situationOf(project, drilling).direction).toEqual(known);
  });

  it('knows nothing before the first shot, and nothing without a plan', () => {
    expect(directionKnown(project, withTables({ shots: {} }))).toEqual([]);
    expect(directionKnown(project, withTables({ plan: {} }))).toEqual([]);
  });

  it('has no miss where the plan has no depth of a target, and the rules say so', () => {
    const { targetMm: _targetMm, ...rest } = (drilling.tables.plan?.plan ?? {}) as Readonly<
      Record<string, unknown>
    >;
    const aimless = withTables({ plan: { plan: rest } as unknown as Table });
    const known = directionKnown(project, aimless);
    expect(known).toMatchObject([{ noTarget: true }, { noTarget: true }]);
    for (const one of known) {
      expect(one).not.toHaveProperty('projectedMissMm');
      expect(one).not.toHaveProperty('targetReachable');
      expect(one.offPlanMm).toBeDefined();
    }
    expect(directionWanted(known)).toBe(
      'the plan has no depth of a target to compare with: call whoever made it',
    );
  });

  it('is nothing by shots that are marked as wrong: they are left out, and the chance rests on the line-up', () => {
    const fromVertical = Object.fromEntries(
      Object.entries(drilling.tables.shots ?? {}).map(([id, shot]) => [id, { ...shot, dipDeg: 30.1 }]),
    );
    const wrong = withTables({ shots: fromVertical });
    expect(directionKnown(project, wrong)).toEqual([]);
    expect(targetOf(project, wrong)).toMatchObject({
      chanceBasis: 'line-up',
      measuredMm: 0,
      leftOut: [{ depthMm: 12_000 }, { depthMm: 42_000 }],
    });
  });

  it('goes past a shot at a depth with swapped digits: path, miss and chance are those of the others, and say so', () => {
    const [shot] = Object.values(drilling.tables.shots ?? {});
    const shots = (third: Table): Document =>
      withTables({
        rods: { r1: { at: '2026-03-14T09:00:00+08:00', rod: 20, depthMm: 120_000 } },
        shots: {
          b0: { ...shot, depthMm: 12_000, dipDeg: -60 },
          b1: { ...shot, depthMm: 42_000, dipDeg: -60 },
          ...third,
          b3: { ...shot, depthMm: 102_000, dipDeg: -59.8 },
        },
      });
    const slipped = targetOf(project, shots({ b2: { ...shot, depthMm: 27_000, dipDeg: -52 } }));
    expect(slipped?.leftOut).toMatchObject([{ depthMm: 27_000 }]);
    expect(slipped?.ways).toEqual(targetOf(project, shots({}))?.ways);
    expect(leftOutWords(slipped?.leftOut ?? [])).toContain('marked as wrong: the shot at 27 m');
  });

  describe('the chance', () => {
    const [run, shot] = [
      () => Object.values(drilling.tables.runs ?? {})[0],
      () => Object.values(drilling.tables.shots ?? {})[0],
    ];
    const chanceOf = (tables: Readonly<Record<string, Table>>) => {
      const target = targetOf(project, withTables(tables));
      const [straight] = target?.ways ?? [];
      return {
        basis: target?.chanceBasis,
        words: chanceWords(straight?.chance, target?.chanceBasis ?? 'shots'),
      };
    };
    /** A second run of the same shots by another tool. */
    const second = (said: object) => ({
      runs: { ...drilling.tables.runs, r9: { ...run(), tool: 'gyro 9', rank: 1, ...said } },
      shots: {
        ...drilling.tables.shots,
        ...Object.fromEntries(
          Object.values(drilling.tables.shots ?? {}).map((each, index) => [
            `s9${index}`,
            { ...each, run: 'r9' },
          ]),
        ),
      },
    });

    it('is not known without an accepted line-up, and says what to do', () => {
      expect(chanceOf({})).toEqual({ basis: 'shots', words: 'over 99 %' });
      expect(chanceOf({ lineUps: {} })).toEqual({ basis: 'no line-up', words: 'not known' });
      expect(basisWords('no line-up')).toContain('record the line-up (;line-up)');
      const refused = Object.fromEntries(
        Object.entries(drilling.tables.lineUps ?? {}).map(([id, each]) => [id, { ...each, accepted: false }]),
      );
      expect(chanceOf({ lineUps: refused }).words).toBe('not known');
    });

    it('is known without one where a second tool that finds north agrees, and not by a gyro that was aligned', () => {
      expect(chanceOf({ lineUps: {}, ...second({}) }).basis).toBe('shots');
      expect(chanceOf({ lineUps: {}, ...second({ toolClass: 'gyro aligned at the collar' }) }).basis).toBe(
        'no line-up',
      );
    });

    it('is never over 99 % with azimuths of steel in doubt: the line-up alone is left', () => {
      const runs = Object.fromEntries(
        Object.entries(drilling.tables.runs ?? {}).map(([id, each]) => [
          id,
          { ...each, toolClass: 'magnetic', north: 'magnetic', inside: 'rods', tool: 'tool 5' },
        ]),
      );
      expect(chanceOf({ runs })).toEqual({ basis: 'line-up and dips', words: 'at most 99 %' });
      expect(targetOf(project, withTables({ runs }))?.leftOut.map(({ part }) => part)).toEqual([
        'azimuth',
        'azimuth',
      ]);
    });

    it('is never over 99 % with a field in doubt, and has no part of that azimuth', () => {
      const runs = Object.fromEntries(
        Object.entries(drilling.tables.runs ?? {}).map(([id, each]) => [
          id,
          { ...each, toolClass: 'magnetic', north: 'magnetic', inside: 'open hole', tool: 'tool 5' },
        ]),
      );
      const field = (fieldNt: number): Document =>
        withTables({
          runs,
          shots: {
            b0: { ...shot(), depthMm: 12_000, azimuthDeg: 269.8, fieldNt: 60_639 },
            b1: { ...shot(), depthMm: 42_000, azimuthDeg: 270.1, fieldNt },
          },
        });
      const off = targetOf(project, field(70_000));
      expect(off?.leftOut).toMatchObject([{ depthMm: 42_000, part: 'azimuth' }]);
      expect(off?.chanceBasis).toBe('shots that are left');
      expect(targetOf(project, field(60_639))?.chanceBasis).toBe('shots');
    });

    it('is never over 99 % with one shot left out', () => {
      const shots = {
        b0: { ...shot(), depthMm: 12_000 },
        b1: { ...shot(), depthMm: 32_000, azimuthDeg: 207.9 },
        b2: { ...shot(), depthMm: 52_000 },
      };
      expect(chanceOf({ shots })).toEqual({ basis: 'shots that are left', words: 'at most 99 %' });
    });
  });

  it('knows the shots of a run made at the end only from where the rig was then', () => {
    const late = Object.fromEntries(
      Object.entries(drilling.tables.shots ?? {}).map(([id, shot]) => [
        id,
        { ...shot, at: '2026-03-14T23:00:00+08:00' },
      ]),
    );
    expect(directionKnown(project, withTables({ shots: late })).map((each) => each.atMm)).toEqual([54_000]);
  });
});

describe('hazard zones', () => {
  const fibre = (fromM: number) =>
    withPlan({
      expects: [{ name: 'seam', fromMm: fromM * 1000, toMm: (fromM + 4) * 1000, hazard: 'fibre' }],
    });

  it('are warned of from the stand-off of the site on, counted from the drilled head', () => {
    expect(project.settings.hazards.standOffM).toBe(10);
    expect(hazardsOf(project, fibre(80), [])).toEqual([]);
    expect(hazardsOf(project, fibre(62), [])).toMatchObject([{ name: 'seam', hazard: 'fibre' }]);
    expect(hazardsOf(project, fibre(62), [])[0]?.text).toContain('No warning is no clearance');
  });

  it('count from their planned depth where no direction is known at all', () => {
    const blind: Document = {
      ...fibre(60),
      tables: { ...fibre(60).tables, lineUps: {}, runs: {}, shots: {} },
    };
    expect(expectedOf(project, blind)).toMatchObject([{ top: undefined }]);
    expect(hazardsOf(project, blind, [])).toMatchObject([{ earliestMm: 60_000 }]);
  });

  it('reach the termination rules from the earliest depth they could come at to the latest', () => {
    const steep = withTables({
      ...withPlan({
        expects: [
          { name: 'stope', fromMm: 80_000, toMm: 84_000, hazard: 'void' },
          { name: 'lode', fromMm: 70_000 },
        ],
      }).tables,
      shots: Object.fromEntries(
        Object.entries(drilling.tables.shots ?? {}).map(([id, shot]) => [id, { ...shot, dipDeg: -66 }]),
      ),
    });
    const [stope] = expectedOf(project, steep);
    const [lode, hazard] = [...situationOf(project, steep).expects].sort((a, b) => a.fromMm - b.fromMm);
    expect(stope?.top?.earliestMm).toBeLessThan(80_000);
    // Given to 0.1 m, away from the hazard.
    expect(hazard?.fromMm).toBe(Math.floor(Number(stope?.top?.earliestMm) / 100) * 100);
    expect(hazard?.toMm).toBe(Math.ceil(Math.max(84_000, stope?.foot?.latestMm ?? 0) / 100) * 100);
    expect(lode).toMatchObject({ name: 'lode', fromMm: 70_000 });
  });

  it('are none where the plan expects none', () => {
    const unsaid = withPlan({ expects: [] });
    expect(expectedOf(project, unsaid)).toEqual([]);
    expect(hazardsOf(project, unsaid, [])).toEqual([]);
  });
});
