import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { diffSchemas } from '../../src/commands/schema-diff.ts';
import { copyOfSample, hear } from './support/outside.ts';

async function diff(first: string, second: string, json = false) {
  const heard = hear();
  const code = await diffSchemas(heard.outside, { folder: '.', first, second, json });
  return { code, out: heard.out(), err: heard.err() };
}

/** A copy of the sample with its logging.json changed. */
function changed(
  change: (logging: { lists: { rocks: { codes: object[] } }; fields?: object[] }) => void,
): string {
  const folder = copyOfSample();
  const path = join(folder, 'logging.json');
  const value = JSON.parse(readFileSync(path, 'utf8'));
  change(value);
  writeFileSync(path, JSON.stringify(value));
  return folder;
}

describe('schema diff', () => {
  it('finds two projects alike that log the same', async () => {
    const alike = { code: 0, out: 'Both log the same, in the same words and strokes.\n', err: '' };
    expect(await diff(copyOfSample(), copyOfSample())).toEqual(alike);
  });

  it('names what only one of them has, and what differs in both, stroke by stroke', async () => {
    const [ours, theirs] = [
      copyOfSample(),
      changed((logging) => {
        logging.lists.rocks.codes.push(
          { code: 'DUN', label: 'dunite', look: '', pair: 'du' },
          { code: 'BAS', pair: 'bz' },
          { code: 'DOL', label: 'dolerite sill' },
        );
        logging.fields = [{ name: 'gold', retiredSince: '2026-03-01' }];
      }),
    ];
    const { code, out } = await diff(ours, theirs);
    expect(code).toBe(1);
    expect(out.trim().split('\n').sort()).toEqual(
      [
        `code rocks BAS (basalt): pair ba → bz`,
        `code rocks DOL (dolerite): label dolerite → dolerite sill`,
        `code rocks DUN (dunite): only in ${theirs}`,
        `field gold (panned gold): only in ${ours}`,
      ].sort(),
    );
  });

  it('holds a project against a style, and refuses what is not there', async () => {
    const { out } = await diff(copyOfSample(), 'orogenic-gold', true);
    expect(JSON.parse(out).differences.map(({ thing }: { thing: string }) => thing)).toEqual([
      'code rocks VBR',
      'code rocks CBS',
    ]);
    expect((await diff('/nowhere', 'orogenic-gold')).code).toBe(2);
  });
});
