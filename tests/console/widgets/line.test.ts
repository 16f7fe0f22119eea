import { describe, expect, it } from 'vitest';
import { wrap } from '../../../src/console/widgets/line.ts';

describe('a text broken into lines', () => {
  it('comes to an end in any width, none at all included, with every letter of it kept', () => {
    for (const width of [-4, 0, 1, 2, 3, 80])
      for (const text of ['pyrite', '輝石 in vugs', '🪨🪨', 'e\u0301'])
        expect(
          wrap(text, width)
            .flat()
            .map((span) => span.text)
            .join(''),
        ).toBe(width >= 80 ? text : text.replaceAll(' ', ''));
  });
});
