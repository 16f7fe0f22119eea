import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { lineUp } from '../../src/commands/line-up.ts';
import type { ReadingsAsked } from '../../src/commands/line-up-readings.ts';
import { type LineUpTakeAsked, lineUpTake } from '../../src/commands/line-up-take.ts';
import { tables } from '../../src/commands/tables.ts';
import { nmeaChecksum } from '../../src/survey/collar/nmea.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from './support/outside.ts';

const HOLE = 'MBRC004';
/** By pegs and clinometer as planned, everything said. */
const SOUND: ReadingsAsked = {
  cautions: 'NOK',
  permission: 'Mick Tarrant',
  way: 'pegs',
  azimuth: '270.3',
  compass: [],
  crewDip: '-60',
  clinometer: '-60.1',
};

async function take(
  readings: Partial<ReadingsAsked>,
  more: Partial<LineUpTakeAsked> = {},
  folder = copyOfSample(),
) {
  const heard = hear();
  const asked = { folder, hole: HOLE, json: false, record: false, readings: { ...SOUND, ...readings } };
  const code = await lineUpTake(heard.outside, { ...asked, ...more });
  const { tables } = JSON.parse(readFileSync(join(folder, `holes/${HOLE}.json`), 'utf8'));
  const all = (table: object | undefined) => Object.values(table ?? {}) as readonly object[];
  return {
    code,
    out: heard.out(),
    err: heard.err(),
    lineUps: all(tables.lineUps),
    collars: all(tables.collars),
  };
}

/** A project whose survey settings have more in them. */
function withSurvey(more: string): string {
  const folder = copyOfSample();
  const file = join(folder, 'project.json');
  writeFileSync(file, readFileSync(file, 'utf8').replace('"survey": {', `"survey": { ${more},`));
  return folder;
}

function gps(...sentences: readonly string[]): string {
  const file = join(freshFolder(), 'gps.txt');
  writeFileSync(file, sentences.join('\r\n'));
  return file;
}

const summed = (body: string) => `$${body}*${nmeaChecksum(body)}`;
const FIX = summed('GPGGA,010203,3607.27491,S,12201.61073,E,1,09,0.9,431.5,M,,M,,');

describe('a line-up by command', () => {
  it('is compared with the plan and not recorded unless that is asked', async () => {
    const { code, out, lineUps } = await take({});
    expect([code, lineUps]).toEqual([0, []]);
    expect(out).toContain(
      'Azimuth: planned 270.0° grid, measured 270.3° grid: 0.3° to the right, inside 1.0°.',
    );
    expect(out).toMatch(/0\.\d\d° apart in space: 0\.\d m off at the target, 80 m down\./);
    expect(out).toContain('Inside tolerance.');
  });

  it.each([
    [{ permission: 'NOK' }, '--permission', 'NOK is you: it takes someone else'],
    [{ permission: 'Ines Falk' }, '--permission', 'Ines Falk is at camp, not the driller'],
    [{ cautions: 'x' }, '--cautions', '“x” names no one'],
  ])('is refused where no one who can has spoken: %o', async (readings, option, problem) => {
    const { code, err, lineUps } = await take(readings, { record: true });
    expect([code, lineUps]).toEqual([2, []]);
    expect(err).toContain(option);
    expect(err).toContain(problem);
  });

  it('inside tolerance is accepted and recorded with who read the cautions and who gave permission', async () => {
    const { code, lineUps } = await take({}, { record: true });
    expect(code).toBe(0);
    expect(lineUps).toMatchObject([
      {
        accepted: true,
        way: 'sight pegs',
        azimuthDeg: 270.3,
        azimuthNorth: 'grid',
        dipDeg: -60.1,
        permissionBy: 'Mick Tarrant',
        cautionsReadBy: expect.stringMatching(/^NOK, /),
      },
    ]);
  });

  it('outside is refused and recorded with the correction to request: which way and how much', async () => {
    const { code, out, lineUps } = await take(
      { azimuth: '268.2', crewDip: '-61.2', clinometer: '-61.3' },
      { record: true },
    );
    expect(code).toBe(1);
    expect(out).toContain(
      'Ask the driller to bring the rig round 1.8° right, seen along the hole and bring the mast 1.3° flatter',
    );
    expect(lineUps).toMatchObject([
      { accepted: false, correction: expect.stringContaining('Ask the driller') },
    ]);
  });

  it('asks for readings that disagree to be read again, first, and for nothing of the driller', async () => {
    const { code, out, lineUps } = await take(
      { azimuth: '271.4', compass: ['22:264', '30:264'], crewDip: '-58', clinometer: '-59.5' },
      { record: true },
    );
    expect(code).toBe(1);
    expect(out.split('\n')[0]).toMatch(
      /^Read again first: the compass .* from 271\.4° grid; the crew’s dip .* and the clinometer’s .* are 1\.5° apart\. OUTSIDE tolerance\.$/,
    );
    expect(out).not.toContain('Ask the driller to bring');
    expect(lineUps[0]).not.toHaveProperty('correction');
  });

  it('asks nothing of the driller once the hole is begun', async () => {
    const readings = { azimuth: '268.2', crewDip: '-60', clinometer: '-60.1' };
    const { out } = await take(readings, { hole: 'MBRC003' });
    expect(out.split('\n')[0]).toBe(
      'OUTSIDE tolerance. The hole is begun: the rig is not to be moved for this. Where the hole goes is what its survey says.',
    );
    expect(out).not.toContain('Ask the driller to bring');
  });

  it('outside is accepted with a reason, which is recorded', async () => {
    const { code, lineUps } = await take({ azimuth: '268.2' }, { record: true, because: 'pad too narrow' });
    expect(code).toBe(0);
    expect(lineUps).toMatchObject([{ accepted: true, because: 'pad too narrow' }]);
  });

  it('outside stands so in the table of events, with the reason', async () => {
    const folder = copyOfSample();
    await take({ azimuth: '268.2' }, { record: true, because: 'pad too narrow' }, folder);
    const heard = hear();
    await tables(heard.outside, { folder, names: ['events'], as: 'json' });
    const events: unknown = JSON.parse(heard.out());
    expect(JSON.stringify(events)).toContain('accepted OUTSIDE tolerance, because: pad too narrow');
  });

  it.each([
    [{ cautions: undefined }, 'who read the cautions is missing'],
    [{ permission: undefined }, 'who gave permission is missing'],
    [{ azimuth: undefined }, 'the line-up is not complete'],
  ])('is not recorded without %j', async (readings, why) => {
    const { code, err, lineUps } = await take(readings, { record: true });
    expect([code, lineUps]).toEqual([2, []]);
    expect(err).toContain(why);
  });

  it.each([
    [{ azimuth: '90.2' }, 'is the back-bearing: planned is 270.0° grid'],
    [{ azimuth: '365' }, 'An azimuth runs from 0 to 360'],
    [{ clinometer: '60' }, 'points upwards'],
    [{ clinometer: '30.2' }, 'likely an inclination from vertical'],
    [{ collar: '6002160 412460 431' }, 'east and north swapped'],
    [{ collar: '1353215 19692126 431' }, 'Likely feet'],
    [{ compass: ['22'] }, 'Metres from the rig and readings are wanted'],
    [{ compass: ['22:180'] }, 'neither the azimuth nor its back-bearing'],
    [{ gps: '/nowhere/gps' }, 'the file or its folder is not there'],
  ])('is refused for %j with the likely cause', async (readings, why) => {
    const { code, err, lineUps } = await take(readings, { record: true });
    expect([code, lineUps]).toEqual([2, []]);
    expect(err).toContain(why);
  });
});

describe('a compass by command', () => {
  it('is averaged along the hole and sighted back, and is a check beside the pegs', async () => {
    const { out } = await take({ compass: ['22:270.4,270.8', '30:90.6b,90.4b'] });
    expect(out).toMatch(/Compass: 270\.\d° grid, readings spread 0\.3°; 0\.\d° from the azimuth\./);
  });

  it('recognises a reading that is the other one, and says so', async () => {
    const { out } = await take({ compass: ['22:90.6', '30:270.6'] });
    expect(out).toContain('90.6° is the other one: sighted back. It is turned by 180°.');
    expect(out).toMatch(/Compass: 270\.\d° grid/);
  });

  it('that disagrees at two distances is not used', async () => {
    const { code, out } = await take({ way: 'compass', azimuth: undefined, compass: ['22:266', '30:272'] });
    expect(code).toBe(1);
    expect(out).toContain('The compass gives no azimuth that can be used.');
    expect(out).toContain('disagree by 6.0°: not used');
  });

  it('in magnetic ground is refused as the only check, and beside pegs is not', async () => {
    const folder = withSurvey('"magneticGround": true');
    const compass = ['22:270.6', '30:270.6'];
    const alone = await take({ way: 'compass', azimuth: undefined, compass }, {}, folder);
    expect([alone.code, alone.out]).toEqual([1, expect.stringContaining('a compass alone is not a check')]);
    expect((await take({ compass }, {}, folder)).code).toBe(0);
  });
});

describe('the collar by command', () => {
  it('is read from a GPS, averaged with its quality, and kept beside the planned one', async () => {
    const { out, collars } = await take(
      { gps: gps(FIX, FIX, FIX.replace('431.5', '439.5'), '$GPGSV,3*00') },
      { record: true },
    );
    expect(out).toMatch(/Collar read: .* \(GPS, 2 fixes, plain, scatter 0\.0 m, 9 satellites, 2 left out\)/);
    expect(collars).toMatchObject([{ rank: 'planned' }, { rank: 'handheld', elevationMm: 431_500 }]);
  });

  it('by a fix too poor to judge by is refused, and kept only where = insists', async () => {
    const poor = gps(summed('GPGGA,010203,3607.27491,S,12201.61073,E,1,03,12.4,431.5,M,,M,,'));
    const refused = await take({ gps: poor }, { record: true });
    expect([refused.code, refused.collars.length, refused.lineUps]).toEqual([2, 1, []]);
    expect(refused.err).toContain(
      'too poor to judge the peg by: 3 satellites (at least 5), HDOP 12.4 (at most 5)',
    );
    const kept = await take({ gps: `${poor} =` }, { record: true });
    expect(kept.collars).toMatchObject([{ rank: 'planned' }, { rank: 'handheld' }]);
  });

  it('may be given in the mine grid, where there is one', async () => {
    const folder = withSurvey(
      '"mineGrid": {"rotationDeg": 90, "mapOrigin": {"eastM": 412460, "northM": 6002160}, "mineOrigin": {"eastM": 1000, "northM": 2000}}',
    );
    const { out } = await take({ collar: '1000 2002 431 l' }, {}, folder);
    expect(out).toContain('Collar read: 412462.0 E 6002160.0 N (typed at the rig, mine grid), 2.0 m from');
    const none = await take({ collar: '1000 2002 431 l' });
    expect([none.code, none.err]).toEqual([2, expect.stringContaining('has no mine grid')]);
  });

  it('without a fix, or with sentences that do not fit their checksum, is refused with the reason', async () => {
    for (const [file, why] of [
      [gps(FIX.replace('431.5', '439.5')), 'checksum'],
      [gps('hello'), 'no NMEA sentence with a checksum'],
      [gps(summed('GPGGA,010203,3607.27491,S,12201.61073,E,0,00,,,M,,M,,')), 'no fix'],
    ] as const) {
      const { code, err } = await take({ gps: file });
      expect(code).toBe(2);
      expect(err).toContain(why);
    }
  });
});

describe('the planned direction by command', () => {
  const told = async (folder: string) => {
    const heard = hear();
    await lineUp(heard.outside, { folder, hole: HOLE, json: false });
    return heard.out();
  };

  it('says each angle with its sign in words, its model and how long that holds, and the datum of a GPS', async () => {
    const out = await told(SAMPLE);
    expect(out).toContain('(magnetic north from true north; true = magnetic + declination, east positive)');
    expect(out).toContain('World Magnetic Model WMM-2025 for 2026.2, valid to 2029-11.');
    expect(out).toContain('(grid north from true north; grid = true - convergence, east positive)');
    expect(out).toContain('a datum fixed to its plate can be 2 m from a GPS fix');
  });

  it('says of a declination of the project where it is from, and what the model gives', async () => {
    const out = await told(withSurvey('"declination": {"deg": 2.5, "source": "site survey of June"}'));
    expect(out).toContain('Declination 2.50° east');
    expect(out).toContain("That is project.json's own (site survey of June); by the model it is 0.18° east.");
  });

  it('counts from the mine grid too, where there is one', async () => {
    const out = await told(
      withSurvey(
        '"mineGrid": {"rotationDeg": 30, "mapOrigin": {"eastM": 412000, "northM": 6002000}, "mineOrigin": {"eastM": 0, "northM": 0}}',
      ),
    );
    expect(out).toContain('270.0° grid = 240.0° mine grid');
    expect(out).toContain('Mine north bears 30.00° east of grid north');
  });
});
