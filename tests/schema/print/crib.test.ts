import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { cautionsOfSchema } from '../../../src/schema/cautions.ts';
import { cribLines, cribSections } from '../../../src/schema/print/crib.ts';
import { bagSheetHtml, cribHtml, logSheetHtml } from '../../../src/schema/print/sheets.ts';
import { strokesOf } from '../../../src/schema/strokes.ts';
import { resolveStyle } from '../../support/styles.ts';

const style = resolveStyle('orogenic-gold')!;

describe('the crib', () => {
  it('has everything that can be typed, with its pair, its key and its words', () => {
    const text = cribLines(style, 100).join('\n');
    for (const { strokes, is, label } of strokesOf(style).filter((each) => each.code !== undefined)) {
      const shown = is === 'key' ? ` ${strokes} ${label}` : strokes;
      expect(text, `${strokes} ${label}`).toContain(shown);
    }
    expect(text).toContain('cl c chlorite');
    expect(text).toMatch(/wx6( u6)? residual soil/);
    expect(text).toContain('tx silcrete');
    expect(text).toContain("magsus' or down the column");
  });

  it('fits one page of 100 columns and 60 lines, and the width it is given', () => {
    expect(cribLines(style, 100).length).toBeLessThanOrEqual(60);
    for (const width of [80, 100, 132])
      for (const line of cribLines(style, width)) expect(stringWidth(line)).toBeLessThanOrEqual(width);
  });

  it('begins with every caution in full, and marks what each is about', () => {
    const text = cribLines(style, 100).join(' ').replace(/\s+/g, ' ');
    for (const { caution } of cautionsOfSchema(style)) expect(text).toContain(caution.words);
    expect(text).toContain('te actinolite !fibre');
    expect(text).toContain('ch chert !silica');
    expect(text).toContain('vr void or old workings !void');
    expect(text.indexOf('CAUTION')).toBe(0);
    const html = cribHtml(style);
    for (const { caution } of cautionsOfSchema(style)) expect(html).toContain(caution.words);
    expect(html.indexOf('class="caution"')).toBeLessThan(html.indexOf('<section>'));
  });

  it('leaves retired codes out', () => {
    const rocks = style.lists.rocks!;
    const codes = rocks.codes.map((code) => ({ ...code, retiredSince: '2026-01-01' }));
    const [rock] = cribSections({ ...style, lists: { ...style.lists, rocks: { ...rocks, codes } } });
    expect(rock?.items).toEqual([]);
  });

  it('prints as a page of its own', () => {
    const html = cribHtml(style);
    expect(html).toContain('<dt>py p</dt><dd>pyrite</dd>');
    expect(html.startsWith('<!doctype html>')).toBe(true);
  });
});

describe('blank sheets', () => {
  it('have a line a row and a column a field', () => {
    const html = logSheetHtml(style, { hole: 'ZQRC004', fromMm: 40_000, intervalMm: 2000, rows: 3 });
    expect(html.match(/<tr>/g)).toHaveLength(4);
    expect(html.match(/<th>/g)).toHaveLength(style.fields.length + 2);
    expect(html).toContain('<td>44–46</td>');
  });

  it('have a line a bag, with what belongs in it', () => {
    const html = bagSheetHtml({ hole: 'ZQRC004', lines: [{ number: 'ZQ000166', what: 'STANDARD' }] });
    expect(html).toContain('<td>ZQ000166</td><td>STANDARD</td><td></td>');
  });

  it('never take text from a file for markup, and show what can’t be seen', () => {
    const html = bagSheetHtml({ hole: '<script>"&\u202e\u001b', lines: [] });
    expect(html).toContain('&lt;script&gt;&quot;&amp;\ufffd\ufffd');
    expect(html).not.toContain('<script>');
  });
});
