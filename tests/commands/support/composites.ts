import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { enter } from '../../../src/commands/enter.ts';
import { copyOfSample, freshFolder, hear } from './outside.ts';

/** A gold result for each composite of 4 m, from the top: the third is over the limit. */
export const COMPOSITE_GOLD = ['0.01', '0.02', '0.92', '0.04', '<0.005', '0.01'] as const;

/** The sample project turned to composites of 4 m, single metres wanted from 0.5 ppm on, with a hole of 24 m in bags MB000601 to 606. */
export async function compositeProject(): Promise<string> {
  const folder = copyOfSample();
  const file = join(folder, 'project.json');
  const settings = JSON.parse(readFileSync(file, 'utf8'));
  settings.sampling.sampled = { rank: 'composite', lengthM: 4 };
  settings.sampling.resplit = { analyte: 'Au', atLeast: 0.5, neighbours: 1, pilesPerRow: 20 };
  writeFileSync(file, JSON.stringify(settings, null, 2));
  const lines = [';numbered MB000601 MB000660', ';rod', ';rod', ';rod', ';rod'];
  const heard = hear(`${lines.join('\n')}\n`);
  const code = await enter(heard.outside, { folder, hole: 'MBRC004', rig: 'RC7', keepGoing: false });
  if (code !== 0) throw new Error(heard.err());
  return folder;
}

/** A certificate of gold for numbers in a row, beside the project. */
export function goldFile(name: string, first: number, gold: readonly string[]): string {
  const file = join(freshFolder(), `${name}.csv`);
  const lines = gold.map((each, index) => `MB000${first + index},${each}`);
  writeFileSync(file, `Sample,Au_ppm\n${lines.join('\n')}\n`);
  return file;
}
