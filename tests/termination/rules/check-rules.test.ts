import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/finding/finding.ts';
import { checkRules, checkTermination } from '../../../src/termination/rules/check-rules.ts';
import type { Rule, RuleCondition } from '../../../src/termination/rules/rule.ts';
import { BARREN, rule, SCHEMA } from '../build.ts';

const PLACE = { file: 'project.json' };
const END = rule({ maximumReached: { maximumM: 200 } }, { name: 'end', verdict: 'end' });

const check = (...rules: readonly Rule[]): readonly Finding[] => checkRules([...rules, END], SCHEMA, PLACE);
const codes = (...rules: readonly Rule[]): readonly string[] => check(...rules).map(({ code }) => code);
const seen = (where: Parameters<typeof whereRule>[0]) => codes(whereRule(where));
function whereRule(where: Extract<RuleCondition, { seen: unknown }>['seen']['where']): Rule {
  return rule({ seen: { where, forM: 1 } }, { name: 'seen' });
}

test('rules that are in order raise nothing', () => {
  expect(
    check(
      rule({ inARow: { where: BARREN, forM: 10 } }, { name: 'tail' }),
      rule({ minimumReached: { minimumM: 60 } }, { name: 'minimum', verdict: 'not yet' }),
      rule({ plannedDepthReached: { plusM: 0 } }, { name: 'plan', verdict: 'end' }),
      rule({ sinceLastSeen: { where: { not: BARREN }, atLeastM: 5 } }, { name: 'since' }),
      rule({ instrumentBelow: { field: 'suscept', lessThan: 1, forM: 5 } }, { name: 'instrument' }),
      rule({ held: {} }, { name: 'hold', verdict: 'ask' }),
    ),
  ).toEqual([]);
});

describe('found is', () => {
  test('a rule about voids where no code means one, alone or with others', () => {
    const near = rule(
      { any: [{ held: {} }, { voidNear: { inLastM: 6, aheadM: 12 } }] },
      { name: 'void', verdict: 'ask' },
    );
    const blind = checkRules([near, END], { ...SCHEMA, fields: [], lists: {} }, PLACE);
    expect(blind.map(({ code }) => code)).toEqual(['termination-rule-sees-no-void']);
    expect(checkRules([near, END], SCHEMA, PLACE)).toEqual([]);
  });

  test('a name that two rules have', () => {
    expect(codes({ ...END })).toEqual(['termination-rule-twice']);
  });

  test('a field that the schema does not have, with those it has', () => {
    const [found] = check(whereRule({ field: 'sulfides', seen: true }));
    expect(found).toMatchObject({
      code: 'termination-rule-field-unknown',
      place: { file: 'project.json', thing: 'rule seen', field: 'sulfides' },
      remedy: 'Name one of: rock, sulphides, habit, weathering, suscept, contact.',
    });
  });

  test('a field named in an instrument rule', () => {
    expect(codes(rule({ instrumentBelow: { field: 'xrf', lessThan: 1, forM: 5 } }))).toEqual([
      'termination-rule-field-unknown',
    ]);
  });

  test('a code that the list does not have, in `of`, `is` and `isOneOf`', () => {
    expect(seen({ field: 'sulphides', of: 'PYY', atLeast: 1 })).toEqual(['termination-rule-code-unknown']);
    expect(seen({ field: 'weathering', is: 'fresh' })).toContain('termination-rule-code-unknown');
    expect(seen({ field: 'rock', isOneOf: ['BST', 'XXX'] })).toEqual(['termination-rule-code-unknown']);
  });

  test('a code that is retired', () => {
    expect(seen({ field: 'rock', isOneOf: ['BST', 'OLD'] })).toEqual(['termination-rule-code-retired']);
  });

  test.each([
    [{ field: 'rock', atLeast: 2 }],
    [{ field: 'contact', lessThan: 2 }],
    [{ field: 'suscept', is: 'high' }],
    [{ field: 'weathering', of: 'frs', atLeast: 1 }],
    [{ field: 'sulphides', of: 'PYR', is: 'PYR' }],
  ] as const)('a comparison without an answer: %j', (where) => {
    expect(seen(where)).toContain('termination-rule-senseless');
  });

  test.each([
    ['more metres than are counted', { ofLast: { where: BARREN, atLeastM: 12, ofM: 10 } }],
    [
      'depths that exclude each other',
      { all: [{ maximumReached: { maximumM: 100 } }, { not: { minimumReached: { minimumM: 80 } } }] },
    ],
    [
      'a cut-off that excludes itself',
      {
        seen: {
          where: {
            all: [
              { field: 'sulphides', of: 'PYR', atLeast: 2 },
              { field: 'sulphides', of: 'PYR', lessThan: 1 },
            ],
          },
          forM: 1,
        },
      },
    ],
    [
      'a figure outside the limits of the field',
      { seen: { where: { field: 'suscept', lessThan: 0 }, forM: 1 } },
    ],
    ['a level beyond the scale', { inARow: { where: { field: 'weathering', atLeast: 3 }, forM: 1 } }],
    [
      'something that is never behind',
      { sinceLastSeen: { where: { field: 'suscept', atLeast: 0 }, atLeastM: 5 } },
    ],
    [
      'two rocks that one metre can’t both be alone',
      {
        not: {
          not: {
            seen: {
              where: {
                all: [{ field: 'rock', is: 'BST' }, { not: { field: 'rock', isOneOf: ['BST', 'GRN'] } }],
              },
              forM: 1,
            },
          },
        },
      },
    ],
  ] satisfies readonly (readonly [string, RuleCondition])[])(
    'a rule that can never be met: %s',
    (_why, when) => {
      expect(codes(rule(when))).toEqual(['termination-rule-never-met']);
    },
  );

  test('no fault in a rule that some log can meet', () => {
    expect(
      seen({
        all: [
          { field: 'rock', is: 'BST' },
          { field: 'rock', is: 'GRN' },
        ],
      }),
    ).toEqual([]);
    expect(seen({ field: 'sulphides', of: 'PYR', atMost: 0 })).toEqual([]);
    expect(codes(rule({ ofLast: { where: BARREN, atLeastM: 10, ofM: 10 } }))).toEqual([]);
  });

  test('two rules that ask the same and advise differently', () => {
    const [found, ...others] = check({ ...END, name: 'ask first', verdict: 'ask' });
    expect(found).toMatchObject({
      code: 'termination-rules-contradict',
      place: { thing: 'rule end' },
      problem: 'asks the same as "ask first", and advises "end" where that advises "ask"',
    });
    expect(others).toEqual([]);
  });

  test('a maximum above a minimum', () => {
    const minimum = rule({ minimumReached: { minimumM: 250 } }, { name: 'minimum', verdict: 'not yet' });
    expect(check(minimum)).toMatchObject([
      {
        code: 'termination-rule-held-back',
        problem: 'ends the hole at 200 m, but "minimum" holds it open to 250 m',
      },
    ]);
    expect(
      codes(rule({ minimumReached: { minimumM: 200 } }, { name: 'minimum', verdict: 'not yet' })),
    ).toEqual([]);
  });

  test('no fault in a boundary above a minimum: it goes first', () => {
    const minimum = rule({ minimumReached: { minimumM: 150 } }, { name: 'minimum', verdict: 'not yet' });
    const boundary = rule(
      { boundaryNear: { boundaryM: 100, withinM: 0 } },
      { name: 'permit', verdict: 'end' },
    );
    expect(codes(minimum, boundary)).toEqual([]);
  });

  test('rules of which none ends a hole; none at all is not a fault', () => {
    expect(checkRules([rule({ held: {} }, { verdict: 'ask' })], SCHEMA, PLACE)).toMatchObject([
      { code: 'termination-nothing-ends' },
    ]);
    expect(checkRules([], SCHEMA, PLACE)).toEqual([]);
  });
});

describe('the rules of a hole', () => {
  const override = { hole: 'ZQRC004', by: 'ABC', because: 'deeper target' };

  test('are checked with the project’s, and what the project’s raise is said once', () => {
    const settings = {
      rules: [END, rule({ seen: { where: { field: 'none', seen: true }, forM: 1 } }, { name: 'odd' })],
      holes: [
        {
          ...override,
          rules: [
            rule({ minimumReached: { minimumM: 300 } }, { name: 'minimum', verdict: 'not yet' as const }),
          ],
        },
      ],
    };
    expect(checkTermination(settings, SCHEMA, PLACE)).toMatchObject([
      { code: 'termination-rule-field-unknown', place: { thing: 'rule odd' } },
      { code: 'termination-rule-held-back', place: { hole: 'ZQRC004', thing: 'rule end' } },
    ]);
  });

  test('can’t do without a rule that is not there', () => {
    const settings = { rules: [END], holes: [{ ...override, without: ['tail'] }] };
    expect(checkTermination(settings, SCHEMA, PLACE)).toMatchObject([
      { code: 'termination-override-without', place: { hole: 'ZQRC004' }, remedy: 'Name one of: end.' },
    ]);
  });
});
