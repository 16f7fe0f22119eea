import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { controls } from '../../src/commands/controls.ts';
import { copyOfSample, hear, SAMPLE } from './support/outside.ts';

async function run(folder: string, json = false) {
  const heard = hear();
  const code = await controls(heard.outside, { folder, json });
  return { code, out: heard.out() };
}

it('controls says what the scheme reserves, each rate as wanted, given and put out, and what is published', async () => {
  const { code, out } = await run(SAMPLE);
  expect(code).toBe(0);
  expect(out).toContain('every 20: MB000013, MB000033 …  field duplicate');
  expect(out).toContain('every 40: MB000027, MB000067 …  blank, or standard where that is chosen');
  expect(out).toMatch(/^standards +2\.0 +5\.7 +5\.4 +17 beside 317, 1 by hand$/m);
  expect(out).toContain('Abzalov 2008, Exploration and Mining Geology 17, 131–144');
  expect(out).toContain('standard K17: 33 of 40 left');
  expect(out).toContain('Nothing is wrong with the scheme.');
});

it('controls names slots that meet and a rate that the slots can not reach, and gives 1', async () => {
  const folder = copyOfSample();
  const file = join(folder, 'project.json');
  const settings = JSON.parse(readFileSync(file, 'utf8'));
  settings.sampling.controls.slots.push({ every: 30, at: 10, kind: 'blank' });
  settings.sampling.controls.wanted.blankPercent = 40;
  writeFileSync(file, JSON.stringify(settings));
  const { code, out } = await run(folder);
  expect(code).toBe(1);
  expect(out).toContain('is reserved for a standard and for a blank.');
  expect(out).toMatch(/40 blanks in 100 samples are wanted, and the slots give \d/);
});

it('controls gives the same as data', async () => {
  const data = JSON.parse((await run(SAMPLE, true)).out);
  expect(data.rates.map((each: { kind: string; count: number }) => [each.kind, each.count])).toEqual([
    ['standard', 17],
    ['blank', 9],
    ['field duplicate', 18],
  ]);
});
