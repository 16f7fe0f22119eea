import { describe, expect, it } from 'vitest';
import type { Health } from '../../src/console/state.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const SAFE: Health = { pending: 0 };
const FULL: Health = {
  pending: 2,
  unsafe: { reason: 'the disk is full', what: ['logged 45–46', 'logged 46–47'] },
};

/** The sample without its shifts: no activity goes on. */
const files = () =>
  Object.fromEntries(Object.entries(sampleFiles()).filter(([path]) => !path.startsWith('shifts/')));

async function withHealth(health: Health): Promise<Sitting> {
  const sitting = await sitDown(files(), '2026-03-14T09:08:00+08:00');
  sitting.happen({ kind: 'health', health });
  return sitting;
}
const screen = (sitting: Sitting): string =>
  sitting
    .screen(80, 24)
    .join(' ')
    .replace(/[│\s]+/g, ' ');

describe('leaving', () => {
  it('with everything saved leaves at once, by ;q from the log and by q from the list of holes', async () => {
    const sitting = await withHealth(SAFE);
    sitting.enter(';q');
    expect(sitting.left()).toBe(1);
    sitting.press('f10');
    sitting.type('q');
    expect(sitting.left()).toBe(2);
  });

  it.each([
    [';q', (sitting: Sitting) => sitting.enter(';q')],
    [
      'q on the list of holes',
      (sitting: Sitting) => {
        sitting.press('f10');
        sitting.type('q');
      },
    ],
  ] as const)(
    'with rows not saved says how many, which, why and the ways on, and stays: %s',
    async (_, quit) => {
      const sitting = await withHealth(FULL);
      quit(sitting);
      expect(sitting.left()).toBe(0);
      const shown = screen(sitting);
      for (const part of [
        '2 edits are not saved: the disk is full',
        'logged 45–46; logged 46–47',
        ';elsewhere',
        'leave',
      ])
        expect(shown).toContain(part);
      sitting.press('enter');
      sitting.enter('q');
      sitting.enter('l');
      expect(sitting.left()).toBe(0);
      sitting.press('escape');
      expect(sitting.state().prompt).toBeUndefined();
    },
  );

  it('leaves without them only by the word typed in full', async () => {
    const sitting = await withHealth(FULL);
    sitting.enter(';q');
    sitting.enter('leave');
    expect(sitting.left()).toBe(1);
  });

  it('leaves by itself once the disk has taken them, and not before', async () => {
    const sitting = await withHealth(FULL);
    sitting.enter(';q');
    sitting.happen({ kind: 'health', health: { ...FULL, pending: 1 } });
    expect(sitting.left()).toBe(0);
    sitting.happen({ kind: 'health', health: SAFE });
    expect(sitting.left()).toBe(1);
  });

  it('goes to another folder instead', async () => {
    const sitting = await withHealth(FULL);
    sitting.enter(';q');
    sitting.enter(';elsewhere');
    expect(sitting.state().prompt?.kind).toBe('elsewhere');
  });

  it('after a burst that logs and leaves waits for the rows of the burst', async () => {
    const sitting = await withHealth(SAFE);
    sitting.burst('p3\r;q\r');
    expect(sitting.state().prompt?.kind).toBe('leaving');
    expect(sitting.left()).toBe(0);
  });
});
