import { expect, test } from 'vitest';
import { canonicalJson } from '../../src/record/json.ts';

// IETF RFC 8785 "JSON Canonicalization Scheme", section 3.2.3: the members as given, and the order they must come out in
// (from memory).
test('members are sorted by UTF-16 units, as the example of RFC 8785 shows', () => {
  const given = JSON.parse(String.raw`{
    "\u20ac": "Euro Sign",
    "\r": "Carriage Return",
    "\ufb33": "Hebrew Letter Dalet With Dagesh",
    "1": "One",
    "\ud83d\ude00": "Emoji: Grinning Face",
    "\u0080": "Control",
    "\u00f6": "Latin Small Letter O With Diaeresis"
  }`);
  const said = [...canonicalJson(given).matchAll(/":"([^"]*)"/g)].map((match) => match[1]);
  expect(said).toEqual([
    'Carriage Return',
    'One',
    'Control',
    'Latin Small Letter O With Diaeresis',
    'Euro Sign',
    'Emoji: Grinning Face',
    'Hebrew Letter Dalet With Dagesh',
  ]);
});

// The same, section 3.2.2: how numbers and texts come out (from memory).
test('numbers and texts come out as the example of RFC 8785 shows', () => {
  const given = JSON.parse(String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`);
  const literals = '"literals":[null,true,false]';
  const numbers = '"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27]';
  const text = String.raw`"string":"€$\u000f\nA'B\"\\\\\"/"`;
  expect(canonicalJson(given)).toBe(`{${literals},${numbers},${text}}`);
});
