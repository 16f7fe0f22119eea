import { describe, expect, it } from 'vitest';
import { identifierFault } from '../../src/record/identifiers.ts';

describe('an id that becomes a file name', () => {
  it.each(['A', '7', 'ZQRC001', 'ZQRC001A', 'RIG3_2026-03-14_DAY', 'A'.repeat(40), 'COMET', 'NULL', 'CON1'])(
    'may be %s',
    (id) => {
      expect(identifierFault(id)).toBeUndefined();
    },
  );

  it.each([
    ['', 'it is empty'],
    ['zqrc001', 'small letters: write ZQRC001'],
    ['A'.repeat(41), 'it is longer than 40 characters'],
    ['con', 'con is a name that some computers keep for devices'],
    ['CON', 'CON is a name that some computers keep for devices'],
    ['LPT1', 'LPT1 is a name that some computers keep for devices'],
  ])('may not be %j: %s', (id, fault) => {
    expect(identifierFault(id)).toBe(fault);
  });

  it.each([
    '..',
    '.',
    '../ZQRC001',
    'A/B',
    'A\\B',
    'A B',
    'A.JSON',
    'CON.JSON',
    'COM¹',
    'A ',
    ' A',
    '-A',
    '_A',
    'A\u0000',
    'A\n',
    'Ä',
    'A:B',
    '\u202EA',
    'ſ',
  ])('may not be %j', (id) => {
    expect(identifierFault(id)).toBeDefined();
  });
});
