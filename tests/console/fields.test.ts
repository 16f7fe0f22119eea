import { describe, expect, it } from 'vitest';
import { sampleFiles, sitDown } from './support/sitting.ts';

describe('the pick list of a field', () => {
  it('ends where it ends: one key up from the end picks the one before the last', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    sitting.press('f4', ...Array.from({ length: 300 }, () => 'down'));
    const atEnd = sitting.screen().join('\n');
    sitting.press('up');
    expect(sitting.screen().join('\n')).not.toBe(atEnd);
  });
});
