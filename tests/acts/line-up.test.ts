import { beforeAll, describe, expect, it } from 'vitest';
import {
  type LineUpTaken,
  lineUpStanding,
  type PlannedHere,
  plannedHere,
  recordLineUpTaken,
} from '../../src/acts/line-up.ts';
import type { Maker } from '../../src/hole/commands/made.ts';
import { lineUp as lineUpShape } from '../../src/hole/direction.ts';
import type { Project } from '../../src/project/project.ts';
import { azimuth } from '../../src/quantity/azimuth.ts';
import { dip } from '../../src/quantity/dip.ts';
import type { Stamp } from '../../src/quantity/stamp.ts';
import type { Document } from '../../src/record/document.ts';
import { sampleFiles, sitDown } from '../console/support/sitting.ts';

const AT = '2026-03-14T09:00:00+08:00' as Stamp;
let count = 0;
const MAKER: Maker = { newId: () => `t-${count++}`, at: AT, by: 'NOK' };

let project: Project;
let hole: Document;
let here: PlannedHere;
beforeAll(async () => {
  const sitting = await sitDown(sampleFiles());
  project = sitting.state().project;
  hole = sitting.hole('MBRC004');
  const planned = plannedHere(project, hole, AT);
  if (planned === undefined) throw new Error('the sample hole has a plan');
  here = planned;
});

const byPegs = (deg: number, dipDeg: number): LineUpTaken => ({
  way: 'sight pegs',
  azimuth: azimuth(deg, 'grid'),
  compass: [],
  crewDip: dip(dipDeg),
  clinometerDip: dip(dipDeg),
});

const standing = (taken: LineUpTaken, of: Project = project) => lineUpStanding(of, hole, taken, here);
const codes = (taken: LineUpTaken, of: Project = project) =>
  standing(taken, of).findings.map((each) => each.code);

/** Compass readings that come to the plan, taken at these distances. */
const compassAt = (...distances: readonly number[]): LineUpTaken => ({
  way: 'compass',
  compass: distances.map((distanceM) => ({ deg: here.magnetic?.deg ?? 0, distanceM, sightedBack: false })),
  crewDip: dip(-60),
  clinometerDip: dip(-60),
});

describe('the planned direction at the rig', () => {
  it('is undefined for a hole without a plan', () => {
    expect(plannedHere(project, { ...hole, tables: { ...hole.tables, plan: {} } }, AT)).toBeUndefined();
  });

  it('gives what a compass should read: the plan less declination plus convergence', () => {
    const { declinationDeg = 0, convergenceDeg = 0 } = here.angles;
    expect(here.magnetic?.deg).toBeCloseTo(here.planned.azimuth.deg + convergenceDeg - declinationDeg, 9);
  });
});

describe('a line-up as read', () => {
  it('is inside its tolerance where azimuth and dip are, and asks nothing of the driller', () => {
    const { answer, findings } = standing(byPegs(here.planned.azimuth.deg + 0.9, here.planned.dip - 0.4));
    expect(answer).toMatchObject({ accepted: true, request: undefined });
    expect(findings).toEqual([]);
  });

  it('outside it says which way and how much to request', () => {
    const { answer } = standing(byPegs(here.planned.azimuth.deg + 1.6, here.planned.dip));
    expect(answer?.accepted).toBe(false);
    expect(answer?.request).toContain('1.6° left');
  });

  it('takes the clinometer before the gauge of the crew, and says where they differ', () => {
    const taken = { ...byPegs(here.planned.azimuth.deg, -60), crewDip: dip(-61) };
    expect(standing(taken).measured?.dip).toBe(-60);
    expect(codes(taken)).toContain('survey-mast-dip');
  });

  it('has no answer while its azimuth or its dip is missing', () => {
    expect(standing({ way: 'sight pegs', compass: [], crewDip: dip(-60) }).answer).toBeUndefined();
    expect(
      standing({ way: 'sight pegs', compass: [], azimuth: azimuth(270, 'grid') }).answer,
    ).toBeUndefined();
  });

  it('turns what the alignment device reads from true north into the north of the plan', () => {
    const { convergenceDeg = 0 } = here.angles;
    const taken = {
      ...byPegs(0, here.planned.dip),
      way: 'alignment device',
      azimuth: azimuth(here.planned.azimuth.deg + convergenceDeg, 'true'),
    } as const;
    expect(standing(taken).answer?.azimuth.differenceDeg).toBeCloseTo(0, 9);
  });

  it('says of an azimuth whose north is not known here that it can not be compared', () => {
    const taken = { ...byPegs(0, -60), azimuth: azimuth(270, 'mine-grid') };
    expect(standing(taken).answer).toBeUndefined();
    expect(codes(taken)).toContain('survey-north-not-known');
  });
});

describe('a compass', () => {
  it('alone stands when it was read at two distances that agree', () => {
    expect(standing(compassAt(20, 30)).answer?.accepted).toBe(true);
  });

  it('alone gives no azimuth from one distance, and none in magnetic ground', () => {
    expect(standing(compassAt(20)).answer).toBeUndefined();
    const magnetic = { ...project, survey: { ...project.survey, magneticGround: true } };
    expect(standing(compassAt(20, 30), magnetic).answer).toBeUndefined();
    expect(codes(compassAt(20, 30), magnetic)).toContain('survey-compass-magnetic-ground');
  });

  it('beside pegs is a check and sets nothing, in magnetic ground too', () => {
    const magnetic = { ...project, survey: { ...project.survey, magneticGround: true } };
    const taken = { ...compassAt(20, 30), ...byPegs(here.planned.azimuth.deg + 0.5, here.planned.dip) };
    const both = { ...taken, compass: compassAt(20, 30).compass };
    const found = standing(both, magnetic);
    expect(found.set).toEqual(azimuth(here.planned.azimuth.deg + 0.5, 'grid'));
    expect(found.compassAzimuth?.deg).toBeCloseTo(here.planned.azimuth.deg, 6);
    expect(found.answer?.accepted).toBe(true);
  });
});

describe('a line-up recorded', () => {
  const recorded = (taken: LineUpTaken, decision: Parameters<typeof recordLineUpTaken>[4]) => {
    const { changes, what } = recordLineUpTaken(project, hole, taken, standing(taken), decision, MAKER);
    const things = changes.flatMap((change) =>
      'put' in change ? [[change.put[0], change.thing] as const] : [],
    );
    return { what, things };
  };

  it('holds who read the cautions, who gave permission, every reading and the miss, as its file allows', () => {
    const taken: LineUpTaken = {
      ...byPegs(here.planned.azimuth.deg, here.planned.dip),
      compass: [{ deg: 91, distanceM: 20.5, sightedBack: true }],
      cautionsReadBy: 'NOK, 09:00',
      permissionBy: 'Mick Tarrant',
    };
    const [, thing] = recorded(taken, { accepted: true }).things[0] ?? [];
    expect(lineUpShape.parse(thing)).toEqual({
      azimuthDeg: here.planned.azimuth.deg,
      azimuthNorth: 'grid',
      dipDeg: here.planned.dip,
      way: 'sight pegs',
      accepted: true,
      readings: [
        { kind: 'compass', deg: 91, distanceMm: 20_500, sightedBack: true },
        { kind: 'crew', deg: here.planned.dip },
        { kind: 'clinometer', deg: here.planned.dip },
      ],
      missMm: 0,
      cautionsReadBy: 'NOK, 09:00',
      permissionBy: 'Mick Tarrant',
      at: AT,
      by: 'NOK',
    });
  });

  it('refused holds the request; accepted all the same, the reason', () => {
    const off = byPegs(here.planned.azimuth.deg + 3, here.planned.dip);
    expect(recorded(off, { accepted: false }).things[0]?.[1]).toMatchObject({
      accepted: false,
      correction: expect.stringContaining('Ask the driller'),
    });
    const [, thing] = recorded(off, { accepted: true, because: 'pad too narrow' }).things[0] ?? [];
    expect(thing).toMatchObject({ accepted: true, because: 'pad too narrow' });
    expect(thing).not.toHaveProperty('correction');
  });

  it('keeps an azimuth as it was read, from the north it was read from', () => {
    const taken: LineUpTaken = {
      ...byPegs(0, here.planned.dip),
      way: 'alignment device',
      azimuth: azimuth(270.4, 'true'),
    };
    expect(recorded(taken, { accepted: true }).things[0]?.[1]).toMatchObject({
      azimuthDeg: 270.4,
      azimuthNorth: 'true',
    });
  });

  it('accepted takes the collar position with it, beside the planned one; refused does not', () => {
    const taken: LineUpTaken = {
      ...byPegs(here.planned.azimuth.deg, here.planned.dip),
      collar: { eastM: 412_500.25, northM: 6_002_240, heightM: undefined, source: 'typed at the rig' },
    };
    const { things, what } = recorded(taken, { accepted: true });
    expect(things.map(([table]) => table)).toEqual(['lineUps', 'collars']);
    expect(things[1]?.[1]).toMatchObject({ rank: 'handheld', eastingMm: 412_500_250 });
    expect(what).toContain('collar position (handheld)');
    expect(recorded(taken, { accepted: false }).things.map(([table]) => table)).toEqual(['lineUps']);
  });
});
