import { describe, expect, test } from 'vitest';
import { defineFinding, formatFinding, ok, refused } from '../../src/finding/finding.ts';
import { formatPlace, type Place } from '../../src/finding/place.ts';

const kind = defineFinding({
  code: 'pair-twice',
  severity: 'fault',
  title: 'A pair types two codes.',
  rationale: 'The wrong rock would be logged without a word.',
});

describe('a place', () => {
  test.each<[Place, string]>([
    [{ file: 'logging.json', line: 12, column: 5, field: 'rock' }, 'logging.json:12:5, field rock'],
    [{ file: 'logging.json', line: 12 }, 'logging.json:12'],
    [{ file: 'logging.json' }, 'logging.json'],
    [{ hole: 'ZQRC004', fromMm: 46_000, toMm: 47_000, field: 'pyrite' }, 'ZQRC004, 46–47, field pyrite'],
    [{ hole: 'ZQRC004', fromMm: 60_500 }, 'ZQRC004, 60.5 m'],
    [{ hole: 'ZQRC004', thing: 'bag ZQ000163' }, 'ZQRC004, bag ZQ000163'],
    [{ fromMm: 0, toMm: 1000 }, '0–1'],
    [{}, 'somewhere'],
  ])('reads from the whole to the part (%#)', (place, text) => {
    expect(formatPlace(place)).toBe(text);
  });
});

describe('a finding', () => {
  test('carries the code and severity of its kind, and where, what and what to do', () => {
    expect(
      kind.at({ file: 'logging.json', line: 3 }, { problem: '`sh` types two codes', remedy: 'Change one.' }),
    ).toEqual({
      code: 'pair-twice',
      severity: 'fault',
      place: { file: 'logging.json', line: 3 },
      problem: '`sh` types two codes',
      remedy: 'Change one.',
    });
  });

  test('prints place and problem, the excerpt, and the remedy, each on its line', () => {
    const said = { problem: '`sh` types two codes', remedy: 'Change one.' };
    const place = { file: 'logging.json', line: 3 };
    expect(formatFinding(kind.at(place, { ...said, excerpt: '"pair": "sh"' }))).toBe(
      'logging.json:3: `sh` types two codes\n  | "pair": "sh"\n  Change one.',
    );
    expect(formatFinding(kind.at(place, said))).toBe('logging.json:3: `sh` types two codes\n  Change one.');
  });

  test('is in the way of a result, or a value does not', () => {
    const finding = kind.at({}, { problem: 'p', remedy: 'r' });
    expect(refused(finding)).toEqual({ ok: false, findings: [finding] });
    expect(ok(3)).toEqual({ ok: true, value: 3 });
  });
});
