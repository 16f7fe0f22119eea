import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { shiftThings } from '../../src/shift/shift.ts';
import { copyOfSample, hear } from '../commands/support/outside.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** A shift of 05:32–17:40 with a hole drilled to 150 m. */
const ID = 'RC7_2026-03-13_DAY';

/** Lines above, the line that can't be, what is wrong with it, what to do. */
const LINES = [
  [
    'overlapping times',
    ['0532-0600 p'],
    '0550-0613 l',
    'it overlaps line 1, prestart 05:32–06:00, by 0:10 h',
    'Read the sheet again. If it says so, type = at the end; it is queried later.',
  ],
  [
    'backward times',
    ['0532-0700 p'],
    '0900-0800 d',
    '09:00–08:00 runs backward',
    'Give the time it started, then the time it ended: 06:00-07:30.',
  ],
  ['no time at all', [], '0900-0900 d', '09:00–09:00 takes no time', 'Give the time it started'],
  ['times far past the shift', [], '0600-2330 d', '06:00–23:30 runs backward', 'Give the time it started'],
  [
    'metres beyond the hole',
    ['0532-0700 d mbrc001 0-54'],
    '-0900 d -162',
    'it claims 54–162, 108 m, and MBRC001 is drilled to 150 m',
    'Read the sheet again. If it says so, type = at the end',
  ],
  [
    'metres that another line has',
    ['0532-0700 d mbrc001 0-54'],
    '-0900 d 48-60',
    'its metres are on line 1 already',
    'Read the sheet again.',
  ],
  [
    'metres upside down',
    [],
    '0532-0700 d mbrc001 60-54',
    'its metres end at or above where they start, 60–54',
    'Give both: 54-72.',
  ],
  [
    'metres of no hole',
    [],
    '0532-0700 d 0-54',
    'it has metres or shots, but no hole',
    'Ask the driller which hole it was.',
  ],
  [
    'an unknown activity',
    ['0532-0600 p'],
    '-0700 fishing',
    'fishing is not read',
    'Type it like 06:00-07:30 d',
  ],
  ['no activity', ['0532-0600 p'], '-0700', 'no activity is named', 'Name one: drilling, survey,'],
] as const;

const count = (sitting: Sitting): number => {
  const shift = sitting.state().documents.get(`shift/${ID}`);
  return shift === undefined ? 0 : shiftThings(shift, 'plods').length;
};
/** A message begins with a capital, wherever its sentence came from. */
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

async function at(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T18:00:00+08:00');
  sitting.press('f8', 'left');
  return sitting;
}

async function run(folder: string, args: readonly string[], stdin = '') {
  const heard = hear(stdin);
  const code = await runCommandLine([...args, '--shift', ID, '--project', folder], {
    outside: heard.outside,
    openConsole: async () => 0,
  });
  return { code, out: heard.out(), err: heard.err() };
}

describe.each(LINES)('a line of a plod with %s', (_name, above, line, problem, remedy) => {
  it('is named at the console with the remedy; the line and those above stay', async () => {
    const sitting = await at();
    sitting.press('ctrl-p');
    for (const typed of ['0413', ...above, line]) sitting.enter(typed);
    const said = sitting.state().message?.text ?? '';
    expect(said).toContain(capital(problem));
    expect(said).toContain(remedy);
    expect(sitting.state().prompt).toMatchObject({
      kind: 'plod',
      lines: above.map((text) => ({ text })),
      draft: { text: line },
    });
    expect(count(sitting)).toBe(0);
  });

  it('is named by the command with its number and the remedy; nothing of the sheet is recorded', async () => {
    const folder = copyOfSample();
    const { code, err } = await run(folder, ['plod', 'new', '0413'], [...above, line].join('\n'));
    expect(code).toBe(1);
    expect(err).toContain(`line ${above.length + 1}: ${problem}`);
    expect(err).toContain(remedy);
    expect((await run(folder, ['plod', 'sign', '0413'])).err).toContain('no such sheet');
  });
});

describe('an activity that the project has not', () => {
  it('is taken as the sheet calls it, in quotes, and queried: no one has to leave it out', async () => {
    const sitting = await at();
    sitting.press('ctrl-p');
    for (const typed of ['0413', "0532-1740 'fishing'", '']) sitting.enter(typed);
    expect(count(sitting)).toBe(1);
    expect(
      sitting
        .screen(100, 60)
        .join(' ')
        .replaceAll(/[│\s]+/g, ' '),
    ).toContain(
      'fishing is not an activity of this project, so its 12:08 h are in no total. Ask the driller',
    );
  });
});

describe('a shift that has a sheet', () => {
  it('takes no other by mistake: which one is there is said, and the lines typed stay', async () => {
    const sitting = await at();
    for (const sheet of ['0413', '0414']) {
      sitting.press('ctrl-p');
      for (const typed of [sheet, '0532-1740 s', '']) sitting.enter(typed);
    }
    const said = sitting.state().message?.text ?? '';
    expect(said).toContain('Sheet 0413 is recorded for it already.');
    expect(said).toContain(
      'If it adds to the first, put = after its number (--second); else withdraw 0413 first.',
    );
    expect(sitting.state().prompt).toMatchObject({ kind: 'plod', lines: [{ text: '0532-1740 s' }] });
    expect(count(sitting)).toBe(1);
  });

  it('takes the same sheet no second time', async () => {
    const folder = copyOfSample();
    expect((await run(folder, ['plod', 'new', '0413'], '05:32-17:40 s\n')).code).toBe(0);
    const { code, err } = await run(folder, ['plod', 'new', '0413', '--second'], '05:32-17:40 s\n');
    expect([code, err]).toEqual([1, expect.stringContaining('this sheet is recorded already')]);
    expect(err).toContain('Check the number, or withdraw the first one.');
  });

  it('that is signed is neither withdrawn nor followed by another, and says what changed after it', async () => {
    const folder = copyOfSample();
    await run(folder, ['plod', 'new', '0413'], '05:32-17:40 s\n');
    await run(folder, ['plod', 'sign', '0413']);
    for (const [args, problem, remedy] of [
      [['plod', 'withdraw', '0413'], 'it is signed', 'Agree a new sheet with the driller and record that.'],
      [
        ['plod', 'new', '0414'],
        'sheet 0413 is recorded for it already, and signed',
        'If it adds to the signed one, put = after its number (--second).',
      ],
    ] as const) {
      const { code, err } = await run(folder, args, '05:32-17:40 s\n');
      expect(code).toBe(1);
      expect(err).toContain(problem);
      expect(err).toContain(remedy);
    }
    // Our own record may still be put right: the signature then shows both figures.
    expect((await run(folder, ['activity', '05:58', 'standby', 'by', 'Ines', 'Falk'])).code).toBe(0);
    const heard = hear();
    await runCommandLine(['shift', ID, '--project', folder], {
      outside: heard.outside,
      openConsole: async () => 0,
    });
    expect(heard.out()).toMatch(
      /0413 signed by NOK 2026-03-14 09:30 at [\d,.]+ by the record and [\d,.]+ by the plod; now it is .*Changed since: hours/,
    );
  });
});
