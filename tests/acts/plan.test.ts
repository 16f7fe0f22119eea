import { describe, expect, it } from 'vitest';
import { setPlan } from '../../src/acts/plan.ts';
import { apply } from '../../src/record/apply.ts';
import { type Document, emptyDocument } from '../../src/record/document.ts';

const deed = { edit: 'a-1', at: '2026-03-14T08:00:00+08:00', by: 'NOK', what: 'made' };

function hole(plan?: object): Document {
  const header = {
    name: 'MBRC020',
    state: 'drilling',
    logFromMm: 0,
    intervalMm: 1000,
    rodMm: 6000,
    firstRodOffsetMm: 0,
  };
  const made = apply(emptyDocument({ kind: 'hole', id: 'MBRC020' }), deed, [
    { put: ['hole', 'hole'], thing: header },
    ...(plan === undefined ? [] : [{ put: ['plan', 'plan'] as const, thing: { ...plan } }]),
  ]);
  if (!made.ok) throw new Error(made.problem);
  return made.document;
}

describe('a plan given on the rig', () => {
  it('is put where the hole has none', () => {
    expect(setPlan(hole(), '270g -60 120')).toEqual({
      ok: true,
      value: {
        what: 'planned 270.0° grid, -60.0°, to 120 m',
        changes: [
          {
            put: ['plan', 'plan'],
            thing: { azimuthDeg: 270, azimuthNorth: 'grid', dipDeg: -60, depthMm: 120_000 },
          },
        ],
      },
    });
  });

  it('amends direction and depth where the hole has one, and leaves its target', () => {
    const set = setPlan(
      hole({ azimuthDeg: 270, azimuthNorth: 'grid', dipDeg: -60, depthMm: 120_000, target: 'lode' }),
      '270g -60 180',
    );
    expect(set).toMatchObject({
      ok: true,
      value: { changes: [{ patch: ['plan', 'plan'], set: { depthMm: 180_000 } }] },
    });
  });

  it.each([
    ['270 -60 120', 'letter of its north'],
    ['270g 60 120', 'Did you mean -60?'],
    ['270g -60', 'Azimuth with its north, dip and depth'],
  ])('%j is refused: %s', (said, words) => {
    expect(setPlan(hole(), said)).toMatchObject({
      ok: false,
      findings: [{ code: 'plan-not-read', problem: expect.stringContaining(words) }],
    });
  });
});
