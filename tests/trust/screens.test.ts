import { describe, expect, it } from 'vitest';
import { HOLE_SCREENS } from '../../src/console/keys/binding.ts';
import { KEYS } from '../../src/console/keys.ts';
import type { Prompt } from '../../src/console/prompt.ts';
import { PROMPTS } from '../../src/console/prompts.ts';
import { screenLines } from '../../src/console/screens/screen.ts';
import type { State } from '../../src/console/state.ts';
import { cellWidth } from '../../src/console/terminal/paint/cells.ts';
import { createPainter } from '../../src/console/terminal/paint/painter.ts';
import { themeFor } from '../../src/console/theme.ts';
import { paintedLine } from '../../src/console/widgets/frame.tsx';
import { lineWidth } from '../../src/console/widgets/line.ts';
import { formatLine } from '../../src/files/journal-line.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from '../console/support/sitting.ts';
import { hostileProject } from './hostile-files.ts';
import { HOSTILE, HOSTILE_TEXTS, obeyed } from './vectors.ts';

/** Every screen and question of the console, by the keys that lead to it from the log. */
const WAYS: readonly (readonly [name: string, keys: readonly string[]])[] = [
  ['log', []],
  ['earlier row', ['up', 'up']],
  ['by fields', ['f4']],
  ['rod check', ['f2']],
  ['bags', ['f3']],
  ['advice', ['f5']],
  ['survey', ['f6']],
  ['survey, plan', ['f6', 'p']],
  ['survey, section', ['f6', 's']],
  ['survey, shot', ['f6', 'n']],
  ['survey, run', ['f6', 'r']],
  ['codes', ['f7']],
  ['codes, a field', ['f7', ...Array.from({ length: 60 }, () => 'page-down'), 'enter']],
  ['shift', ['f8']],
  ['history', ['f9']],
  ['history, further down', ['f9', ...Array.from({ length: 6 }, () => 'page-down')]],
  ['whole row', ['f11']],
  ['activity', ['ctrl-a']],
  ['line-up', ['ctrl-y']],
  ['line-up, next step', ['ctrl-y', 'enter', 'enter']],
  ['end of hole', ['f12']],
  ['end of hole, what is open', ['f12', 'enter']],
  ['help', ['f1']],
  ['found on opening', ['ctrl-f']],
  ['found on opening, further down', ['ctrl-f', ...Array.from({ length: 8 }, () => 'page-down')]],
  ['holes', ['f10']],
  ['holes, suspend', ['f10', 's']],
  ['history, an earlier state', ['f9', 'left']],
  ['a range before it is changed', ['say ;44-45 p2', 'enter']],
  ['packed for camp', ['say ;pack MBRC003', 'enter']],
  ['received', ['say ;receive nowhere.zip', 'enter']],
  ['questions of two copies', ['say ;questions', 'enter']],
  ['what check finds', ['say ;check', 'enter']],
  ['a finding accepted', ['say ;check', 'enter', 'right']],
  ['readings of an instrument', ['say ;readings arsenic', 'enter']],
];

/** Every screen and every question that there is: the test asks for a way to a new one. */
const EVERY_SCREEN: readonly string[] = ['holes', ...HOLE_SCREENS];
const EVERY_QUESTION = Object.keys(PROMPTS);

const hostileDraft = { text: HOSTILE.join(' ').slice(0, 400), at: 0 };

/** Questions that a project of hostile texts does not come to by itself (no bag number of it fits): asked on the log all the same. */
const ASKED: readonly Prompt[] = [
  {
    kind: 'mismatch',
    rod: 10,
    depthMm: depthFromMm(60_000),
    lastDigits: HOSTILE[0] ?? '',
    looked: {} as never,
    page: 0,
    draft: hostileDraft,
  },
  { kind: 'dispatch', draft: hostileDraft },
  { kind: 'scanned', number: HOSTILE[0] ?? '', said: HOSTILE[1] ?? '', ground: HOSTILE[2] ?? '' },
  { kind: 'resplit' },
  { kind: 'undo', what: HOSTILE[1] ?? '', inHand: undefined },
  {
    kind: 'plod',
    shift: HOSTILE[2] ?? '',
    sheet: HOSTILE[3] ?? '',
    from: HOSTILE[5] ?? '',
    second: false,
    part: {},
    lines: [
      { text: HOSTILE[6] ?? '', line: { activity: HOSTILE[7] ?? '', minutes: 60, remark: HOSTILE[8] ?? '' } },
    ],
    gapShown: false,
    draft: hostileDraft,
  },
  { kind: 'leaving', open: [], draft: hostileDraft },
  { kind: 'leaving', open: HOSTILE.slice(0, 3), draft: hostileDraft },
  { kind: 'redrill', hole: HOSTILE[4] ?? '', draft: hostileDraft },
  { kind: 'reopen', hole: HOSTILE[9] ?? '', draft: hostileDraft },
];

const SIZES = [
  { columns: 100, rows: 29 },
  { columns: 80, rows: 23 },
] as const;
const THEMES = [themeFor({ colour: true, ascii: false }), themeFor({ colour: false, ascii: true })];

/** What the painter sends for a screen as it is, in every size and look; the width of each line is looked at too. */
function paintedBytes(state: State): string {
  let bytes = '';
  for (const size of SIZES) {
    for (const theme of THEMES) {
      const painter = createPainter(size, (text) => {
        bytes += text;
      });
      const lines = screenLines(state, size, theme);
      expect(Math.max(...lines.map(lineWidth))).toBeLessThanOrEqual(size.columns);
      painter.stream.write(lines.map((each) => paintedLine(each, theme)).join('\n'));
    }
  }
  return bytes;
}

/** Goes to a screen from the log, and leaves what was asked on the way. */
function goTo(sitting: Sitting, keys: readonly string[]): void {
  for (
    let left = 0;
    left < 6 && (sitting.state().screen.name !== 'log' || sitting.state().prompt !== undefined);
    left += 1
  )
    sitting.press(
      sitting.state().screen.name === 'holes' && sitting.state().prompt === undefined ? 'enter' : 'escape',
    );
  sitting.press('escape');
  for (const key of keys) {
    if (key.startsWith('say ')) for (const character of key.slice(4)) sitting.type(character);
    else if (key.length === 1) sitting.type(key);
    else sitting.press(key);
  }
}

/** Keys that end the program, or change what is shown on purpose. */
const LEAVING = ['leave', 'suspend'];

/** Screen and question as they are, by name. */
function standing({ state }: Sitting): string {
  const { screen, prompt } = state();
  return prompt === undefined ? screen.name : `${screen.name} / ${prompt.kind}`;
}

/** The sample with one hole of each kind of state, its shift and its dispatch: the other holes hold the same kinds of things. */
const FEW: Files = Object.fromEntries(
  Object.entries(sampleFiles()).filter(([path]) => !/MBRC00[12567]|RC7_2026-03-1[23]/.test(path)),
);
const { files: HOSTILE_FILES, put: PUT } = hostileProject(FEW, 0);

describe('a project in which every text is hostile', () => {
  it('sends the terminal nothing but our own sequences on any screen, whatever key is pressed there', async () => {
    expect(PUT).toBeGreaterThan(1000);
    const missing = formatLine({ begins: { generation: 1, next: 1, documents: ['hole/MBRC099'] } });
    const sitting = await sitDown({ ...HOSTILE_FILES, 'journal/000001.jsonl': missing });
    const seen = new Set<string>();
    const look = (name: string): void => {
      expect(obeyed(paintedBytes(sitting.state())), name).toBeUndefined();
      seen.add(standing(sitting));
    };
    for (const [name, keys] of WAYS) {
      goTo(sitting, keys);
      look(name);
    }
    const tried = new Set<string>();
    for (const [, keys] of WAYS) {
      goTo(sitting, keys);
      if (sitting.state().prompt !== undefined) continue;
      const here = sitting.state().screen.name;
      for (const { name, on, keys: chords } of KEYS) {
        const [chord] = chords;
        const works = on === 'any' || on.includes(here);
        if (chord === undefined || !works || tried.has(name) || LEAVING.includes(name)) continue;
        tried.add(name);
        goTo(sitting, [...keys, chord]);
        if (!seen.has(standing(sitting))) look(`${name} on ${here}`);
      }
    }
    goTo(sitting, []);
    for (const prompt of ASKED) {
      expect(obeyed(paintedBytes({ ...sitting.state(), prompt })), prompt.kind).toBeUndefined();
      seen.add(`log / ${prompt.kind}`);
    }
    const screens = new Set([...seen].map((each) => each.split(' / ')[0]));
    const questions = new Set([...seen].flatMap((each) => each.split(' / ')[1] ?? []));
    expect([...screens].sort()).toEqual([...EVERY_SCREEN].sort());
    expect([...questions].sort()).toEqual(EVERY_QUESTION.sort());
    await sitting.desk.close();
  });

  it('shows what is there, in a form that can be seen', async () => {
    const sitting = await sitDown(HOSTILE_FILES);
    sitting.press('f9');
    expect(sitting.screen().join('\n')).toMatch(/␛|<9B>|<202E>/);
    await sitting.desk.close();
  });
});

describe('hostile text that is typed or pasted', () => {
  it('is shown and never sent, on the entry line, in a question and in what is answered to it', async () => {
    const sitting = await sitDown(FEW);
    const places = [[], ['f4'], ['f6', 'n'], ['f12'], ['f10', 's']];
    for (const [index, [name, text]] of Object.entries(HOSTILE_TEXTS).entries()) {
      goTo(sitting, places[index % places.length] ?? []);
      for (const character of text.slice(0, 60).replaceAll('\r', '')) sitting.type(character);
      expect(obeyed(paintedBytes(sitting.state())), name).toBeUndefined();
      sitting.press('enter');
      expect(obeyed(paintedBytes(sitting.state())), `${name}, answered`).toBeUndefined();
    }
    await sitting.desk.close();
  });
});

it('the vectors are told from our own sequences: each of them raw is found', () => {
  for (const [name, text] of Object.entries(HOSTILE_TEXTS)) {
    const visible = ['combining heap', 'wide letters', 'one long word'].includes(name);
    expect(obeyed(text) === undefined, name).toBe(visible);
  }
  expect(HOSTILE.length).toBeGreaterThan(60);
  expect(cellWidth('輝石')).toBe(4);
});
