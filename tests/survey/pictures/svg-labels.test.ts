import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeLabels } from '../../../src/survey/pictures/svg-labels.ts';

const FRAME = { width: 640, height: 400 };

test('a label alone is above its point to the right', () => {
  expect(placeLabels([{ at: { x: 100, y: 100 }, words: 'collar' }], FRAME, 12)).toMatchObject([
    { x: 106, y: 95 },
  ]);
});

test('at the right edge it stands to the left', () => {
  const [label] = placeLabels([{ at: { x: 635, y: 100 }, words: 'collar' }], FRAME, 12);
  expect(label!.x).toBeLessThan(635 - 40);
});

test('a few labels in a heap do not lie on each other, and stay in the frame', () => {
  const point = fc.record({ x: fc.integer({ min: 280, max: 360 }), y: fc.integer({ min: 180, max: 220 }) });
  fc.assert(
    fc.property(fc.array(point, { minLength: 2, maxLength: 7 }), (points) => {
      const placed = placeLabels(
        points.map((at) => ({ at, words: 'a contact' })),
        FRAME,
        12,
      );
      placed.forEach((a, index) => {
        expect(a.x).toBeGreaterThanOrEqual(0);
        expect(a.y).toBeLessThanOrEqual(400);
        for (const b of placed.slice(index + 1))
          expect(Math.abs(a.x - b.x) >= 9 * 12 * 0.6 || Math.abs(a.y - b.y) >= 12).toBe(true);
      });
    }),
  );
});
