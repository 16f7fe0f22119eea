import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../../src/hole/hole.ts';
import type { Cells } from '../../../src/value/row.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const code = (name: string, label: string, pair: string, more: object = {}) => ({
  code: name,
  label,
  look: '',
  pair,
  ...more,
});

/** The sample project with textures, styles of alteration, a third rock, and events; what lies in its holes stays as it is. */
function files(): Files {
  const all = sampleFiles();
  const logging = JSON.parse(all['logging.json'] ?? '');
  const plain = { required: false, unsaid: 'none', canBeNone: true };
  logging.fields = [
    { name: 'rock', third: true },
    { name: 'alteration', qualifiers: [{ list: 'styles' }] },
    { name: 'habit', notAcross: ['rock'] },
    { ...plain, name: 'texture', label: 'texture', kind: 'codes', list: 'textures', carry: true },
    { ...plain, name: 'events', label: 'events', kind: 'events', list: 'events', carry: false },
  ];
  logging.lists.styles = {
    label: 'styles of alteration',
    codes: [code('PVS', 'pervasive', 'jv'), code('SLV', 'in selvages', 'jp')],
  };
  logging.lists.textures = {
    label: 'textures',
    codes: [code('VUG', 'vuggy', 'jy'), code('SPH', 'spherulitic', 'jr')],
  };
  logging.lists.events = {
    label: 'events',
    codes: [
      code('WST', 'water strike', 'jw', { measure: { unit: 'L/s', min: 0, max: 60, decimals: 1 } }),
      code('TFR', 'top of fresh rock', 'jn'),
    ],
  };
  return { ...all, 'logging.json': JSON.stringify(logging) };
}
const sit = (): Promise<Sitting> => sitDown(files(), '2026-03-14T09:08:00+08:00');
const rows = (sitting: Sitting) => rowsDown(sitting.hole('MBRC003'));
const last = (sitting: Sitting): Cells => rows(sitting).at(-1)?.[1].cells ?? {};
const shown = (sitting: Sitting, columns = 100, lines = 30) => sitting.screen(columns, lines).join('\n');

/** What is said in each of the ways below. */
const SEEN: Cells = {
  texture: { codes: { VUG: true, SPH: true } },
  alteration: expect.objectContaining({ qualified: { CHL: { styles: 'PVS' } } }) as never,
};

describe('what a geologist sees', () => {
  it('is said on the line, read back before Enter, logged, and stands in the row and the legend', async () => {
    const sitting = await sit();
    const top = rows(sitting).at(-1)?.[1].toMm ?? 0;
    sitting.type(`cl2jvjyjrjw2@${(top + 600) / 1000}`);
    for (const [columns, lines] of [
      [80, 24],
      [100, 30],
    ] as const) {
      expect(shown(sitting, columns, lines)).toContain('chlorite');
      expect(shown(sitting, columns, lines)).toMatch(/water strike 2 L\/s at/);
    }
    sitting.enter(' =');
    expect(sitting.state().message?.tone).not.toBe('alert');
    expect(last(sitting)).toMatchObject({
      ...SEEN,
      events: { events: { WST: { atMm: top + 600, number: 2 } } },
    });
    // The column of events has no room at 80 columns: the row is marked all the same.
    const line = sitting.screen(80, 24).find((each) => each.includes(`${top / 1000}   ${top / 1000 + 1} `));
    expect(line).toMatch(/\d {2,3}@/);
    const legend = sitting.hole('MBRC003').tables.legendCodes ?? {};
    expect(legend['styles PVS']).toMatchObject({ label: 'pervasive' });
    expect(legend['events WST']).toMatchObject({ label: 'water strike', unit: 'L/s' });
    sitting.press('f11');
    expect(shown(sitting)).toMatch(/events.*water strike 2 L\/s/);
  });

  it('is said by fields: a mineral, what more there is to it, textures one after the other', async () => {
    const sitting = await sit();
    sitting.press('f4');
    const at = (label: string) => {
      for (let tries = 0; tries < 40 && !new RegExp(`▸${label}`).test(shown(sitting)); tries += 1)
        sitting.press('tab');
      expect(shown(sitting)).toMatch(new RegExp(`▸${label}`));
    };
    at('alteration');
    sitting.type('cl2');
    sitting.press('enter');
    sitting.type('perv');
    sitting.press('enter');
    at('texture');
    sitting.type('vug');
    sitting.press('enter');
    sitting.type('sph');
    sitting.press('enter');
    sitting.press('f4');
    if (sitting.state().message?.tone === 'warn') sitting.enter(' =');
    expect(last(sitting)).toMatchObject(SEEN);
  });

  it('is put into a logged row by its depth behind ;, and undone like any edit', async () => {
    const sitting = await sit();
    const [id, row] = rows(sitting).at(-2) ?? [];
    const depth = ((row?.fromMm ?? 0) + 300) / 1000;
    sitting.enter(`;at ${depth} jw4 =`);
    if (sitting.state().prompt !== undefined) sitting.press('enter');
    const cells = () => rows(sitting).find(([each]) => each === id)?.[1].cells;
    expect(cells()?.events).toEqual({ events: { WST: { atMm: depth * 1000, number: 4 } } });
    sitting.enter(';u');
    expect(cells()?.events).toBeUndefined();
  });

  it('is left behind at a contact where it does not carry across one, and the echo says so', async () => {
    const sitting = await sit();
    sitting.enter('p3hl1de =');
    expect(last(sitting).habit).toEqual({ code: 'DIS' });
    sitting.type('do');
    expect(shown(sitting)).toContain('(not across a change of rock)');
    sitting.enter('ba30sh20 =');
    expect(last(sitting).rock).toEqual({
      code: 'DOL',
      second: { code: 'BAS', percent: 30 },
      third: { code: 'SHA', percent: 20 },
    });
    expect(last(sitting).habit).toEqual({ absent: 'not observed' });
  });
});
