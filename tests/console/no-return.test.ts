import { describe, expect, it } from 'vitest';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const AT = '2026-03-14T09:08:00+08:00';
const whole = (sitting: Sitting, columns = 80, rows = 24) =>
  sitting.screen(columns, rows).join(' ').replace(/\s+/g, ' ');
/** The right-hand panels at 80×24 as one text. */
const panel = (sitting: Sitting) =>
  sitting
    .screen(80, 24)
    .map((each) => each.slice(49, 79).trim())
    .join(' ');

describe('a metre of which nothing came up', () => {
  it('gives the caution of a loss of return as its code does, typed and saved, also where the metre above was one', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    const caution =
      'CAUTION no return: Broken ground or a void may be near. Tell the driller, and go by site procedures.';
    sitting.type('nr');
    expect(whole(sitting)).toContain(caution);
    sitting.press('enter');
    expect(whole(sitting)).toContain(caution);
    sitting.enter('nr');
    expect(whole(sitting)).toContain(caution);
    expect(sitting.state().message?.cautions).toEqual([caution]);
  });

  it('is named beside an expected void that comes near, and whom to call is read on a small screen', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    for (let metre = 46; metre < 53; metre++) sitting.enter('.');
    sitting.enter('nr');
    sitting.press('escape');
    expect(panel(sitting)).toMatch(
      /ASK: void: can’t tell, not all of the last 6 m seen: no return at 53–54: call Ines Falk, channel 4, go by the site procedure/,
    );
    expect(panel(sitting)).not.toMatch(/can’t tell, a void .* can’t be ruled out/);
    sitting.enter(';expect old stope 58-62 void');
    sitting.press('escape');
    expect(panel(sitting)).toMatch(
      /void: old stope could come at .* m, .* below the bit or less; not all of the last 6 m seen: no return at 53–54: call Ines Falk, channel 4/,
    );
  });
});
