import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { resultsOfHole } from '../../src/commands/by-metre.ts';
import { check } from '../../src/commands/check.ts';
import { enter } from '../../src/commands/enter.ts';
import { type ResplitAsked, resplit } from '../../src/commands/resplit.ts';
import { results } from '../../src/commands/results.ts';
import type { Outside } from '../../src/desk/outside.ts';
import { COMPOSITE_GOLD, compositeProject, goldFile } from './support/composites.ts';
import { hear, SAMPLE } from './support/outside.ts';

async function run(command: (outside: Outside) => Promise<number>) {
  const heard = hear();
  const code = await command(heard.outside);
  return { code, out: heard.out(), err: heard.err() };
}

const take = (folder: string, file: string) =>
  run((outside) => results(outside, { folder, file, keepGoing: false, as: 'text' }));
const list = (folder: string, said: Partial<ResplitAsked> = {}) =>
  run((outside) => resplit(outside, { folder, hole: 'MBRC004', take: false, csv: true, ...said }));
const table = (text: string): readonly string[][] => (parse(text) as string[][]).slice(1);

describe('a resplit list', () => {
  it('is refused where the project has no rule for it, and empty before results are back', async () => {
    const none = await run((outside) =>
      resplit(outside, { folder: SAMPLE, hole: 'MBRC001', take: false, csv: false }),
    );
    expect(none).toMatchObject({
      code: 2,
      err: expect.stringContaining('Write sampling.resplit in project.json'),
    });
    const folder = await compositeProject();
    const waiting = await list(folder, { csv: false });
    expect(waiting).toMatchObject({ code: 0, out: 'No composite of MBRC004 asks for single metres.\n' });
  });

  it('gives the metres of a composite over the limit and its neighbours: where they lie, how they are kept, numbers, controls', async () => {
    const folder = await compositeProject();
    await take(folder, goldFile('WA1', 601, COMPOSITE_GOLD));
    const rows = table((await list(folder)).out);
    expect(rows.filter((row) => row[1] === 'primary').map((row) => [row[2], row[3]])).toEqual(
      Array.from({ length: 12 }, (_, index) => [`${4 + index}`, `${5 + index}`]),
    );
    expect(rows[0]).toEqual(['MB000607', 'primary', '4', '5', 'MBRC004 4–5', '1', '5', 'MB000602 0.02 ppm']);
    expect(rows.find((row) => row[0] === 'MB000611')?.at(-1)).toBe('MB000603 0.92 ppm');
    expect(rows.filter((row) => row[1] !== 'primary').map((row) => row.slice(0, 2))).toEqual([
      ['MB000613', 'field duplicate'],
      ['MB000620', 'standard'],
    ]);
  });

  it('is numbered as one edit; then it asks for nothing more, and the project holds', async () => {
    const folder = await compositeProject();
    await take(folder, goldFile('WA1', 601, COMPOSITE_GOLD));
    expect(await list(folder, { take: true, csv: false })).toMatchObject({
      code: 0,
      out: expect.stringContaining('Numbered, in one edit.'),
    });
    expect((await list(folder, { csv: false })).out).toBe(
      'No composite of MBRC004 asks for single metres.\n',
    );
    const found = await run((outside) => check(outside, { folder, hole: 'MBRC004', json: true }));
    expect(JSON.parse(found.out).map((each: { code: string }) => each.code)).not.toEqual(
      expect.arrayContaining([expect.stringMatching(/bag|metre|duplicate|control/)]),
    );
  });

  it('leaves out a single metre that was bagged by hand beside the composites, and the check takes both', async () => {
    const folder = await compositeProject();
    const heard = hear(';bag 8-9 MB000650\n');
    expect(await enter(heard.outside, { folder, hole: 'MBRC004', keepGoing: false })).toBe(0);
    await take(folder, goldFile('WA1', 601, COMPOSITE_GOLD));
    const metres = table((await list(folder)).out)
      .filter((row) => row[1] === 'primary')
      .map((row) => row[2]);
    expect(metres).toEqual(['4', '5', '6', '7', '9', '10', '11', '12', '13', '14', '15']);
    const found = await run((outside) => check(outside, { folder, hole: 'MBRC004', json: true }));
    expect(found.out).not.toContain('metre-bagged-twice');
  });

  it('says how many metres have no number left, numbers nothing then, and takes others that are labelled', async () => {
    const folder = await compositeProject();
    await take(folder, goldFile('WA1', 601, ['1', '1', '1', '1', '1', '1']));
    const numbers = { first: 'MB000701', last: 'MB000703' };
    expect((await list(folder, { csv: false, numbers: { first: 'MB0701', last: 'x' } })).err).toContain(
      'x is the end of no number',
    );
    const few = await list(folder, { take: true, numbers });
    expect(few.code).toBe(0);
    expect(table(few.out).every((row) => row[0] !== 'NO NUMBER')).toBe(true);
  });
});

describe('composites and the single metres split from them', () => {
  let rows: readonly string[][] = [];
  beforeAll(async () => {
    const folder = await compositeProject();
    await take(folder, goldFile('WA1', 601, COMPOSITE_GOLD));
    await list(folder, { take: true });
    await take(
      folder,
      goldFile(
        'WA2',
        607,
        Array.from({ length: 14 }, (_, index) => `0.${index + 10}`),
      ),
    );
    const { out } = await run((outside) => resultsOfHole(outside, { folder, hole: 'MBRC004', csv: true }));
    rows = table(out);
  });

  it('both stand, and the single metres rank over them', () => {
    const composites = rows.filter((row) => row[3] === 'composite').map((row) => [row[2], row[4]]);
    expect(composites).toEqual([
      ['MB000601', 'yes'],
      ['MB000602', 'no'],
      ['MB000603', 'no'],
      ['MB000604', 'no'],
      ['MB000605', 'yes'],
      ['MB000606', 'yes'],
    ]);
    expect(rows.filter((row) => row[3] === 'metre' && row[4] === 'yes')).toHaveLength(12);
  });

  it('put every metre into exactly one primary of each rank', () => {
    for (const rank of ['composite', 'metre']) {
      const metres = rows
        .filter((row) => row[3] === rank)
        .flatMap((row) =>
          Array.from({ length: Number(row[1]) - Number(row[0]) }, (_, index) => Number(row[0]) + index),
        );
      expect(new Set(metres).size).toBe(metres.length);
    }
  });
});
