import { describe, expect, it } from 'vitest';
import {
  isKey,
  isPair,
  MOST_KEYS_APART,
  neighboursOnKeyboard,
  slipsOf,
} from '../../../src/schema/check/keyboard.ts';

const LETTERS = [...'abcdefghijklmnopqrstuvwxyz'];

describe('neighbours on a US keyboard', () => {
  it('are the keys that touch', () => {
    expect(neighboursOnKeyboard('g')).toEqual(['f', 'h', 't', 'y', 'v', 'b']);
    expect(neighboursOnKeyboard('q')).toEqual(['w', 'a']);
    expect(neighboursOnKeyboard('m')).toEqual(['n', 'j', 'k']);
    expect(neighboursOnKeyboard('p')).toEqual(['o', 'l']);
  });

  it('go both ways', () => {
    for (const letter of LETTERS)
      for (const other of neighboursOnKeyboard(letter))
        expect(neighboursOnKeyboard(other), `${letter} ${other}`).toContain(letter);
  });

  it('are none of anything but a small letter', () => {
    for (const other of ['A', '1', '', 'ab', 'é']) expect(neighboursOnKeyboard(other)).toEqual([]);
  });

  it(`let at most ${MOST_KEYS_APART} letters stand apart`, () => {
    const masks = LETTERS.map((letter) =>
      neighboursOnKeyboard(letter).reduce((mask, other) => mask | (1 << LETTERS.indexOf(other)), 0),
    );
    const most = (from: number, taken: number): number => {
      if (from === LETTERS.length) return 0;
      const without = most(from + 1, taken);
      return (masks[from]! & taken) === 0
        ? Math.max(without, 1 + most(from + 1, taken | (1 << from)))
        : without;
    };
    expect(most(0, 0)).toBe(MOST_KEYS_APART);
  });
});

describe('slips', () => {
  it('of a pair are a neighbour for either letter, or the two swapped', () => {
    expect(slipsOf('qp')).toEqual(['wp', 'ap', 'qo', 'ql', 'pq']);
  });

  it('of a key are its neighbours', () => {
    expect(slipsOf('p')).toEqual(['o', 'l']);
  });
});

describe('strokes', () => {
  it('are a pair when two different small letters, a key when one', () => {
    expect(['ba', 'bb', 'b', 'Ba', 'b1', 'bas'].map(isPair)).toEqual([
      true,
      false,
      false,
      false,
      false,
      false,
    ]);
    expect(['b', 'B', '1', 'ba', ''].map(isKey)).toEqual([true, false, false, false, false]);
  });
});
