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

describe('a row said by fields', () => {
  const AT = '2026-03-14T09:08:00+08:00';
  const said = (sitting: { state: () => { message?: { text: string } | undefined } }) =>
    sitting.state().message?.text ?? '';

  it('shows the shortest line that would have done the same', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.press('f4', 'tab', 'tab', 'tab', 'tab', 'tab', 'tab', 'tab');
    sitting.type('pyrite');
    sitting.press('enter');
    sitting.type('3');
    sitting.press('enter', 'f4');
    expect(said(sitting)).toBe('logged 46–47. The line p3 would have done the same.');
  });

  it('shows it too where the row was asked about first, and not behind a line typed by hand', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.press('f4', 'tab', 'tab', 'tab', 'tab', 'tab', 'tab', 'tab');
    sitting.type('py20');
    sitting.press('enter', 'f4');
    expect(said(sitting)).toContain('pyrite goes from 2 % to 20 % in one row');
    sitting.type('=');
    sitting.press('enter');
    expect(said(sitting)).toBe('logged 46–47. The line p20= would have done the same.');
    sitting.enter('py10');
    expect(said(sitting)).toBe('logged 47–48');
  });
});

describe('Tab on the line', () => {
  it('completes the words of screens as it does those of commands', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    sitting.type(';surv');
    sitting.press('tab');
    expect(sitting.state().draft.text).toBe(';survey');
    sitting.press('escape');
    sitting.type(';spl');
    sitting.press('tab');
    expect(sitting.state().draft.text).toBe(';split');
  });
});
