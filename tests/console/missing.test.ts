import { describe, expect, it, vi } from 'vitest';
import { formatLine } from '../../src/files/journal-line.ts';
import { sampleFiles, sitDown } from './support/sitting.ts';

/** Opens on a project whose journal knows a hole that is not among its files. */
const withoutOne = () =>
  sitDown({
    ...sampleFiles(),
    'journal/000001.jsonl': formatLine({
      begins: { generation: 1, next: 1, documents: ['hole/ZQRC099'] },
    }),
  });

describe('a file that is gone', () => {
  it('comes first on opening, and Enter asks what is to become of it', async () => {
    const sitting = await withoutOne();
    expect(sitting.screen().join('\n')).toContain('FAULT  holes/ZQRC099.json');
    sitting.press('enter');
    expect(sitting.screen().join('\n')).toContain('ZQRC099: its file is gone');
    sitting.press('enter');
    expect(sitting.state().message?.text).toContain('reason to give it up');
    sitting.press('escape');
    expect(sitting.desk.missing()).toHaveLength(1);
  });

  it('is let go with the reason that is typed, and is found no more', async () => {
    const sitting = await withoutOne();
    sitting.press('enter');
    sitting.enter('never drilled');
    expect(sitting.state().message?.text).toContain('y records this');
    expect(sitting.desk.missing()).toHaveLength(1);
    sitting.type('y');
    await vi.waitFor(() =>
      expect(sitting.state().message?.text).toBe(
        'ZQRC099 is given up. What the journal had of it is in journal/kept/holes-ZQRC099.json.let-go.1.',
      ),
    );
    expect(sitting.desk.missing()).toEqual([]);
    expect(sitting.desk.findings()).toEqual([]);
  });

  it('is not restored from a journal that holds nothing of it, and that is said', async () => {
    const sitting = await withoutOne();
    sitting.press('enter');
    sitting.enter('restore');
    expect(sitting.state().message?.text).toBe('Not restored: the journal holds nothing of ZQRC099');
    expect(sitting.desk.missing()).toHaveLength(1);
  });

  it('is let go by no Enter alone, and not by a word that is nearly restore', async () => {
    const sitting = await withoutOne();
    sitting.press('enter');
    for (const word of ['restor', 'retsore', 'Restored', 'restroe', 'recover']) {
      sitting.enter(word);
      expect(sitting.state().message?.text).toContain('type restore to restore it');
      for (const _ of word) sitting.press('backspace');
    }
    sitting.enter('xyz');
    sitting.press('enter');
    expect(sitting.state().prompt).toMatchObject({ kind: 'missing', draft: { text: 'xyz' } });
    expect(sitting.desk.missing()).toHaveLength(1);
  });
});

describe('a file that is older than what was saved in it', () => {
  it('comes first on opening; Enter says what can be done, and a reason with y goes on from it', async () => {
    const heads = { 'hole/MBRC003': 'f'.repeat(20) };
    const sitting = await sitDown({
      ...sampleFiles(),
      'journal/000001.jsonl': formatLine({
        begins: { generation: 1, next: 1, documents: ['hole/MBRC003'], heads },
      }),
    });
    expect(sitting.screen(80, 24).join('\n')).toContain('FAULT  holes/MBRC003.json');
    sitting.press('enter');
    expect(sitting.screen(80, 24).join('\n')).toContain('its file is older than when it was last written');
    sitting.press('enter');
    expect(sitting.state().message?.text).toContain('Type the reason to go on from this older file');
    sitting.enter('restor');
    expect(sitting.state().message?.text).toContain('The journal holds nothing of what it lacks');
    sitting.press('ctrl-u');
    sitting.enter('the later one was a test');
    expect(sitting.desk.missing()).toHaveLength(1);
    sitting.type('y');
    await vi.waitFor(() => expect(sitting.state().message?.text).toContain('work goes on from this copy'));
    expect(sitting.desk.missing()).toEqual([]);
    expect(sitting.desk.get({ kind: 'hole', id: 'MBRC003' })?.history.at(-1)?.what).toContain(
      'later edits given up: the later one was a test',
    );
  });
});
