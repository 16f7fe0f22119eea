import { describe, expect, it } from 'vitest';
import { readNewHole } from '../../src/acts/new-hole.ts';

const read = (text: string) => readNewHole(text, new Set(['MBRC001']));

describe('a hole typed on the rig', () => {
  it('needs a name alone, in any case', () => {
    expect(read(' mbrc020 ')).toEqual({ ok: true, name: 'MBRC020', plan: undefined, logFromMm: 0 });
  });

  it('takes azimuth with the letter of its north, dip and depth', () => {
    expect(read('MBRC020 360t -59.5 120.5')).toEqual({
      ok: true,
      name: 'MBRC020',
      plan: { azimuthDeg: 0, azimuthNorth: 'true', dipDeg: -59.5, depthMm: 120_500 },
      logFromMm: 0,
    });
  });

  it('starts its log at the foot of a pre-collar', () => {
    expect(read('MBRC020 270g -60 180 from 48')).toMatchObject({ ok: true, logFromMm: 48_000 });
    expect(read('MBRC020 from 48')).toMatchObject({ ok: true, plan: undefined, logFromMm: 48_000 });
  });

  it.each([
    ['', 'it is empty'],
    ['MBRC001', 'is there already'],
    ['nul', 'keep for devices'],
    ['../x', 'only capitals'],
    ['MBRC020 270 -60 120', 'letter of its north'],
    ['MBRC020 361g -60 120', 'is not an azimuth'],
    ['MBRC020 270g 60 120', 'Did you mean -60?'],
    ['MBRC020 270g -91 120', 'is not a dip'],
    ['MBRC020 270g -60 0', 'is not a depth'],
    ['MBRC020 270g -60', 'azimuth with its north, dip, depth'],
    ['MBRC020 270g -60 40 from 48', 'above the bottom of the pre-collar'],
    ['MBRC020 from', 'After from'],
  ])('%j is refused: %s', (text, words) => {
    expect(read(text)).toMatchObject({ ok: false, problem: expect.stringContaining(words) });
  });
});
