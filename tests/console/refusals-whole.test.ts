import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { screenLines } from '../../src/console/screens/screen.ts';
import { sayingFinding } from '../../src/console/step.ts';
import { themeFor } from '../../src/console/theme.ts';
import type { Finding } from '../../src/finding/finding.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const THEME = themeFor({ colour: false, ascii: false });
const TEXTS = join(import.meta.dirname, '../errors/texts');

/** Every error of the catalogue: what is wrong and what to do. */
const ERRORS: readonly (readonly [code: string, problem: string, remedy: string])[] = readdirSync(TEXTS)
  .flatMap((file) => readFileSync(join(TEXTS, file), 'utf8').split(/^== /m).slice(1))
  .map((block) => {
    const [head = '', text = '', ...below] = block.trimEnd().split('\n');
    const remedy = below.filter((each) => !/^ {2}\|/.test(each)).map((each) => each.trim());
    return [head.split(' ')[0] ?? '', text.replace(/^.*?: /, ''), remedy.join(' ')] as const;
  });

const flat = (text: string) => text.replaceAll(/[│\s]+/g, ' ').trim();

function shownAt80(sitting: Sitting, problem: string, remedy: string): string {
  const state = sayingFinding(sitting.state(), { problem, remedy } as Finding);
  const lines = screenLines(state, { columns: 80, rows: 23 }, THEME);
  expect(lines).toHaveLength(23);
  return flat(lines.map((each) => each.map(({ text }) => text).join('')).join(' '));
}

describe('a refusal at 80×24', () => {
  it.each([
    ['the log', []],
    ['the survey', ['f6']],
    ['a list', ['f3']],
    ['the fields', ['f4']],
    ['the list of holes', ['f10']],
    ['the line-up', ['ctrl-y']],
    ['a question', ['f2']],
  ] as const)(
    'on %s is read to its end, the way out with it, whatever of the catalogue it is',
    async (_name, keys) => {
      const sitting = await sitDown(sampleFiles());
      sitting.press(...keys);
      expect(ERRORS.length).toBeGreaterThan(150);
      const cut = ERRORS.filter(([, problem, remedy]) => {
        const shown = shownAt80(sitting, problem, remedy);
        return !shown.includes(flat(remedy).slice(-60));
      });
      expect(cut.map(([code]) => code)).toEqual([]);
    },
  );

  it('of the line that is typed is read to its end too', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.type(';bag 46-47');
    const { text } = sitting.state().draft;
    expect(text).toBe(';bag 46-47');
    sitting.press('enter');
    const said = sitting.state().message?.text ?? '';
    expect(said).not.toBe('');
    expect(flat(sitting.screen(80, 24).join(' '))).toContain(flat(said));
  });
});
