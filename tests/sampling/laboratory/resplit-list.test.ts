import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Bag } from '../../../src/hole/bags.ts';
import { resplitList, resplitTable } from '../../../src/sampling/laboratory/resplit-list.ts';
import type { Assay } from '../../../src/sampling/laboratory/results-read.ts';
import { slotAt } from '../../../src/sampling/scheme/scheme.ts';
import { atCollar, primary, SETTINGS, sampling } from '../build.ts';

const RULE = { analyte: 'Au', atLeast: 0.5, neighbours: 0, pilesPerRow: 20 };
const project = sampling({ sampled: { rank: 'composite', lengthM: 4 }, resplit: RULE });
const composite = (serial: number, fromM: number): Bag => ({
  ...primary(`ZQ0001${serial}`, fromM, fromM + 4),
  rank: 'composite',
});
const composites = [composite(31, 0), composite(32, 4), composite(34, 8), composite(35, 12)];
const au = (number: string, value: number): Assay => ({ number, values: { Au: { value } } });
const listed = (assays: readonly Assay[], last = 'ZQ000320', bags: readonly Bag[] = composites) =>
  resplitList(project, { name: 'ZQRC004', state: { ...atCollar('ZQ000131', last), bags } }, assays);

describe('a resplit list', () => {
  test('names each metre as it is kept, where it lies, why it is wanted and its new number', () => {
    const [first] = listed([au('ZQ000132', 0.8)]).lines;
    expect(first).toMatchObject({
      bag: { number: 'ZQ000136', kind: 'primary', fromMm: 4000, toMm: 5000, rank: 'metre' },
      keptAs: 'ZQRC004 4–5',
      place: { row: 1, place: 5 },
      because: 'ZQ000132 0.8 ',
    });
  });

  test('comes behind every number that was issued, a passed-over one among them', () => {
    expect(listed([au('ZQ000132', 0.8)]).bags.map((bag) => bag.number.slice(-3))).toEqual([
      '136',
      '137',
      '138',
      '139',
    ]);
  });

  test('counts the metres that no number is left for, and still says where they lie', () => {
    const list = listed([au('ZQ000132', 0.8)], 'ZQ000137');
    expect(list.unnumbered).toBe(2);
    expect(resplitTable(list).at(-1)?.slice(0, 5)).toEqual(['NO NUMBER', 'primary', '7', '8', 'ZQRC004 7–8']);
  });

  test('leaves out what has a single metre already, but not what had one that is spoiled', () => {
    const single = primary('ZQ000136', 5, 6);
    const metres = (bags: readonly Bag[]) =>
      listed([au('ZQ000132', 0.8)], 'ZQ000320', bags).lines.flatMap(({ fromMm }) =>
        fromMm === undefined ? [] : [fromMm / 1000],
      );
    expect(metres([...composites, single])).toEqual([4, 6, 7]);
    expect(metres([...composites, { ...single, kind: 'spoiled', reason: 'torn' }])).toEqual([4, 5, 6, 7]);
  });

  test('is empty without a rule, without results, and where none reaches the limit', () => {
    expect(
      resplitList(sampling(), { name: 'ZQRC004', state: { ...atCollar(), bags: composites } }, []).lines,
    ).toEqual([]);
    expect(listed([]).lines).toEqual([]);
    expect(listed([au('ZQ000132', 0.49)]).lines).toEqual([]);
  });

  test('whatever asks: numbers are new and rise, controls stand where the scheme has them, each metre once', () => {
    const asking = fc.subarray(composites.map((bag) => bag.number));
    fc.assert(
      fc.property(asking, fc.integer({ min: 0, max: 3 }), (over, neighbours) => {
        const rule = sampling({
          sampled: { rank: 'composite', lengthM: 4 },
          resplit: { ...RULE, neighbours },
          controls: SETTINGS.controls,
        });
        const state = { ...atCollar('ZQ000131'), bags: composites };
        const { bags, unnumbered } = resplitList(
          rule,
          { name: 'ZQRC004', state },
          over.map((number) => au(number, 1)),
        );
        const serials = bags.map((bag) => Number(bag.number.slice(2)));
        expect(unnumbered).toBe(0);
        expect(serials).toEqual([...new Set(serials)].sort((a, b) => a - b));
        expect(bags.some((bag) => composites.some((each) => each.number === bag.number))).toBe(false);
        for (const [index, bag] of bags.entries())
          expect(slotAt(rule.slots, serials[index] ?? 0)?.kind ?? 'primary').toBe(bag.kind);
        const metres = bags.filter((bag) => bag.kind === 'primary').map((bag) => bag.fromMm);
        expect(new Set(metres).size).toBe(metres.length);
        for (const number of over) {
          const asked = composites.find((bag) => bag.number === number);
          expect(
            metres.filter((each) => (each ?? 0) >= (asked?.fromMm ?? 0) && (each ?? 0) < (asked?.toMm ?? 0)),
          ).toHaveLength(4);
        }
      }),
    );
  });
});
