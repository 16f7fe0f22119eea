import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { results } from '../../src/commands/results.ts';
import { copyOfSample, freshFolder, hear } from './support/outside.ts';

/** How this project's laboratory marks its own samples. */
const OWN = [
  { is: 'repeat', at: 'end', text: 'RPT' },
  { is: 'duplicate', at: 'start', text: 'DUP', withinPercent: 25 },
  { is: 'standard', at: 'whole', text: 'GREENROCK 4', certified: [{ analyte: 'Au', value: 1, sd: 0.05 }] },
  { is: 'blank', at: 'whole', text: 'Blank', limits: [{ analyte: 'Au', limit: 0.01 }] },
];

/** The sample project with such a mapping, and a certificate of these lines taken in. */
async function taken(lines: readonly string[], own: readonly object[] = OWN, heading = 'Sample,Au_ppm') {
  const folder = copyOfSample();
  const file = join(folder, 'project.json');
  const settings = JSON.parse(readFileSync(file, 'utf8'));
  const { mass: _, ...mapping } = settings.sampling.results;
  settings.sampling.results = { ...mapping, ownSamples: own };
  writeFileSync(file, JSON.stringify(settings));
  const certificate = join(freshFolder(), 'W1.csv');
  writeFileSync(certificate, `${heading}\n${lines.join('\n')}\n`);
  const heard = hear();
  const code = await results(heard.outside, { folder, file: certificate, keepGoing: false, as: 'text' });
  return { code, out: heard.out(), err: heard.err() };
}

const SOUND = ['MB000122,0.50', 'MB000123,0.80', 'MB000124,0.02'];

describe("the laboratory's own samples on a certificate", () => {
  it('are counted apart, belong to no bag, and say nothing where they are in order', async () => {
    const { out, err } = await taken([
      ...SOUND,
      'MB000122 RPT,0.52',
      'DUP MB000123,0.75',
      'GREENROCK 4,1.04',
      'BLANK,<0.005',
    ]);
    expect(err).toBe('');
    expect(out).toContain(
      "W1: 3 samples; the laboratory's own: 1 repeat, 1 duplicate, 1 standard, 1 blank, taken in",
    );
    expect(out).not.toContain('No bag of this project');
    expect(out).not.toContain("The laboratory's own");
  });

  it('are judged as what they are', async () => {
    const { code, out } = await taken([
      ...SOUND,
      'MB000122 rpt,0.70',
      'DUP MB000123,0.40',
      'GREENROCK 4,1.20',
      'GREENROCK 4,0.88',
      'Blank,0.03',
      'MB000999 RPT,0.4',
    ]);
    expect(code).toBe(1);
    expect(out).toContain(
      "The laboratory's own repeat of MB000122 lies 33 % from its first result; 20 % is allowed.",
    );
    expect(out).toContain(
      "The laboratory's own duplicate of MB000123 lies 67 % from its first result; 25 % is allowed.",
    );
    expect(out).toContain("The laboratory's own standard GREENROCK 4 reads 4.0 SD high: it fails.");
    expect(out).toContain("The laboratory's own standard GREENROCK 4 reads 2.4 SD low.");
    expect(out).toContain("The laboratory's own blank shows 0.03; its limit is 0.01.");
    expect(out).toContain("The laboratory's own repeat is of MB000999, and no result has that number.");
    expect(out).not.toContain('is reported twice');
  });

  it('are known by a column of their own, and then a number that is there twice is a repeat', async () => {
    const own = [{ is: 'repeat', column: 'Type', at: 'whole', text: 'REP' }];
    const { out } = await taken(
      ['MB000122,S,0.50', 'MB000122,rep,0.51', 'MB000123,S,0.8'],
      own,
      'Sample,Type,Au_ppm',
    );
    expect(out).toContain("W1: 2 samples; the laboratory's own: 1 repeat, taken in");
    expect(out).not.toContain('is reported twice');
  });

  it('say nothing of a pair under the detection limit, and without a mapping are numbers that no bag has', async () => {
    const low = await taken(['MB000122,<0.005', 'MB000122 RPT,0.01']);
    expect(low.out).not.toContain("The laboratory's own repeat of");
    const unmapped = await taken(['MB000122,0.5', 'MB000122 RPT,0.5'], []);
    expect(unmapped.out).toContain('No bag of this project has the number MB000122 RPT.');
  });
});
