import { describe, expect, it } from 'vitest';
import { copyOfSample, runAt as run } from './support/outside.ts';

describe('offsider check on a hole that goes on', () => {
  it('never says that nothing is found where the line-up is missing, a shot is overdue and the hole is half drilled', async () => {
    const folder = copyOfSample();
    const begun = await run(folder, ';rod 12 f\n', 'enter', 'MBRC004', '--rig', 'RC7', '--keep-going');
    expect(begun.out).toContain('NOT LINED UP, cautions not read: Ctrl-Y (offsider line-up).');
    expect(begun.out).toContain('Old pits west of the pads: stay behind the bunting.');
    const { code, out } = await run(folder, '', 'check', 'MBRC004');
    expect(code).toBe(1);
    expect(out).toContain('warning: MBRC004: it is being drilled and no line-up is recorded');
    expect(out).not.toContain('Nothing found');
    expect(out).toMatch(/Not finished:\n {2}MBRC004: Drilled \d+ of 130 m planned\./);
  });

  it('counts no finding, and still not "nothing", where all that is left is to go on', async () => {
    const folder = copyOfSample();
    await run(folder, ';not-lined-up pegs not set yet\n', 'enter', 'MBRC004', '--rig', 'RC7');
    const { code, out } = await run(folder, '', 'check', 'MBRC004');
    expect(code).toBe(0);
    expect(out).toBe(
      '0 faults, 0 warnings, 0 notes.\nNot finished:\n  MBRC004: Drilled 0 of 130 m planned.\n  MBRC004: Not lined up, by NOK, because: pegs not set yet.\n',
    );
  });

  it('names an overdue shot, and the open queries of a plod of the shift it was drilled on', async () => {
    const folder = copyOfSample();
    const rods = Array.from({ length: 6 }, (_, index) => `;rod ${60 + index * 6}\n`).join('');
    await run(folder, rods, 'enter', 'MBRC003', '--keep-going');
    const took = await run(
      folder,
      '06:00-07:30 d MBRC003 0-54\n',
      'plod',
      'new',
      'KP9',
      '--shift',
      'RC7_2026-03-14_DAY',
    );
    expect(took.err).toBe('');
    const { out } = await run(folder, '', 'check', 'MBRC003');
    expect(out).toMatch(/MBRC003: Survey shot OVERDUE since 72 m: ask the driller for one\./);
    expect(out).toMatch(/RC7_2026-03-14_DAY: Plod not signed: KP9; (?:a query is|\d+ queries are) open\./);
  });
});
