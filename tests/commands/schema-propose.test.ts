import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type ProposeAsked, proposeForSchema } from '../../src/commands/schema-propose.ts';
import { copyOfSample, hear } from './support/outside.ts';

async function propose(asked: Partial<ProposeAsked>) {
  const heard = hear();
  const none = { folder: '.', again: false, keys: false, write: false, print: false, json: false };
  const code = await proposeForSchema(heard.outside, { ...none, ...asked });
  return { code, out: heard.out(), err: heard.err() };
}

/** A copy of the sample with two rocks that nothing types yet. */
function withRocks(): string {
  const folder = copyOfSample();
  const path = join(folder, 'logging.json');
  const value = JSON.parse(readFileSync(path, 'utf8'));
  value.lists.rocks.codes.push(
    { code: 'PYX', label: 'pyroxenite', look: 'dark' },
    { code: 'DUN', label: 'dunite', look: 'green' },
  );
  writeFileSync(path, `${JSON.stringify(value, null, 2)}\n`);
  return folder;
}

describe('schema propose', () => {
  it('gives what has no pair one, with why, and changes nothing unasked', async () => {
    const folder = withRocks();
    const before = readFileSync(join(folder, 'logging.json'), 'utf8');
    const { code, out } = await propose({ folder });
    expect(code).toBe(0);
    expect(out).toMatch(/^\w\w {2}pyroxenite: /m);
    expect(out).toMatch(/^\w\w {2}dunite: /m);
    expect(out).toMatch(/Of \d+ pairs \d+ begin with the first letter of their term/);
    expect(out).toContain('Nothing was changed: --write puts them into logging.json.');
    expect(readFileSync(join(folder, 'logging.json'), 'utf8')).toBe(before);
  });

  it('writes them into logging.json where it is asked to', async () => {
    const folder = withRocks();
    expect((await propose({ folder, write: true })).code).toBe(0);
    const { lists } = JSON.parse(readFileSync(join(folder, 'logging.json'), 'utf8'));
    for (const code of ['PYX', 'DUN'])
      expect(lists.rocks.codes.find((each: { code: string }) => each.code === code).pair).toMatch(
        /^[a-z]{2}$/,
      );
    expect((await propose({ folder })).out).toContain('Nothing to propose');
  });

  it('never moves what the holes of the project were logged with', async () => {
    const { out } = await propose({ folder: copyOfSample(), again: true, json: true });
    const { chosen } = JSON.parse(out) as { chosen: readonly { was?: string; part: { code?: string } }[] };
    expect(chosen.length).toBeGreaterThan(10);
    // Basalt and pyrite are in the rows of the sample.
    expect(chosen.map(({ part }) => part.code)).not.toContain('BAS');
    expect(chosen.map(({ part }) => part.code)).not.toContain('PYR');
  });

  it('prints a style with better pairs in it, or of one list alone', async () => {
    const { out } = await propose({ file: 'orogenic-gold', again: true, lists: ['colours'], print: true });
    expect(JSON.parse(out).name).toBe('orogenic-gold');
    expect((await propose({ file: 'orogenic-gold', lists: ['stones'] })).err).toContain(
      'no list is called stones',
    );
    expect((await propose({ file: 'orogenic-gold', write: true })).code).toBe(2);
  });
});
