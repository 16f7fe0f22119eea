import { describe, expect, it } from 'vitest';
import { sampleFiles, sitDown } from '../support/sitting.ts';

describe('the list of holes', () => {
  it('has every figure of a hole at 80 columns, and the whole note of the one under the cursor', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    sitting.press('f10', 'up', 'up');
    const screen = sitting.screen(80, 24);
    const picked = screen.find((each) => each.includes('▸')) ?? '';
    expect(picked).toMatch(/MBRC002 +abandoned +270\.0° grid +-60\.0° +90 m +24 m +20 m/);
    expect(screen.slice(-3).join(' ').trim().length).toBeGreaterThan(60);
    expect(screen.slice(-3).join(' ')).not.toContain('…');
  });

  it('shows which holes are lined up and how many bags are numbered for each, at 80 columns', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    sitting.press('f10');
    const line = (name: string): string =>
      sitting.screen(80, 24).find((each) => each.includes(`${name} `)) ?? '';
    expect(line('hole')).toMatch(/logged +lined +bags/);
    expect(line('MBRC003')).toMatch(/drilling .* m +yes +\d{3}\b/);
    expect(line('MBRC004')).toMatch(/planned .* 130 m +– +– /);
  });
});
