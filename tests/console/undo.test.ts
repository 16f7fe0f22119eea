import { expect, it } from 'vitest';
import type { Stamp } from '../../src/quantity/stamp.ts';
import { sampleFiles, sitDown } from './support/sitting.ts';

const shown = (sitting: Awaited<ReturnType<typeof sitDown>>): string =>
  sitting.screen(80, 24).join('\n').replace(/\s+/g, ' ');

it('takes back the latest deed of whatever document, says which, and does it again', async () => {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T15:00:00+08:00' as Stamp);
  const rows = Object.keys(sitting.hole('MBRC003').tables.rows ?? {}).length;
  const count = () => Object.keys(sitting.hole('MBRC003').tables.rows ?? {}).length;
  sitting.enter('.');
  expect(count()).toBe(rows + 1);
  sitting.enter(';activity breakdown 14:20 hydraulic hose');
  sitting.enter(';u');
  expect(shown(sitting)).toMatch(/Undone: shift RC7_2026-03-14_DAY: .*Ctrl-r does it again/);
  expect(count()).toBe(rows + 1);
  sitting.press('ctrl-u');
  expect(shown(sitting)).toMatch(/Undone: logged \d+–\d+\. Ctrl-r does it again\./);
  expect(count()).toBe(rows);
  sitting.press('ctrl-u');
  expect(shown(sitting)).toContain('Undo: nothing of this sitting is left to undo');
  sitting.press('ctrl-r');
  expect(shown(sitting)).toMatch(/Done again: shift RC7_2026-03-14_DAY: |Done again: logged /);
});

it('on another screen takes back the row that was logged last, and names its hole', async () => {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T15:00:00+08:00' as Stamp);
  sitting.enter('.');
  const rows = Object.keys(sitting.hole('MBRC003').tables.rows ?? {}).length;
  sitting.enter(';dispatch');
  sitting.press('ctrl-u');
  expect(shown(sitting)).toMatch(/Undone: MBRC003: logged \d+–\d+\./);
  expect(Object.keys(sitting.hole('MBRC003').tables.rows ?? {})).toHaveLength(rows - 1);
});
