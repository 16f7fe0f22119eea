import { describe, expect, it } from 'vitest';
import { MIGRATIONS, type Migration, upgrade } from '../../src/formats/upgrade.ts';

const steps: readonly Migration[] = [
  { kind: 'hole', from: 0, upgrade: ({ holeId, ...rest }) => ({ ...rest, id: holeId ?? '' }) },
  { kind: 'hole', from: 1, upgrade: (file) => ({ ...file, history: [] }) },
  {
    kind: 'shift',
    from: 0,
    upgrade: () => {
      throw new Error('it has no rig');
    },
  },
];

describe('a file of an older format', () => {
  it('is brought up step by step', () => {
    expect(upgrade({ format: 0, holeId: 'ZQRC001' }, 'hole', 2, steps)).toEqual({
      ok: true,
      steps: 2,
      file: { format: 2, id: 'ZQRC001', history: [] },
    });
  });

  it('of the format that is wanted is left as it is', () => {
    const file = { format: 1, id: 'ZQRC001' };
    expect(upgrade(file, 'hole', 1, steps)).toEqual({ ok: true, steps: 0, file });
  });

  it.each([
    [{ format: 0 }, 'tray', 'nothing reads format 0 of a tray file'],
    [{ format: -1 }, 'hole', 'nothing reads format -1 of a hole file'],
    [{ format: 0 }, 'shift', 'it could not be brought from format 0 to 1: it has no rig'],
    [{ format: 'old' }, 'hole', 'it says no format'],
    [{}, 'hole', 'it says no format'],
  ])('that no step reads is refused: %j of a %s', (file, kind, problem) => {
    expect(upgrade(file as never, kind, 2, steps)).toEqual({ ok: false, problem });
  });

  it('has every step from its first to today, once, for each kind', () => {
    const kinds = new Set(MIGRATIONS.map((step) => step.kind));
    for (const kind of kinds) {
      const from = MIGRATIONS.filter((step) => step.kind === kind).map((step) => step.from);
      expect(from).toEqual([...new Set(from)].sort((a, b) => a - b));
    }
  });
});
