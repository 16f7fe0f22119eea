import { describe, expect, it } from 'vitest';
import { formFields } from '../../src/console/log/fields.ts';
import { rowsDown } from '../../src/hole/hole.ts';
import type { Cells } from '../../src/value/row.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** The sample project with a text on its log sheet, so that it has a field of every kind, and a rock that is retired. */
function files(): Files {
  const all = sampleFiles();
  const logging = JSON.parse(all['logging.json'] ?? '');
  logging.fields = [
    {
      name: 'driller',
      label: 'driller says',
      kind: 'text',
      required: false,
      carry: false,
      unsaid: 'not observed',
      canBeNone: false,
    },
  ];
  logging.lists.rocks.codes.push({ code: 'AND', retiredSince: '2026-01-01' });
  return { ...all, 'logging.json': JSON.stringify(logging) };
}
const sit = (): Promise<Sitting> => sitDown(files(), '2026-03-14T09:08:00+08:00');
const last = (sitting: Sitting): Cells => rowsDown(sitting.hole('MBRC003')).at(-1)?.[1].cells ?? {};

/** A value of each kind of field: one code with a second, a level, many codes with a level or a percent, and so on. */
const SEEN: Cells = {
  rock: { code: 'DOL', second: { code: 'BAS', percent: 30 } },
  weathering: { level: 2 },
  alteration: { levels: { CHL: 3, EPI: 1 } },
  sulphides: { percents: { PYR: 2, CCP: 'trace' } },
  veins: { percent: 10 },
  contact: { flag: true },
  gold: { number: 3 },
  driller: { text: 'hard, slow' },
};

describe('every kind of field', () => {
  it('is said on the entry line: pairs with their amounts run on, the rest goes by its name', async () => {
    const sitting = await sit();
    sitting.enter("doba30wx2cl3ed1py2hl,vn10ct gold'3 driller''hard, slow' =");
    expect(sitting.state().message?.tone).not.toBe('alert');
    expect(last(sitting)).toMatchObject(SEEN);
  });

  it('is said by fields, each where the form comes to it', async () => {
    const sitting = await sit();
    sitting.press('f4');
    const said: Readonly<Record<string, readonly string[]>> = {
      rock: ['do ba30'],
      weathering: ['2'],
      alteration: ['cl3', 'ed1'],
      sulphides: ['py2', 'hl,'],
      veins: ['10'],
      contact: ['yes'],
      gold: ['3'],
      driller: ['hard, slow'],
    };
    const hole = () => sitting.hole('MBRC003');
    const inHand = () => {
      const { screen } = sitting.state();
      if (screen.name !== 'fields') throw new Error(`on ${screen.name}`);
      return formFields(sitting.state(), hole())[screen.form.field];
    };
    const names = formFields(sitting.state(), hole()).map(({ name }) => name);
    for (const _ of names) {
      const field = inHand();
      for (const text of said[field?.name ?? ''] ?? []) {
        sitting.type(text);
        sitting.press('enter');
      }
      if (inHand()?.name === field?.name) sitting.press('tab');
    }
    sitting.press('f4');
    expect(last(sitting)).toMatchObject(SEEN);
  });

  it('leaves no column of readings among the fields of a row: those are typed down the metres', async () => {
    const sitting = await sit();
    sitting.press('f4');
    const names = formFields(sitting.state(), sitting.hole('MBRC003')).map(({ name }) => name);
    expect(names).toContain('driller');
    expect(names).not.toContain('magsus');
  });
});

describe('a retired code', () => {
  it('can’t be used again, by its pair or by its field, and is not picked in the form', async () => {
    const sitting = await sit();
    for (const typed of ['an', "rock'AND"]) {
      sitting.enter(typed);
      expect(sitting.state().message?.tone).toBe('alert');
      sitting.press('escape');
    }
    sitting.press('f4');
    expect(sitting.screen().join('\n')).not.toContain('andesite');
  });
});
