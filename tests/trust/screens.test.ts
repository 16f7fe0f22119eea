import { describe, expect, it } from 'vitest';
import { cellWidth } from '../../src/console/paint/cells.ts';
import { createPainter } from '../../src/console/paint/painter.ts';
import { screenLines } from '../../src/console/screens/screen.ts';
import { themeFor } from '../../src/console/theme.ts';
import { paintedLine } from '../../src/console/widgets/frame.tsx';
import { lineWidth } from '../../src/console/widgets/line.ts';
import { type Sitting, sampleFiles, sitDown } from '../console/support/sitting.ts';
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
];

/** The screens that these ways must have come to, and screens with a question over them. */
const SCREENS = [
  ...[
    'log',
    'fields',
    'bags',
    'advice',
    'survey',
    'codes',
    'shift',
    'history',
    'row',
    'line-up',
    'help',
    'holes',
  ],
  ...['log, asked', 'survey, asked', 'holes, asked'],
];

const SIZES = [
  { columns: 100, rows: 29 },
  { columns: 80, rows: 23 },
] as const;
const THEMES = [themeFor({ colour: true, ascii: false }), themeFor({ colour: false, ascii: true })];

/** What the painter sends for a screen as it stands, in every size and look; the width of each line is looked at too. */
function paintedBytes(sitting: Sitting): string {
  let bytes = '';
  for (const size of SIZES) {
    for (const theme of THEMES) {
      const painter = createPainter(size, (text) => {
        bytes += text;
      });
      const lines = screenLines(sitting.state(), size, theme);
      for (const each of lines) expect(lineWidth(each)).toBeLessThanOrEqual(size.columns);
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
    if (key.length === 1) sitting.type(key);
    else sitting.press(key);
  }
}

describe('a project in which every text is hostile', () => {
  it('sends the terminal nothing but our own sequences on any screen', async () => {
    const { files, put } = hostileProject(sampleFiles(), 0);
    expect(put).toBeGreaterThan(4000);
    const sitting = await sitDown(files);
    const seen = new Set<string>();
    for (const [name, keys] of WAYS) {
      goTo(sitting, keys);
      const { screen, prompt } = sitting.state();
      seen.add(prompt === undefined ? screen.name : `${screen.name}, asked`);
      expect(obeyed(paintedBytes(sitting)), name).toBeUndefined();
    }
    for (const screen of SCREENS) expect([...seen]).toContain(screen);
    await sitting.desk.close();
  });

  it('shows what is there, in a form that can be seen', async () => {
    const sitting = await sitDown(hostileProject(sampleFiles(), 0).files);
    sitting.press('f9');
    expect(sitting.screen().join('\n')).toMatch(/␛|<9B>|<202E>/);
    await sitting.desk.close();
  });
});

describe('hostile text that is typed or pasted', () => {
  it('is shown and never sent, on the entry line, in a question and in what is answered to it', async () => {
    const sitting = await sitDown(sampleFiles());
    const places = [[], ['f4'], ['f6', 'n'], ['f12'], ['f10', 's']];
    for (const [index, [name, text]] of Object.entries(HOSTILE_TEXTS).entries()) {
      goTo(sitting, places[index % places.length] ?? []);
      for (const character of text.slice(0, 60).replaceAll('\r', '')) sitting.type(character);
      expect(obeyed(paintedBytes(sitting)), name).toBeUndefined();
      sitting.press('enter');
      expect(obeyed(paintedBytes(sitting)), `${name}, answered`).toBeUndefined();
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
