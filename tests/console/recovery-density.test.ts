import { describe, expect, it } from 'vitest';
import { streamMetres } from '../../src/standing/recovery.ts';
import { emptySample, type Files, type Sitting, sitDown } from './support/sitting.ts';

/** A hole with one rod done; `rocks` is written over the list of rocks. */
async function oneRod(rocks: object = {}): Promise<Sitting> {
  const files = emptySample();
  const logging = JSON.parse(files['logging.json'] ?? '');
  logging.lists = { ...logging.lists, rocks: { ...logging.lists?.rocks, ...rocks } };
  const changed: Files = { ...files, 'logging.json': JSON.stringify(logging) };
  const sitting = await sitDown(changed);
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  sitting.press('f2', 'enter');
  return sitting;
}

const kg = (sitting: Sitting) =>
  streamMetres(sitting.state().project, sitting.hole('MBRC020')).map(
    ({ expectedG }) => (expectedG ?? 0) / 1000,
  );
/** π/4 · 139.7² mm² · 1 m of 1 t/m³, in kilograms. */
const PER_DENSITY = ((Math.PI / 4) * 139.7 ** 2) / 1000;

describe('the mass that a metre holds', () => {
  it('is that of its rock as weathered as it is logged', async () => {
    const sitting = await oneRod();
    sitting.enter('bawx1ox1');
    sitting.enter('wx5ox3 =');
    const [fresh = 0, weathered = 0] = kg(sitting);
    expect(weathered / fresh).toBeCloseTo(0.72, 3);
  });

  it('is that of a code of its own at a level, which holds on to the next one written', async () => {
    const own = { codes: [{ code: 'BAS', densityGcm3: 2.9, densityAtLevels: { weathering: { 3: 2.2 } } }] };
    const sitting = await oneRod(own);
    sitting.enter('bawx2ox1');
    sitting.enter('wx4ox2 =');
    const [slightly = 0, highly = 0] = kg(sitting);
    expect(slightly / PER_DENSITY).toBeCloseTo(2.9 * 0.98, 2);
    expect(highly / PER_DENSITY).toBeCloseTo(2.2, 2);
  });

  it('is that given for a weathered material as it lies: weathering is in it already', async () => {
    const own = { codes: [{ code: 'SPR', label: 'saprolite', look: 'soft', pair: 'zp', densityGcm3: 1.8 }] };
    const sitting = await oneRod(own);
    sitting.enter('zpwx5ox3 =');
    expect((kg(sitting)[0] ?? 0) / PER_DENSITY).toBeCloseTo(1.8, 2);
  });

  it('is none of a void: what is weighed there gives no recovery; a metre without return held its rock', async () => {
    const sitting = await oneRod();
    sitting.enter('vr');
    sitting.press('escape');
    sitting.enter('bawx1ox1');
    sitting.enter('nr');
    sitting.press('escape');
    sitting.enter(';mass 0-1 bulk 12.4');
    const [inVoid, , lost] = streamMetres(sitting.state().project, sitting.hole('MBRC020'));
    expect([inVoid?.expectedG, inVoid?.percent]).toEqual([undefined, undefined]);
    expect(lost?.expectedG).toBeGreaterThan(35_000);
  });

  it('follows the bit as it is measured while the hole deepens: worn evenly between, a new one from where it is put on', async () => {
    const sitting = await oneRod({ densityShares: { weathering: {} } });
    sitting.enter(';bit 137 @4');
    expect(sitting.state().message?.text).toBe('bit measured 137 mm at 4 m');
    sitting.enter(';bit 139.7 =');
    const diameters = kg(sitting).map((mass) => Math.sqrt((mass / 2.7) * 1000 * (4 / Math.PI)));
    expect(diameters[0]).toBeCloseTo(139.7, 1);
    expect(diameters[2]).toBeCloseTo(138.35, 1);
    expect(diameters[5]).toBeCloseTo(137, 1);
    sitting.enter(';bit 1386');
    expect(sitting.state().draft.text).toBe(';bit 1386');
    sitting.press('escape');
    sitting.enter(';bit 138 @60');
    expect(sitting.state().message?.text).toContain('drilled to 6 m only');
  });
});
