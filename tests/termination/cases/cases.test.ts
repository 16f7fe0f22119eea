import { describe, expect, test } from 'vitest';
import { adviceOf, headlines, shownAdvice } from '../../../src/termination/advice/verdict.ts';
import { evaluateRules } from '../../../src/termination/evaluate/evaluate-rule.ts';
import { rulesFor } from '../../../src/termination/settings.ts';
import { holeOf, readCases } from './read-cases.ts';
import { OVERRIDES, ruleNamed } from './rules.ts';

const CASES = readCases();
/** A minus in front of a figure that is not a range: a depth above the collar, which no sentence may name. */
const NEGATIVE = /(?<![\d.])-\d/;

describe('holes as a geologist would judge them', () => {
  test('are two hundred, each with a title of its own', () => {
    expect(CASES.length).toBeGreaterThanOrEqual(200);
    expect(new Set(CASES.map(({ title }) => title)).size).toBe(CASES.length);
  });

  test.each(CASES.map((each) => [each.file.replace('.cases', ''), each.title, each] as const))(
    '%s: %s',
    (_file, _title, each) => {
      const { at, names, ending } = holeOf(each.hole);
      const settings = { rules: each.rules.map(ruleNamed), holes: [...OVERRIDES] };
      const outcomes = evaluateRules(rulesFor(settings, names), at);
      const shown = shownAdvice(outcomes, at, ending);
      const sentence = shown.shown ? shown.advice.sentence : `NO ADVICE: ${shown.because}`;
      expect(sentence).toMatch(new RegExp(`^${each.verdict}: `));
      const head = headlines(shown, outcomes).map(({ words }) => words);
      expect([sentence, ...head].join('\n')).toContain(each.says);
      const texts = outcomes.flatMap(({ reason, progress }) => [reason, progress.text]);
      for (const text of [adviceOf(outcomes, at, ending).sentence, ...texts])
        expect(text).not.toMatch(NEGATIVE);
    },
  );
});
