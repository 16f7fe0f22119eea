import { describe, expect, it, vi } from 'vitest';
import { sampleFiles, sitDown } from './support/sitting.ts';

/** Waits for what the console does between two reads, however slow the machine is. */
const until = (check: () => void) => vi.waitFor(check, { timeout: 30_000 });

describe('a paste of many lines', () => {
  it('is logged and saved as it goes, with how many lines are left, and keys typed meanwhile come after it', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    const rows = () => Object.keys(sitting.hole('MBRC003').tables.rows ?? {}).length;
    const before = rows();
    sitting.burst('p3\r'.repeat(70));
    sitting.type('ser');
    // The first part is in, the rest waits: the screen is painted and the disk has its turn in between.
    expect(rows() - before).toBe(20);
    expect(sitting.state().message?.text).toBe('Taking what was pasted: 50 lines to go.');
    await until(() => expect(sitting.desk.health().savedAt).toBeDefined());
    await until(() => expect(rows() - before).toBe(70));
    await until(() => expect(sitting.desk.health()).toMatchObject({ state: 'safe', unsafeEdits: 0 }));
    expect(sitting.state().draft.text).toBe('ser');
  });

  it('stops at a line that is refused: what follows is held, not glued to it', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    const rows = () => Object.keys(sitting.hole('MBRC003').tables.rows ?? {}).length;
    const before = rows();
    sitting.burst(`${'p3\r'.repeat(30)}qqq9\r${'p2\r'.repeat(30)}`);
    await until(() => expect(rows() - before).toBe(30));
    await until(() => expect(sitting.state().held.length).toBe(90));
    expect(sitting.state().draft.text).toBe('qqq9');
  });
});
