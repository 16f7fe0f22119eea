import { describe, expect, test } from 'vitest';
import { parseLine } from '../../src/shorthand/parse.ts';
import { careWords, readCare } from '../../src/shorthand/rod-care.ts';
import { above, schema } from './fixture-schema.ts';

const parse = (line: string) => parseLine(line, { schema, above });

describe('a word for the sample stream behind ;', () => {
  test.each([
    [';hygiene cs0', { does: 'hygiene', care: { cycloneClean: true, splitterClean: false } }],
    [';rod 163 cslh', { does: 'rod done', check: '163 cslh' }],
    [
      ';mass 44-45 bulk 38.2 split 3.1',
      { does: 'mass', fromMm: 44_000, toMm: 45_000, masses: { bulk: '38.2', split: '3.1' } },
    ],
    [';choose blank', { does: 'choose control', kind: 'blank' }],
    [
      ';choose duplicate a rich vein',
      { does: 'choose control', kind: 'field duplicate', reason: 'a rich vein' },
    ],
    [';photo 3 IMG_0412.JPG', { does: 'photo', tray: 3, file: 'IMG_0412.JPG' }],
  ])('%s', (line, command) => {
    expect(parse(line)).toMatchObject({ kind: 'command', command });
  });

  test.each([
    [';hygiene cc', ';hygiene: Needs letters'],
    [';mass 44-45 bulk', ';mass: Needs a metre'],
    [';mass 44-45 split 3 split 4', ';mass: Needs a metre'],
    [';choose quartz', ';choose: Needs standard, blank or duplicate'],
    [';photo 3 ../IMG.JPG', ';photo: Needs the number of a tray'],
    [';photo 0 IMG.JPG', ';photo: Needs the number of a tray'],
  ])('%s is refused with its form', (line, problem) => {
    expect(parse(line)).toMatchObject({ kind: 'refused', problem: expect.stringContaining(problem) });
  });
});

describe('the letters of care', () => {
  test('say what was seen, and with a 0 what was not so; each is said once', () => {
    expect(careWords(readCare('cs0lh0i') ?? {})).toBe(
      'cyclone cleaned, splitter NOT clean, splitter level, hole NOT blown clean, water injected',
    );
    for (const wrong of ['', 'cc', 'cc0', 'ig', 'i0', 'x6', '163']) expect(readCare(wrong)).toBeUndefined();
  });
});
