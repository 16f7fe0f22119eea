import { describe, expect, it } from 'vitest';
import { KEYS } from '../../src/console/keys.ts';
import type { Prompt } from '../../src/console/prompt.ts';
import { reduce } from '../../src/console/reduce.ts';
import { keyPress } from '../../src/console/terminal/input/keys.ts';
import { missingFile } from '../../src/files/findings.ts';
import { COMMANDS } from '../../src/shorthand/commands.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** MBRC003 in hand, half-way down, with holes that are over, abandoned and planned beside it. */
const sat = () => sitDown(sampleFiles(), '2026-03-14T10:00:00+08:00');

/** The cursor of the list of holes on a hole. */
function onHole(sitting: Sitting, hole: string): void {
  sitting.press('f10');
  const names = [...sitting.state().documents.values()]
    .filter(({ kind }) => kind === 'hole')
    .map(({ id }) => id)
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  sitting.press(...names.map(() => 'up'));
  sitting.press(...names.slice(0, names.indexOf(hole)).map(() => 'down'));
}

interface Asked {
  /** Leads to the question. */
  readonly open: (sitting: Sitting) => void;
  /** Answers that it refuses. */
  readonly refused: readonly string[];
  /** An answer that would be recorded, where anything could be changed. */
  readonly right?: string;
}

const BLANK = ' ';

/** Every question of the console that has a line, with what it refuses. A new kind of question has to say it here. */
const QUESTIONS: { readonly [kind in Prompt['kind']]: Asked | 'has no line' } = {
  rod: { open: (s) => s.press('f2'), refused: ['?', 'x6 x7', '@a'], right: '@60' },
  mismatch: {
    open: (s) => {
      s.press('f2');
      s.enter('999');
    },
    refused: ['?', '7', 'x'],
    right: 'fits',
  },
  accept: {
    open: (s) => s.press('f10', 'ctrl-o', 'right'),
    refused: [BLANK],
    right: 'seen at the rig',
  },
  preview: 'has no line',
  undo: 'has no line',
  'new hole': {
    open: (s) => {
      s.press('f10');
      s.type('n');
    },
    refused: ['MBRC003 270g -60 120', 'MBRC020 270 -60 120', BLANK],
    right: 'MBRC020 270g -60 120',
  },
  redrill: {
    open: (s) => {
      onHole(s, 'MBRC002');
      s.type('r');
    },
    refused: [BLANK],
    right: 'lost the first one',
  },
  state: {
    open: (s) => {
      onHole(s, 'MBRC003');
      s.type('s');
    },
    refused: [BLANK],
    right: 'compressor',
  },
  ending: { open: (s) => s.press('f12'), refused: ['sixty', '-4', BLANK] },
  'survey run': {
    open: (s) => {
      s.press('f6');
      s.type('r');
    },
    refused: ['9', 'gyro'],
  },
  shot: { open: (s) => s.enter(';shot'), refused: ['a', '60', '60 -600 400'], right: '53 -59.5 271.2 =' },
  rejection: {
    open: (s) => {
      s.press('f6');
      s.type('x');
    },
    refused: [BLANK],
    right: 'magnet in the rods',
  },
  'new code': { open: (s) => s.press('ctrl-k'), refused: ['?', 'BAS', BLANK], right: 'NEW new rock qz' },
  'change code': {
    open: (s) => {
      s.press('f7');
      s.press('enter', 'ctrl-u');
    },
    refused: [BLANK],
    right: 'another name',
  },
  'change field': {
    open: (s) => {
      s.press('f7');
      s.type('gold');
      s.press('end', 'enter', 'ctrl-u');
    },
    refused: [BLANK],
    right: 'grains of gold',
  },
  elsewhere: { open: (s) => s.enter(';elsewhere'), refused: [BLANK] },
  leaving: {
    open: (s) => {
      s.happen({ kind: 'health', health: { pending: 1 } });
      s.enter(';q');
    },
    refused: ['no', 'leav'],
  },
  missing: {
    open: (s) => {
      const gone = missingFile.at(
        { file: 'holes/MBRC001.json' },
        { problem: 'it is gone', remedy: 'Decide.' },
      );
      s.happen({ kind: 'found', found: [gone] });
      s.press('ctrl-f', 'enter');
    },
    refused: [BLANK],
    right: 'restore',
  },
  dispatch: {
    open: (s) => {
      s.enter(';dispatch');
      s.press('enter');
    },
    refused: ['999', '1', 'XX12', '900-910'],
    right: '301-305',
  },
  resplit: 'has no line',
  'hand over': { open: (s) => s.press('ctrl-g'), refused: ['Orla', BLANK], right: 'Orla Venn 30' },
  activity: 'has no line',
  plod: { open: (s) => s.enter(';plod 0999 Mick Tarrant'), refused: ['nonsense', 'x 25:00'] },
  'shift line': {
    open: (s) => {
      s.press('f8');
      s.type('z');
      s.press('ctrl-u');
    },
    refused: ['nonsense', 'breakdown 25:99'],
    right: 'breakdown',
  },
  scanned: 'has no line',
  'number bags': {
    open: (s) => {
      onHole(s, 'MBRC004');
      s.type('b');
    },
    refused: ['a b c', '1', 'MB000301 MB000310', 'XX1 XX2'],
    right: 'MB001601 MB001700',
  },
  reopen: {
    open: (s) => {
      onHole(s, 'MBRC001');
      s.type('o');
    },
    refused: [BLANK],
    right: 'deepened',
  },
};

const asked = (Object.entries(QUESTIONS) as [Prompt['kind'], Asked | 'has no line'][]).flatMap(
  ([kind, each]) => (each === 'has no line' ? [] : [{ kind, ...each }]),
);

/** What is on the line of the question in hand, or on the entry line. */
function line(sitting: Sitting): string {
  const { prompt, draft } = sitting.state();
  return prompt !== undefined && 'draft' in prompt ? prompt.draft.text : draft.text;
}

const isSaid = (sitting: Sitting) => ['warn', 'alert'].includes(sitting.state().message?.tone ?? '');

/** Enter where nothing may be changed: the state after it, and what was to be done. */
function enterReadOnly(sitting: Sitting) {
  const state = { ...sitting.state(), readOnly: 'another console has it open' };
  const world = { newId: sitting.desk.newId, now: state.now, ahead: false };
  const [after, effects] = reduce(state, { kind: 'key', event: keyPress('enter') }, world);
  return { state, after, effects };
}

describe('an answer that is refused stays as it was typed', () => {
  it.each(asked.flatMap(({ refused, ...each }) => refused.map((text) => ({ text, ...each }))))(
    '$kind: "$text"',
    async ({ kind, open, text }) => {
      const sitting = await sat();
      open(sitting);
      expect(sitting.state().prompt?.kind).toBe(kind);
      const was = sitting.state().documents;
      sitting.press('ctrl-u');
      sitting.type(text);
      sitting.press('enter');
      expect(sitting.state().prompt?.kind).toBe(kind);
      expect(isSaid(sitting)).toBe(true);
      expect(line(sitting)).toBe(text);
      expect(sitting.state().documents).toBe(was);
    },
  );

  it.each(asked.filter(({ right }) => right !== undefined))(
    '$kind where nothing may be changed: "$right"',
    async ({ kind, open, right = '' }) => {
      const sitting = await sat();
      open(sitting);
      expect(sitting.state().prompt?.kind).toBe(kind);
      sitting.press('ctrl-u');
      sitting.type(right);
      const { state, after, effects } = enterReadOnly(sitting);
      expect(effects).toEqual([]);
      expect(after.prompt).toEqual(state.prompt);
      expect(after.message?.text).toContain('another console has it open');
    },
  );
});

/** Every word behind `;` with what it refuses: said wrongly, or said rightly of what is not there. `none`: it refuses nothing that is typed. */
const WORDS: { readonly [word: string]: readonly string[] } = {
  u: [';u 3'],
  r: [';r 3'],
  q: [';q now'],
  rod: [';rod ?'],
  fix: [';fix ?'],
  dry: [';dry 46', ';dry 46-44'],
  moist: [';moist 46'],
  wet: [';wet 46'],
  recovery: [';recovery bad', ';recovery poor 46'],
  hygiene: [';hygiene z', ';hygiene cc'],
  mass: [';mass 44-45 bulk', ';mass 44-45 bulk 4000', ';mass 44-45 bag 3'],
  choose: [';choose salt', ';choose'],
  scan: [';scan 46', ';scan 46 1'],
  swap: [';swap ?', ';swap 999'],
  bit: [';bit 9', ';bit 999'],
  tick: [';tick ?', ';tick 999', ';tick 1'],
  photo: [';photo 3', ';photo 0 a.jpg', ';photo 99 a.jpg'],
  contaminated: [';contaminated 46'],
  numbered: [';numbered 1', ';numbered MB000301 MB000310', ';numbered XX1 XX9'],
  place: [';place ?', ';place 999'],
  shot: [';shot 60', ';shot 5000 -60 270'],
  run: [';run sideways'],
  reject: [';reject', ';reject 999 misread'],
  use: [';use', ';use 999 it is so'],
  plan: [';plan 270 -60', ';plan 270g 60 180 4'],
  expect: [';expect lode', ';expect lode none at all'],
  capped: [';capped now'],
  plugged: [';plugged now'],
  hold: [';hold'],
  extend: [';extend', ';extend to 20 deeper'],
  'not-lined-up': [';not-lined-up', ';not-lined-up it was'],
  stop: [';stop'],
  go: [';go on'],
  later: [';later'],
  bag: [';bag 46-47', ';bag 46-47 999', ';bag standard 999'],
  spoiled: [';spoiled 163', ';spoiled 999 torn'],
  spare: [';spare', ';spare 999 torn'],
  copy: [';copy 46', ';copy 46-44', ';copy 300-310'],
  shift: [';shift 44-46', ';shift 300-310 1'],
  clear: [';clear 46', ';clear 300-310'],
  insert: [';insert 46', ';insert 300-310'],
  split: [';split x', ';split 300.5'],
  merge: [';merge 44', ';merge 300-310'],
  activity: [';activity nonsense', ';activity drilling 25:99'],
  readings: [';readings moonlight'],
  resplit: [';resplit', ';resplit MB000614', ';resplit MB000614 MB000640'],
  pack: [],
  receive: [],
  plod: [],
  note: [';note swing 2026-13-01'],
  history: [';history nothing'],
  solid: [';solid 50-44', ';solid 300-310'],
  cavity: [';cavity 50-44', ';cavity 300-310'],
  elsewhere: [],
  'sign-off': [';sign-off all seen'],
  'open-again': [';open-again', ';open-again bags wrong'],
};

describe('a line of a word that is refused stays as it was typed', () => {
  it('every word of the entry line is looked at here, and every one that a key has too and that takes words', () => {
    const words = [
      ...COMMANDS.map(({ word }) => word),
      ...KEYS.flatMap(({ word, told }) => (word === undefined || told === undefined ? [] : [word])),
    ];
    expect(words.filter((word) => !Object.hasOwn(WORDS, word))).toEqual([]);
  });

  it.each(Object.values(WORDS).flat())('%s', async (text) => {
    const sitting = await sat();
    const was = sitting.state().documents;
    sitting.enter(text);
    expect(isSaid(sitting)).toBe(true);
    // A shot that is refused is asked about, with what was typed on the line of the question.
    expect(line(sitting)).toBe(sitting.state().prompt?.kind === 'shot' ? text.slice(';shot '.length) : text);
    expect(sitting.state().documents).toBe(was);
  });

  it.each([';44-46', ';300-310 py2', ';44-46 zz9', ';nonsense', 'zz9', 'p900', 'c', '??'])(
    'a line without a word too: %s',
    async (text) => {
      const sitting = await sat();
      sitting.enter(text);
      expect(isSaid(sitting)).toBe(true);
      expect(line(sitting)).toBe(text);
    },
  );

  it.each([
    'p3',
    ';wet',
    ';copy 44-45 =',
    ';activity breakdown',
    ';spoiled 507 torn',
    ';shot 53 -59.5 271.2 =',
    ';numbered MB001601 MB001700',
    ';hold called Ines Falk: zone open',
    ';plan 270g -60 180',
    ';expect lode 70-78',
    ';bit 138.6',
  ])('where nothing may be changed: %s', async (text) => {
    const sitting = await sat();
    sitting.type(text);
    const { state, after, effects } = enterReadOnly(sitting);
    expect(effects).toEqual([]);
    const asked = after.prompt?.kind === 'shot' ? `;shot ${after.prompt.draft.text}` : after.draft.text;
    expect(asked).toBe(state.draft.text);
    expect(after.message?.text).toContain('another console has it open');
  });
});

describe('a screen with a line of its own keeps what it refuses', () => {
  it('the line-up, at every step that is typed', async () => {
    const sitting = await sat();
    onHole(sitting, 'MBRC004');
    sitting.type('l');
    const typed = () => sitting.state().lineUps.get('MBRC004')?.typed.text;
    const step = () => sitting.state().lineUps.get('MBRC004')?.step;
    const RIGHT: { readonly [step: string]: string } = {
      permission: 'Mick Tarrant',
      way: '1',
      azimuth: '270',
      clinometer: '-60',
    };
    const seen = new Set<string>();
    for (let each = 0; each < 60 && step() !== 'result'; each += 1) {
      const now = step() ?? '';
      if (!seen.has(now)) {
        sitting.enter('?!');
        if (typed() !== '') {
          expect(isSaid(sitting), now).toBe(true);
          expect(typed(), now).toBe('?!');
          seen.add(now);
        }
        sitting.press('ctrl-u');
      }
      sitting.enter(RIGHT[now] ?? '');
    }
    expect([...seen]).toEqual(expect.arrayContaining(['cautions', 'permission', 'way', 'azimuth', 'collar']));
  });

  it('readings down the metres, and a value looked for in a form', async () => {
    const sitting = await sat();
    sitting.enter(';readings');
    sitting.enter('many');
    expect(isSaid(sitting)).toBe(true);
    expect(sitting.state().screen).toMatchObject({ name: 'readings', typed: { text: 'many' } });
    sitting.press('escape', 'escape', 'f4');
    sitting.enter('zzz');
    expect(isSaid(sitting)).toBe(true);
    expect(sitting.state().screen).toMatchObject({ name: 'fields', form: { typed: { text: 'zzz' } } });
  });

  it('a folder that can not be gone on in stays on its line', async () => {
    const sitting = await sat();
    sitting.enter(';elsewhere');
    sitting.enter('/project');
    for (let each = 0; each < 50 && !isSaid(sitting); each += 1) await new Promise(setImmediate);
    expect(sitting.state().message?.text).toContain('Not moved');
    expect(sitting.state().prompt).toMatchObject({ kind: 'elsewhere', moving: false });
    expect(line(sitting)).toBe('/project');
  });
});
