import { describe, expect, it } from 'vitest';
import { editedOutside, staleLock } from '../../src/files/findings.ts';
import { sampleFiles, sitDown } from './support/sitting.ts';

const changed = (id: string) =>
  editedOutside.at(
    { file: `holes/${id}.json`, hole: id },
    {
      problem: 'another program wrote this file while the project was open; the change was taken in',
      remedy: 'Look.',
    },
  );

describe('a file that another program changes while the console is open', () => {
  it('is said on the screen while its hole is open, and where to read on', async () => {
    const sitting = await sitDown(sampleFiles());
    const before = sitting.state().found;
    sitting.happen({ kind: 'found', found: [...before, changed('MBRC003')] });
    expect(sitting.screen().join(' ')).toContain(
      'MBRC003: another program wrote this file while the project',
    );
    expect(sitting.state().message).toMatchObject({ tone: 'alert' });
    sitting.press('ctrl-f');
    expect(sitting.state().screen.name).toBe('found');
    expect(sitting.screen().join(' ')).toContain('holes/MBRC003.json');
  });

  it('is not said again, and that of another hole only is on the list', async () => {
    const sitting = await sitDown(sampleFiles());
    const found = [...sitting.state().found, changed('MBRC003')];
    sitting.happen({ kind: 'found', found });
    sitting.press('escape');
    const note = staleLock.at({ file: 'journal/lock.json' }, { problem: 'x', remedy: 'y' });
    sitting.happen({ kind: 'found', found: [...found, changed('MBRC001'), note] });
    expect(sitting.state().message).toBeUndefined();
    expect(sitting.state().found).toHaveLength(found.length + 2);
  });
});
