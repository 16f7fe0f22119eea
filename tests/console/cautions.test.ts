import { describe, expect, it, vi } from 'vitest';
import { rowsDown } from '../../src/hole/hole.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const lastRow = (sitting: Sitting) => rowsDown(sitting.hole('MBRC003')).at(-1)?.[1];
const sit = (files: Files = sampleFiles()): Promise<Sitting> => sitDown(files, '2026-03-14T09:08:00+08:00');
/** The screen as one text, so that words are found across its lines; boxes are left out. */
const words = (sitting: Sitting, columns = 80, rows = 24): string =>
  sitting
    .screen(columns, rows)
    .join(' ')
    .replace(/[│┌┐└┘├┤─|+-]/g, ' ')
    .replace(/\s+/g, ' ');

const SILICA =
  'Dust from this holds fine silica. Wear what site procedures ask for, and keep out of the dust.';
const FIBRE =
  'May hold fibrous amphibole or serpentine. Follow site procedures for fibre; no warning is no clearance.';

describe('the hints of the starter style, as the screen of codes shows them', () => {
  it('speak of acid with its caution, and invite no one to taste, strike or shine at anything', async () => {
    const sitting = await sit();
    sitting.press('f7');
    sitting.type('fizz');
    const found = words(sitting);
    expect(found).toContain('A few slow bubbles. Acid: goggles, gloves, its data sheet');
    for (const each of found.split('Acid:').slice(1))
      expect(each).toMatch(/^ goggles, gloves, its data sheet/);
    sitting.press('escape');
    let all = '';
    for (let page = 0; page < 30; page += 1) {
      all += words(sitting);
      sitting.press('page-down');
    }
    expect(all).toContain('basalt');
    expect(all).toContain('arsenopyrite');
    expect(all).not.toMatch(/\b(taste|chew|teeth|tongue|lick|sniff|strike|struck|hammer|UV|lamp\b)/i);
  });
});

describe('the cautions of a row', () => {
  it('are all on the screen while it is typed and once it is logged, first, and none is cut', async () => {
    const sitting = await sit();
    sitting.type('chte1');
    for (const size of [
      [80, 24],
      [100, 30],
    ] as const) {
      const typed = words(sitting, ...size);
      expect(typed).toContain(`CAUTION chert: ${SILICA}`);
      expect(typed).toContain(`CAUTION actinolite: ${FIBRE}`);
      expect(typed.indexOf('CAUTION actinolite')).toBeLessThan(typed.indexOf('→chert'));
      expect(sitting.screen(...size)).toHaveLength(size[1] - 1);
    }
    sitting.press('enter');
    expect(lastRow(sitting)?.cells.rock).toEqual({ code: 'CHE' });
    expect(words(sitting)).toContain(`CAUTION actinolite: ${FIBRE} CAUTION chert: ${SILICA}`);
  });

  it('go on being shown in short while what they are about goes on', async () => {
    const sitting = await sit();
    sitting.enter('chte1');
    sitting.enter('p3');
    expect(words(sitting)).toContain('CAUTION as above: chert (silica dust), actinolite (fibre)');
  });

  it('come before whatever else is said of the row', async () => {
    const sitting = await sit();
    sitting.press('f4');
    sitting.type('ch');
    sitting.press('enter');
    expect(words(sitting)).toContain(`CAUTION chert: ${SILICA}`);
    sitting.press('f4');
    const said = words(sitting);
    expect(said).toContain('would have done the same');
    expect(said.indexOf(SILICA)).toBeLessThan(said.indexOf('would have done the same'));
  });

  it('are shown of what is picked, and marked in the list', async () => {
    const sitting = await sit();
    sitting.press('f4');
    sitting.type('chert');
    expect(words(sitting)).toContain('CAUTION Dust from this holds fine silica.');
    expect(words(sitting)).toContain('! chert');
  });

  it('are shown of flags and of levels of a scale as well as of codes', async () => {
    const files = sampleFiles();
    const logging = JSON.parse(files['logging.json'] ?? '{}');
    logging.fields = [
      ...(logging.fields ?? []),
      {
        name: 'gas',
        label: 'gas smelt',
        kind: 'flag',
        pair: 'xg',
        required: false,
        carry: false,
        unsaid: 'none',
        canBeNone: true,
        caution: { kind: 'other', words: 'Gas: walk upwind and tell the driller, as site procedures say.' },
      },
    ];
    logging.scales = {
      ...(logging.scales ?? {}),
      magnetism: {
        label: 'magnetism',
        levels: [
          { level: 1, label: 'weak', look: '' },
          {
            level: 2,
            label: 'strong',
            look: '',
            caution: { kind: 'fibre', words: 'Fibre goes with this here: site procedures.' },
          },
        ],
      },
    };
    const sitting = await sit({ ...files, 'logging.json': JSON.stringify(logging) });
    sitting.press('escape');
    sitting.type('p3xgma2');
    const said = words(sitting);
    expect(said).toContain('CAUTION gas smelt: Gas: walk upwind');
    expect(said).toContain('CAUTION magnetism strong: Fibre goes with this here');
  });

  it('are on the page of the whole row', async () => {
    const sitting = await sit();
    sitting.enter('chte1');
    sitting.press('f11');
    expect(words(sitting)).toContain(`CAUTION actinolite: ${FIBRE} CAUTION chert: ${SILICA}`);
  });
});

describe('a void', () => {
  it('is logged by two letters, carries nothing in and nothing out, and is never asked about', async () => {
    const sitting = await sit();
    const before = lastRow(sitting);
    sitting.enter('vr');
    const row = lastRow(sitting);
    expect(row?.cells.rock).toEqual({ code: 'VOI' });
    expect(row?.asked).toBeUndefined();
    expect(row?.carried).toBeUndefined();
    const others = Object.entries(row?.cells ?? {}).filter(([field]) => field !== 'rock');
    expect(others.map(([, cell]) => cell)).toEqual(others.map(() => ({ absent: 'not observed' })));
    expect(words(sitting)).toContain('CAUTION void or old workings: Tell the driller and call at once');
    // A dot could mean that the void goes on: it is asked about, and = takes the last metre that was seen.
    sitting.enter('.');
    expect(lastRow(sitting)?.cells.rock).toEqual({ code: 'VOI' });
    sitting.enter('=');
    expect(lastRow(sitting)?.cells).toEqual(before?.cells);
  });

  it('is known to the void rule as soon as it is logged', async () => {
    const sitting = await sit();
    sitting.enter('vr');
    expect(sitting.screen(80, 24).join(' ')).toContain('void logged at');
    sitting.press('f5');
    expect(words(sitting, 100, 60)).toContain('void logged at 46–47, 7 m above the bit');
  });

  it('may be one that the lists lack: the question for a new code takes the kind of its caution', async () => {
    const sitting = await sit();
    sitting.enter(';code');
    sitting.type('collapsed stope, void');
    expect(words(sitting)).toContain('CAUTION Tell the driller and call at once, as site procedures say.');
    sitting.press('enter');
    await vi.waitFor(() => expect(sitting.state().prompt).toBeUndefined());
    const codes = Object.values(sitting.state().project.schema.lists).flatMap((list) => list.codes);
    const code = codes.find((each) => each.label === 'collapsed stope');
    expect(code?.caution?.kind).toBe('void');
    sitting.enter(`${code?.pair}`);
    expect(lastRow(sitting)?.cells.weathering).toEqual({ absent: 'not observed' });
  });
});

it('a loss of return carries nothing in and nothing out either', async () => {
  const sitting = await sit();
  const before = lastRow(sitting);
  sitting.enter('ln');
  expect(lastRow(sitting)?.cells).toMatchObject({
    rock: { code: 'LOR' },
    sulphides: { absent: 'not observed' },
  });
  sitting.enter('.');
  sitting.enter('=');
  expect(lastRow(sitting)?.cells).toEqual(before?.cells);
});

it('plan and section show every expected hazard and the planned depth, below what is drilled', async () => {
  const sitting = await sit();
  sitting.press('f6');
  for (const view of ['p', 's']) {
    sitting.press(view);
    for (const size of [
      [80, 24],
      [100, 30],
    ] as const) {
      const screen = sitting.screen(...size);
      const drawing = screen.slice(
        2,
        screen.findIndex((each) => each.includes('one scale both ways')),
      );
      expect(drawing.join('')).toContain('!');
      expect(screen.join(' ')).toContain('! old stope');
    }
  }
});
