import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { photosFor } from '../../../src/sampling/trays/tray-photos.ts';
import { trayList } from '../../../src/sampling/trays/trays.ts';
import { sampling } from '../build.ts';

const HOLES = ['ZQRC004', 'ZQRC004A', 'ZQRC005'];
const trays = trayList(sampling(), { name: 'ZQRC004', startMm: 0, isOver: true, toMm: 65_000, trays: [] });
const found = (...files: readonly string[]) => photosFor('ZQRC004', HOLES, trays, files);

describe('a picture is of a tray by its name', () => {
  test.each([
    ['ZQRC004_tray3.jpg', 3],
    ['zqrc004 Tray 03.JPG', 3],
    ['ZQRC004-3.png', 3],
    ['tray_3.heic', 3],
    ['3.jpg', 3],
    ['ZQRC004 40-60.jpg', 3],
    ['ZQRC004_60-65.jpeg', 4],
    ['wet tray 2 of ZQRC004.jpg', 2],
  ])('%s is of tray %d', (file, tray) => {
    expect(found(file)).toEqual({ matched: [{ tray, file }], several: [], untold: [] });
  });

  test.each(['IMG_0412.JPG', 'ZQRC004.jpg', 'tray9.jpg', 'ZQRC004 10-30.jpg', 'ZQRC004 1 2.jpg', '0412.jpg'])(
    '%s tells none of them',
    (file) => {
      expect(found(file)).toEqual({ matched: [], several: [], untold: [file] });
    },
  );

  test.each(['ZQRC004A_tray1.jpg', 'ZQRC005-2.jpg', 'notes.txt', 'tray1.jpg.txt'])(
    '%s is none of this hole',
    (file) => {
      expect(found(file)).toEqual({ matched: [], several: [], untold: [] });
    },
  );

  test('two of one tray are both left to a person', () => {
    expect(found('ZQRC004_1.jpg', 'tray1.png', 'tray2.jpg')).toEqual({
      matched: [{ tray: 2, file: 'tray2.jpg' }],
      several: [{ tray: 1, files: ['ZQRC004_1.jpg', 'tray1.png'] }],
      untold: [],
    });
  });

  test('whatever files are called, a tray gets one picture of the folder at most, and no picture two trays', () => {
    const name = fc.tuple(
      fc.constantFrom('ZQRC004', 'tray', '', 'ZQRC005'),
      fc.constantFrom('_', ' ', '-'),
      fc.nat({ max: 9 }),
    );
    fc.assert(
      fc.property(
        fc.uniqueArray(name.map(([word, gap, number]) => `${word}${gap}${number}.jpg`)),
        (files) => {
          const { matched } = found(...files);
          expect(new Set(matched.map((each) => each.tray)).size).toBe(matched.length);
          expect(new Set(matched.map((each) => each.file)).size).toBe(matched.length);
        },
      ),
    );
  });
});
