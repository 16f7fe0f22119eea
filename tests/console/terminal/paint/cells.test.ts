import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { narrowCharacters } from '../../../../.ci/bundle-plugins.mjs';
import {
  cellWidth,
  fit as fitTo,
  graphemes,
  padEnd,
  truncate,
} from '../../../../src/console/terminal/paint/cells.ts';
import { narrowText } from '../../../../src/finding/safe-text.ts';

describe('width in cells', () => {
  it('is one a character for ASCII, two for wide characters, none for marks and colours', () => {
    expect(cellWidth('basalt')).toBe(6);
    expect(cellWidth('石英')).toBe(4);
    expect(cellWidth('e\u0301')).toBe(1);
    expect(cellWidth('\x1b[31mred\x1b[39m')).toBe(3);
    expect(cellWidth('│▌°')).toBe(3);
    expect(cellWidth('')).toBe(0);
  });
});

describe('text that is counted without tables', () => {
  const narrow = Array.from({ length: 0x10000 }, (_, code) => String.fromCharCode(code)).filter((character) =>
    narrowText.test(character),
  );
  it('is one cell a character by string-width too', () => {
    expect(narrow.length).toBeGreaterThan(1000);
    expect(narrow.filter((character) => stringWidth(character) !== 1)).toEqual([]);
  });
  it('never joins with its neighbour', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...narrow), { maxLength: 20 }), (characters) => {
        const text = characters.join('');
        expect(stringWidth(text)).toBe(characters.length);
        const segments = Array.from(new Intl.Segmenter('en').segment(text), ({ segment }) => segment);
        expect(graphemes(text)).toEqual(segments);
      }),
    );
  });
  it('is the same in the bundle as here', () => {
    expect(narrowText.source).toBe(`^[${narrowCharacters}]*$`);
  });
});

describe('fitting text', () => {
  it('pads it on the right, and leaves what is wide enough', () => {
    expect(padEnd('石', 4)).toBe('石  ');
    expect(padEnd('basalt', 3)).toBe('basalt');
  });
  it('cuts with an ellipsis in the last cell', () => {
    expect(truncate('chalcopyrite', 6)).toBe('chalc…');
    expect(truncate('chalcopyrite', 6, '..')).toBe('chal..');
    expect(truncate('pyrite', 6)).toBe('pyrite');
  });
  it('never halves a wide character', () => {
    expect(truncate('石英脈', 4)).toBe('石…');
    expect(fitTo('石英脈', 4)).toBe('石… ');
  });
  it('gives nothing when not even the ellipsis fits', () => {
    expect(truncate('pyrite', 0)).toBe('');
    expect(truncate('pyrite', 1, '..')).toBe('');
  });
  it('a fitted text is exactly as wide as asked', () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 12 });
    fc.assert(
      fc.property(text, fc.integer({ min: 1, max: 30 }), (any, width) => {
        expect(cellWidth(fitTo(any, width))).toBe(width);
      }),
    );
  });
});
