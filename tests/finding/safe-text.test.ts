import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { safeJson, safeLines, safeText } from '../../src/finding/safe-text.ts';
import { runs } from '../support/long-run.ts';

const ascii = { ascii: true };

describe('text made safe to show', () => {
  it('shows what was there: C0 controls by their pictures, everything else by its code', () => {
    expect(safeText('a\x1b[31mb')).toBe('a␛[31mb');
    expect(safeText('\x07\b\r\n\t\0\x7f')).toBe('␇␈␍␊␉␀␡');
    expect(safeText('\u009b31m\u0085')).toBe('<9B>31m<85>');
    expect(safeText('\u202egnp.exe\u202c')).toBe('<202E>gnp.exe<202C>');
    expect(safeText('a\u200bb\ufeffc\u00add')).toBe('a<200B>b<FEFF>c<AD>d');
    expect(safeText('\u2028\u2029')).toBe('<2028><2029>');
    expect(safeText('\ud800x\udc00')).toBe('<D800>x<DC00>');
    expect(safeText('\u{e0041}')).toBe('<E0041>');
  });
  it('in ASCII mode uses codes for all of them', () => {
    expect(safeText('a\x1b[31m\x07\u202e', ascii)).toBe('a<1B>[31m<07><202E>');
  });
  for (const [what, text] of [
    ['a window title', '\x1b]0;hello\x07'],
    ['a clipboard write', '\x1b]52;c;aGk=\x1b\\'],
    ['a link', '\x1b]8;;http://example.org\x1b\\text\x1b]8;;\x1b\\'],
    ['a device control string', '\x1bPq#0\x1b\\'],
    ['an eight-bit operating system command', '\u009d0;hello\u009c'],
    ['a cursor movement', '\x1b[2J\x1b[H'],
    ['overprinting', 'PASS\r\x1b[KFAIL\b\b'],
  ] as const)
    it(`disarms ${what}`, () => {
      expect(safeText(text)).not.toMatch(/\p{Cc}/u);
      expect(safeText(text, ascii)).toMatch(/^[\x20-\x7e]*$/);
    });
  it('leaves visible text of every script as it is', () => {
    const text = 'Ångström 石英 кварц 😀 °≤▲';
    expect(safeText(text)).toBe(text);
  });
  it('never lets a control, a format character, a separator or half a pair through, in either mode', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.boolean(), (text, isAscii) => {
        expect(safeText(text, { ascii: isAscii })).not.toMatch(
          /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Default_Ignorable_Code_Point}]/u,
        );
      }),
      { numRuns: runs(1000) },
    );
  });
  it('lone surrogates never get through', () => {
    const halves = fc
      .array(fc.integer({ min: 0xd700, max: 0xe0ff }))
      .map((codes) => String.fromCharCode(...codes));
    fc.assert(fc.property(halves, (text) => !/\p{Cs}/u.test(safeText(text))));
  });
  it('making safe text safe changes nothing', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(safeText(safeText(text))).toBe(safeText(text));
      }),
    );
  });
  it('lines stay lines where lines are asked for', () => {
    expect(safeLines('a\nb\x1bc')).toBe('a\nb␛c');
  });
});

describe('JSON made safe to print', () => {
  it('is the same data, and holds nothing unsafe but its line feeds', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const printed = safeJson(JSON.stringify({ text }, null, 2));
        expect(JSON.parse(printed)).toEqual({ text });
        expect(printed).not.toMatch(/[\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
        expect(printed.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
      }),
    );
  });
});
