import { describe, expect, it } from 'vitest';
import { type Condition, placedComparisons } from '../../src/condition/condition.ts';
import { formatFinding } from '../../src/finding/finding.ts';
import { overSmall } from '../schema/build.ts';

/** What is found in an only-when of the habit of sulphides, the last field but one of the small schema. */
const found = (onlyWhen: object): readonly string[] =>
  overSmall({ fields: [{ name: 'habit', onlyWhen }] }).map((finding) =>
    formatFinding(finding).split('\n').slice(0, 2).join(' '),
  );

describe('where a fault of a condition is', () => {
  it('is the comparison in it, however deep', () => {
    const deep = {
      all: [{ field: 'sulphide', seen: true }, { not: { any: [{ field: 'rok', is: 'BAS' }] } }],
    };
    expect(found(deep)).toEqual([
      'logging.json:17:17, field habit: no field is called rok   | { "field": "rok", "is": "BAS" }',
    ]);
  });

  it('is each of its comparisons, in the order it is written', () => {
    const condition: Condition = {
      any: [
        { field: 'a', seen: true },
        {
          not: {
            all: [
              { field: 'b', is: 'X' },
              { field: 'c', atLeast: 1 },
            ],
          },
        },
      ],
    };
    expect(placedComparisons(condition).map(({ comparison, path }) => [comparison.field, path])).toEqual([
      ['a', ['any', 0]],
      ['b', ['any', 1, 'not', 'all', 0]],
      ['c', ['any', 1, 'not', 'all', 1]],
    ]);
  });
});

describe('a condition that is none', () => {
  it('says which word compares nothing, and which do', () => {
    expect(found({ all: [{ field: 'rock', iss: 'BAS' }] })).toEqual([
      'logging.json:10:11: entry 1 says "iss", which compares nothing: it can say is, isOneOf, atLeast, moreThan, atMost, lessThan, seen, or all, any, not   | { "field": "rock", "iss": "BAS" }',
    ]);
    expect(found({ field: 'rock' })[0]).toContain('"onlyWhen" compares nothing: it can say is');
  });

  it('says which two conditions stand in one', () => {
    expect(found({ field: 'rock', is: 'BAS', seen: true })[0]).toContain(
      '"onlyWhen" says "is" and "seen": each is a condition of its own, joined by "all" or "any"',
    );
    expect(found({ not: { field: 'rock', seen: true }, any: [] })[0]).toContain('"any" and "not"');
  });

  it('is otherwise told by the member that is misshapen', () => {
    expect(found({ any: [{ field: 'wear', atLeast: '3' }] })[0]).toContain('"atLeast" should be a number');
    expect(found({ any: [] })[0]).toContain('"any" holds too few');
    expect(found({ field: 'rock', is: 'BAS', off: 1 })[0]).toContain('"off" is not known here');
  });
});
