import { describe, expect, it, vi } from 'vitest';
import { fieldInHand } from '../../src/console/log/codes-list.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** The screen of codes with the cursor on a field of the log sheet. */
async function onField(name: string, files = sampleFiles()): Promise<Sitting> {
  const sitting = await sitDown(files, '2026-03-14T09:08:00+08:00');
  sitting.press('f7');
  sitting.type(`${name},`);
  for (let presses = 0; presses < 10 && fieldInHand(sitting.state())?.name !== name; presses += 1)
    sitting.press('down');
  expect(fieldInHand(sitting.state())?.name).toBe(name);
  sitting.press('enter');
  return sitting;
}
const saved = (sitting: Sitting): Promise<void> =>
  vi.waitFor(() => expect(sitting.state().prompt).toBeUndefined());
const names = (sitting: Sitting): readonly string[] =>
  sitting.state().project.schema.fields.map(({ name }) => name);
const ownEntry = (sitting: Sitting, name: string) =>
  JSON.parse(sitting.desk.logging()?.text ?? '').fields.find((each: { name: string }) => each.name === name);

describe('a field that is changed on the screen of codes', () => {
  it('is moved behind another one, after a look at the log sheet and the table', async () => {
    const sitting = await onField('veins');
    sitting.press('down');
    sitting.type('rock');
    const shown = sitting.screen(100, 30).join(' ').replaceAll(/\s+/g, ' ');
    expect(shown).toContain('log sheet: rock* · veins · weathering*');
    expect(shown).toContain('table at 80 columns: rock');
    expect(shown).toContain('check: nothing found');
    sitting.press('enter');
    sitting.type('y');
    await saved(sitting);
    expect(names(sitting).slice(0, 3)).toEqual(['rock', 'veins', 'weathering']);
    expect(ownEntry(sitting, 'veins')).toEqual({ name: 'veins', after: 'rock' });
  });

  it('is not moved above a field that its condition asks', async () => {
    const sitting = await onField('fill');
    sitting.press('down');
    sitting.type('rock');
    expect(sitting.screen(100, 30).join(' ')).toContain('fault:');
    sitting.press('enter');
    expect(sitting.state().message?.tone).toBe('alert');
    expect(sitting.state().prompt).toBeDefined();
  });

  it('is required from now on with Enter alone', async () => {
    const sitting = await onField('colour');
    sitting.press('down', 'down', 'enter');
    sitting.type('y');
    await saved(sitting);
    expect(ownEntry(sitting, 'colour')).toEqual({ name: 'colour', required: true });
  });

  it('is retired from today, and rows that were logged with it read as before', async () => {
    const sitting = await onField('grain');
    sitting.press('down', 'down', 'down', 'enter');
    sitting.type('y');
    await saved(sitting);
    expect(names(sitting)).not.toContain('grain');
    expect(ownEntry(sitting, 'grain')).toEqual({ name: 'grain', retiredSince: '2026-03-14' });
  });

  it('is not retired while a termination rule asks it: the rule would not see what it was written to see', async () => {
    const files = sampleFiles();
    const project = JSON.parse(String(files['project.json']));
    project.termination.rules.push({
      name: 'fizzing',
      words: 'Three metres that fizz.',
      verdict: 'may end',
      when: { inARow: { where: { field: 'fizz', atLeast: 2 }, forM: 3 } },
    });
    const sitting = await onField('fizz', { ...files, 'project.json': JSON.stringify(project) } as never);
    const before = sitting.desk.logging()?.text;
    sitting.press('down', 'down', 'down');
    expect(sitting.screen(100, 30).join(' ')).toMatch(/fault: .*fizz/);
    sitting.press('enter');
    expect(sitting.state().message?.tone).toBe('alert');
    expect(sitting.desk.logging()?.text).toBe(before);
    expect(names(sitting)).toContain('fizz');
  });

  it('names a field that is not there', async () => {
    const sitting = await onField('veins');
    sitting.press('down');
    sitting.type('stones');
    expect(sitting.screen(100, 30).join(' ')).toContain('no field is called stones');
  });
});
