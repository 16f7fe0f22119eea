import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { surveyPage, surveySvg } from '../../src/commands/survey-page.ts';
import { WHAT_IT_IS_NOT } from '../../src/finding/what-it-is-not.ts';
import { qualityPage } from '../../src/sampling/laboratory/quality-page.ts';
import { bagRunHtml } from '../../src/sampling/numbers/bag-run.ts';
import { bagSheetHtml, cribHtml, logSheetHtml } from '../../src/schema/print/sheets.ts';
import { sampleFiles, sitDown } from '../console/support/sitting.ts';
import { resolveStyle } from '../support/styles.ts';

const SRC = join(import.meta.dirname, '../../src');
const oneLine = (text: string): string =>
  text
    .replace(/<[^>]+>/g, ' ')
    .replace(/[│┌┐└┘─]/g, ' ')
    .replace(/\s+/g, ' ');
const style = resolveStyle('orogenic-gold')!;

describe('what offsider is not', () => {
  test('is said in one paragraph that names what comes first, and is written in one place', () => {
    for (const words of [
      'induction',
      'site procedure',
      'local code',
      'licensed practice',
      'competent person',
      'only the driller',
      'no warning is no clearance',
    ])
      expect(WHAT_IT_IS_NOT).toContain(words);
    const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((path) =>
      path.endsWith('.ts'),
    );
    const holding = files.filter((path) =>
      readFileSync(join(SRC, path), 'utf8').includes('It replaces no induction'),
    );
    expect(holding).toEqual(['finding/what-it-is-not.ts']);
  });

  it('heads F1', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    for (const [columns, rows] of [
      [80, 24],
      [100, 30],
    ] as const) {
      sitting.press('f1');
      const screen = sitting.screen(columns, rows).join(' ');
      expect(oneLine(screen)).toContain(WHAT_IT_IS_NOT);
      sitting.press('escape');
    }
  });

  it('is on every page that is printed', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    const { project, documents } = sitting.state();
    const hole = sitting.hole('MBRC003');
    const pages = {
      crib: cribHtml(style),
      'log sheet': logSheetHtml(style, { hole: 'MBRC003', fromMm: 0, intervalMm: 1000, rows: 3 }),
      'bag sheet': bagSheetHtml({ hole: 'MBRC003', lines: [] }),
      'bag run': bagRunHtml([], 'bags'),
      controls: qualityPage(
        { title: 'controls', lines: [] },
        { standards: [], blanks: [], pairs: [] } as never,
        [],
      ),
      survey: surveyPage(project, hole, documents.values()),
      'plan alone': surveySvg(project, hole, 'plan') ?? '',
      'section alone': surveySvg(project, hole, 'section') ?? '',
    };
    for (const [name, page] of Object.entries(pages)) expect(oneLine(page), name).toContain(WHAT_IT_IS_NOT);
  });

  test('is on whatever writes a page: every place that begins an HTML page names it', () => {
    const writers = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.ts'))
      .map((path) => [path, readFileSync(join(SRC, path), 'utf8')] as const)
      .filter(([, text]) => /<html\b/i.test(text));
    expect(writers.length).toBeGreaterThan(4);
    expect(
      writers.filter(([, text]) => !text.includes('{WHAT_IT_IS_NOT_HTML}')).map(([path]) => path),
    ).toEqual([]);
  });
});
