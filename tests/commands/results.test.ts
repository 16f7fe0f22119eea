import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { resultsOfHole } from '../../src/commands/by-metre.ts';
import { check } from '../../src/commands/check.ts';
import { laboratoryMasses } from '../../src/commands/laboratory-masses.ts';
import { type ResultsAsked, results } from '../../src/commands/results.ts';
import type { Outside } from '../../src/desk/outside.ts';
import { obeyedInLines } from '../trust/vectors.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from './support/outside.ts';

async function run(command: (outside: Outside) => Promise<number>) {
  const heard = hear();
  const code = await command(heard.outside);
  return { code, out: heard.out(), err: heard.err() };
}

const CERTIFICATE = join(SAMPLE, 'laboratory/WA26-0417.csv');
const asked: Omit<ResultsAsked, 'folder'> = { keepGoing: false, as: 'text' };
const take = (folder: string, file: string | undefined, said: Partial<ResultsAsked> = {}) =>
  run((outside) => results(outside, { folder, file, ...asked, ...said }));
const kept = (folder: string): readonly string[] => readdirSync(join(folder, 'results')).sort();

/** A certificate written beside the project. */
function written(text: string, name = 'WA9.csv'): string {
  const file = join(freshFolder(), name);
  writeFileSync(file, text);
  return file;
}

describe('results', () => {
  it('say that none came back yet, and how to take one in', async () => {
    expect(await take(SAMPLE, undefined)).toMatchObject({
      code: 0,
      out: expect.stringContaining('No results came back yet: offsider results <file.csv>'),
    });
  });

  it('of the sample are read from its certificate as it came, and what the controls say is told', async () => {
    const folder = copyOfSample();
    const { code, out } = await take(folder, CERTIFICATE);
    expect(code).toBe(1);
    expect(out).toMatch(
      /^WA26-0417: 169 samples, taken in 2026-03-14 by NOK\n {2}from WA26-0417\.csv, SHA-256 [0-9a-f]{16}…$/m,
    );
    expect(out).toContain('169 of 169 bags sent have a result.');
    expect(out).toContain('Standard M04 reads 26.6 SD low: it fails.');
    expect(out).toContain('It reads like K17: was that sachet in the bag?');
    expect(out).toContain('Blank crushed quartz shows 0.034; its limit is 0.02.');
    expect(out).toMatch(/Au in ppm: 5 pairs, root-mean-square CV \d+\.\d %/);
    const [shown = ''] = out.split('\nFound:');
    expect(Math.max(...shown.split('\n').map((each) => each.length))).toBeLessThanOrEqual(78);
    const found = await run((outside) => check(outside, { folder, json: false }));
    expect(found.out).toContain('Standard M04 reads 26.6 SD low');
  });

  it('keep what the laboratory wrote, with the hash of its file, who and when', async () => {
    const folder = copyOfSample();
    await take(folder, CERTIFICATE);
    const { tables } = JSON.parse(readFileSync(join(folder, 'results/WA26-0417.json'), 'utf8'));
    expect(tables.certificate.certificate).toMatchObject({
      certificate: 'WA26-0417',
      file: 'WA26-0417.csv',
      sha256: expect.stringMatching(/^[0-9a-f]{64}$/),
      takenInBy: 'NOK',
      columns: [{ column: 'Au_ppm', analyte: 'Au', unit: 'ppm' }],
    });
    expect(Object.values(tables.lines)[0]).toEqual({
      line: 5,
      number: 'MB000121',
      reported: { Au_ppm: '<0.005', Wt_kg: '3.33' },
    });
  });

  it('are taken in once: the same file again changes nothing', async () => {
    const folder = copyOfSample();
    await take(folder, CERTIFICATE);
    const { err } = await take(folder, CERTIFICATE);
    expect(err).toContain('This file is taken in already, as WA26-0417. Nothing was changed.');
    expect(kept(folder)).toEqual(['WA26-0417.json']);
  });

  it('issued again under the same number supersede the first, and both stay', async () => {
    const folder = copyOfSample();
    await take(folder, CERTIFICATE);
    const again = written(readFileSync(CERTIFICATE, 'utf8').replace('0.531', '1.871'), 'WA26-0417.csv');
    const { out } = await take(folder, again);
    expect(kept(folder)).toEqual(['WA26-0417-2.json', 'WA26-0417.json']);
    expect(out).toContain('WA26-0417-2: 169 samples');
    expect(out).toContain('in place of WA26-0417');
    expect(out).toContain('(superseded: kept, does not count)');
    expect(out).not.toContain('Standard M04');
    const unknown = await take(folder, written('Sample,Au_ppm\nMB000121,1\n'), { supersedes: 'WA26-0417' });
    expect(unknown).toMatchObject({
      code: 2,
      err: expect.stringContaining('no certificate WA26-0417 counts'),
    });
  });

  it('with a line that can not be read are refused whole, or taken without it where that is asked', async () => {
    const folder = copyOfSample();
    const file = written('Sample,Au_ppm\nMB000121,0.1\nMB000122,LNR\n');
    expect(await take(folder, file)).toMatchObject({
      code: 2,
      err: expect.stringContaining('give --keep-going'),
    });
    expect(kept(folder)).toEqual([]);
    const { err, out } = await take(folder, file, { keepGoing: true });
    expect(err).toContain('WA9.csv:3');
    expect(out).toContain('WA9: 1 samples');
  });

  it.each([
    [
      'in another unit',
      'Sample,Au_ppm\nUnits,ppb\nMB000121,100\n',
      'Au_ppm is in ppb, and the mapping says ppm.',
    ],
    ['without a mapped column', 'Sample,Au_ppb\nMB000121,100\n', 'There is no column Au_ppm.'],
    [
      'with a quotation mark left open',
      'Sample,Au_ppm\n"MB000121,100\n',
      'not a table of comma-separated values',
    ],
    ['of headings alone', 'Sample,Au_ppm\n', 'it holds no result'],
    ['with a cell past all measure', `Sample,Au_ppm\n${'x'.repeat(3000)},1\n`, 'a cell of more than 2000'],
  ])('%s are refused, and nothing is kept', async (_what, text, problem) => {
    const folder = copyOfSample();
    expect(await take(folder, written(text), { keepGoing: true })).toMatchObject({
      code: 2,
      err: expect.stringContaining(problem),
    });
    expect(kept(folder)).toEqual([]);
  });

  it.each([';', '\t'])('parted by %j are read as well', async (mark) => {
    const folder = copyOfSample();
    const { out } = await take(folder, written(`Sample${mark}Au_ppm\r\nMB000121${mark}0.1\r\n`));
    expect(out).toContain('WA9: 1 samples');
  });

  it('of a certificate with a name that no file can have are kept under one that it can', async () => {
    const folder = copyOfSample();
    await take(folder, written('Sample,Au_ppm\nMB000121,0.1\n'), { certificate: '../../con' });
    await take(folder, written('Sample,Au_ppm\nMB000122,0.1\n'), { certificate: 'nul' });
    expect(kept(folder)).toEqual(['C-CON.json', 'C-NUL.json']);
  });

  it("that show <0.05 for a blank whose limit is 0.02 can't tell whether it is clean", async () => {
    const folder = copyOfSample();
    const { out } = await take(folder, written('Sample,Au_ppm\nMB000227,<0.05\n'));
    expect(out).toContain("limit 0.02 ppm: 1 results, none over, 1 can't tell");
    expect(out).toMatch(/MB000227 +\| <0\.05 {2}can't tell/);
    expect(out).toContain(
      "Can't tell whether blank crushed quartz is clean: it shows <0.05, and its limit is 0.02.",
    );
    const clean = await take(copyOfSample(), written('Sample,Au_ppm\nMB000227,<0.02\n'));
    expect(clean.out).toContain('limit 0.02 ppm: 1 results, none over\n');
    expect(clean.out).not.toContain("an't tell");
  });

  it('of a standard that stays off on one side are a run that is named once, however long it lasts', async () => {
    const folder = copyOfSample();
    const low = ['MB000140', 'MB000180', 'MB000200', 'MB000280']
      .map((number) => `${number},0.568\n`)
      .join('');
    const { out } = await take(folder, written(`Sample,Au_ppm\n${low}`));
    const found = out.slice(out.indexOf('Found:'));
    expect(found.match(/more than 2 SD off on one side/g)).toHaveLength(1);
    expect(found).toMatch(/MB000140[\s\S]*MB000280/);
  });

  it('as a page hold the charts, and as data the certificates and what was found', async () => {
    const folder = copyOfSample();
    await take(folder, CERTIFICATE);
    const page = (await take(folder, undefined, { as: 'html' })).out;
    expect(page).toMatch(/^<!doctype html>/);
    expect(page.match(/<svg /g)).toHaveLength(5);
    const data = JSON.parse((await take(folder, undefined, { as: 'json' })).out);
    expect(data.certificates).toHaveLength(1);
    expect(data.findings.map((each: { code: string }) => each.code)).toEqual([
      'standard-off',
      'standard-off',
      'blank-high',
    ]);
  });

  it('by metre of one hole come as text and as CSV, what is under detection with its limit', async () => {
    const folder = copyOfSample();
    await take(folder, CERTIFICATE);
    const hole = (csv: boolean) => run((outside) => resultsOfHole(outside, { folder, hole: 'MBRC001', csv }));
    const lines = (await hole(true)).out.trim().split('\r\n');
    expect(lines[0]).toBe('from_m,to_m,sample,rank,best,Au_ppm');
    expect(lines[1]).toBe('0,1,MB000121,metre,yes,<0.005');
    expect(lines).toHaveLength(150);
    expect((await hole(false)).out).toContain('MB000121');
  });

  it('of hostile cells reach no terminal as a command, on any way out', async () => {
    const folder = copyOfSample();
    const file = written('Sample,Au_ppm\n"\x1b]0;owned\x07=cmd",1\n"\u202eMB1\n",2\n', 'a\u202eb.csv');
    for (const as of ['text', 'html', 'json'] as const) {
      const { out, err } = await take(folder, as === 'text' ? file : undefined, { as });
      expect(obeyedInLines(out + err)).toBeUndefined();
    }
  });
});

describe('masses as received', () => {
  const masses = (folder: string) => run((outside) => laboratoryMasses(outside, { folder }));

  it('are recorded at the metres of their bags, duplicates as the second split, in one edit; a mass weighed on the rig stands', async () => {
    const folder = copyOfSample();
    await take(folder, CERTIFICATE);
    expect(await masses(folder)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Recorded: masses as received of \d+ metres: MBRC001\.\n$/),
    });
    const { tables, history } = JSON.parse(readFileSync(join(folder, 'holes/MBRC001.json'), 'utf8'));
    const facts: readonly Record<string, unknown>[] = Object.values(tables.stream);
    expect(facts).toContainEqual({ fromMm: 0, toMm: 1000, splitG: 3330 });
    expect(facts.filter((each) => each.splitG !== undefined && each.duplicateG !== undefined)).toHaveLength(
      8,
    );
    expect(history.at(-1).what).toMatch(/^masses as received/);
    expect((await masses(folder)).out).toContain('none is of a metre that was not weighed already');
  });

  it('in grams where the mapping says kilograms are named with what to write', async () => {
    const folder = copyOfSample();
    await take(folder, written('Sample,Wt_kg,Au_ppm\nMB000121,3330,0.1\nMB000122,2.9,0.1\n'));
    const { code, err, out } = await masses(folder);
    expect(code).toBe(1);
    expect(err).toContain(
      'WA9.csv:2, sample MB000121: 3330 kg is more than a calico bag holds; it looks like grams.',
    );
    expect(err).toContain('sampling.results.mass, "unit": "g"');
    expect(out).toContain('of 1 metres');
  });

  it('in grams are told by the line of units too', async () => {
    const { code, err } = await take(
      copyOfSample(),
      written('Sample,Wt_kg,Au_ppm\nUnits,g,ppm\nMB000121,3330,0.1\n'),
    );
    expect([code, err]).toEqual([
      2,
      expect.stringContaining('Correct sampling.results.mass in project.json: "unit": "g".'),
    ]);
  });
});
