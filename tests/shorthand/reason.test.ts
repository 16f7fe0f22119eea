import { describe, expect, it } from 'vitest';
import { readReason } from '../../src/shorthand/reason.ts';

describe('a reason', () => {
  it.each([
    ['zone still open', { reason: 'zone still open' }],
    ['called Ines Falk: zone still open', { reason: 'zone still open', called: 'Ines Falk' }],
    ['  called Ines Falk :  go on  ', { reason: 'go on', called: 'Ines Falk' }],
    ['called it a day', { reason: 'called it a day' }],
    ['', { reason: '' }],
  ])('%j says %j', (text, reason) => {
    expect(readReason(text)).toEqual(reason);
  });
});
