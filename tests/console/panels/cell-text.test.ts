import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCell } from '../../../src/console/panels/cell-text.ts';

describe('a cell of the log in its column', () => {
  it.each([
    ['chl2 sil1', 10, 'chl2 sil1 '],
    ['chl2 sil1 src1', 12, 'chl2 sil1 +1'],
    ['chl2 sil1 src1', 11, 'chl2 +2    '],
    ['basalt', 4, 'bas…'],
  ])('%s in %i cells reads %s', (text, width, shown) => {
    expect(fitCell(text, width, '…')).toBe(shown);
  });

  it('always fills its column, no less and no more', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{2,4}\d$/), { maxLength: 5 }),
        fc.integer({ min: 1, max: 20 }),
        (items, width) => {
          expect(fitCell(items.join(' '), width, '…')).toHaveLength(width);
        },
      ),
    );
  });
});
