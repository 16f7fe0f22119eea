import { describe, expect, it } from 'vitest';
import { sampleFiles, sitDown } from '../support/sitting.ts';

describe('the top line', () => {
  it('keeps the hole, the activity, the shot, saved and the time at 80 columns', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    sitting.enter('p3');
    await sitting.desk.snapshot();
    sitting.happen({ kind: 'health', health: { pending: 0, savedAt: sitting.desk.now() } });
    const top = sitting.screen(80, 24)[0] ?? '';
    for (const part of ['MBRC003', 'drilling 0:35', 'shot due 72 m', 'saved 09:08:00', '09:08'])
      expect(top).toContain(part);
    expect(top).not.toContain('…');
  });

  it('counts no activity past the planned end of a shift that no one ended', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    sitting.wait(3 * 24 * 60);
    for (const columns of [80, 100]) {
      const top = sitting.screen(columns)[0] ?? '';
      expect(top).toContain('no activity');
      expect(top).toContain('shot due 72 m');
    }
  });

  it('names the project and the planned direction where there is room', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    expect(sitting.screen(120)[0]).toContain('270.0° grid / -60.0° · Mulgara Bend');
  });
});
