import { describe, expect, it } from 'vitest';
import { LOOK_ANSWERS } from '../../../src/console/samples/ways.ts';
import { wrap } from '../../../src/console/widgets/line.ts';
import { mostLikely } from '../../../src/sampling/rod/likely.ts';
import { NEAR_SPLITTER } from '../../../src/sampling/rod/mismatch.ts';
import { MISMATCHES } from '../../../src/sampling/rod/mismatches/registry.ts';
import { LOOKS } from '../../../src/sampling/rod/rod-check.ts';
import { type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const sit = (): Promise<Sitting> => sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
const small = (sitting: Sitting): string => sitting.screen(80, 24).join('\n');

describe('a prompt at 80 by 24', () => {
  it('shows every bag of a rod with its controls, and what to type', async () => {
    const sitting = await sit();
    for (let rod = 0; rod < 4; rod += 1) {
      sitting.press('f2');
      const bags = small(sitting).match(/^│ {3}MB\d{6}/gm) ?? [];
      const expected = Number(/(\d+) bags expected/.exec(small(sitting))?.[1]);
      expect(bags).toHaveLength(expected);
      expect(small(sitting)).toMatch(/Enter if the bags match[\s\S]*digits/);
      sitting.press('enter');
    }
  });

  it('keeps what is typed and the keys in view where the lines above do not all fit', async () => {
    const sitting = await sit();
    sitting.press('f2');
    sitting.enter('x9 599');
    sitting.type('1');
    expect(small(sitting)).toMatch(/Esc back[\s\S]*number 1/);
  });

  it.each(MISMATCHES.map((kind) => [kind.name, kind] as const))(
    'has room for all that is said of %s, a look and four ways',
    (_, kind) => {
      const width = 76;
      const ground = kind.nearSplitter ? `${NEAR_SPLITTER} ${kind.ground}` : kind.ground;
      const looks = Object.entries(LOOKS).map(
        ([look, words]) =>
          wrap(`To be sure: ${words} (${LOOK_ANSWERS[look as keyof typeof LOOKS]})`, width).length,
      );
      const near = kind.nearSplitter ? 0 : wrap(NEAR_SPLITTER, width).length;
      const said =
        wrap(mostLikely({ ...kind, ways: [], share: 0.05 }), width).length +
        wrap(ground, width).length +
        near;
      const [ways, foot, box, screen] = [4, 2, 2, 17];
      expect(said + Math.max(...looks) + ways + foot + box).toBeLessThanOrEqual(screen);
    },
  );

  it('names the keys of every question', async () => {
    const sitting = await sit();
    const asked: readonly (() => void)[] = [
      () => sitting.press('f2'),
      () => sitting.press('ctrl-a'),
      () => sitting.press('f12'),
      () => sitting.press('ctrl-k'),
      () => sitting.press('ctrl-e'),
      () => sitting.enter(';44-46 py5'),
    ];
    for (const ask of asked) {
      ask();
      expect(sitting.state().prompt).toBeDefined();
      expect(small(sitting)).toMatch(/Enter[ .]/);
      sitting.press('escape');
      expect(sitting.state().prompt).toBeUndefined();
    }
  });

  it('wraps its words: none is cut', async () => {
    const sitting = await sit();
    sitting.press('f10');
    sitting.type('n');
    const box = small(sitting).split('a hole that is not in the program')[1] ?? '';
    expect(box).toContain('Direction and depth');
    expect(box).not.toContain('…');
  });
});
