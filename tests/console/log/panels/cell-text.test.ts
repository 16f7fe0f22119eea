import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellText, fitCell } from '../../../../src/console/log/panels/cell-text.ts';
import { type Field, fieldNamed } from '../../../../src/schema/logging-schema.ts';
import { schema } from '../../../shorthand/fixture-schema.ts';

describe('what a cell says in its column', () => {
  const sulphides = fieldNamed(schema, 'sulphides') as Field;
  const veins = fieldNamed(schema, 'veins') as Field;

  it.each([
    [veins, { percent: 2 }, '2%'],
    [veins, { percent: 'trace' }, 'tr'],
    [veins, { absent: 'none' }, '–'],
    [sulphides, { percents: { pyr: 'trace', ccp: 2 } }, 'ccp2 pyr\u00a0tr'],
  ] as const)('%#: %o', (field, cell, text) => {
    expect(cellText(schema, field, cell, '–')).toBe(text);
  });
});

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
